package org.coilwright.cli;

import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import org.coilwright.quantity.Words;
import picocli.CommandLine;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/** The command line. */
public final class Main {
  private final Console console;
  private final Map<String, Function<Console, Object>> commands = new LinkedHashMap<>();

  Main(Console console) {
    this.console = console;
    commands.put("check", CheckCommand::new);
    commands.put("states", StatesCommand::new);
    commands.put("faults", FaultsCommand::new);
    commands.put("checklist", ChecklistCommand::new);
    commands.put("rehearse", RehearseCommand::new);
    commands.put("explain", ExplainCommand::new);
    commands.put("schema", SchemaCommand::new);
    commands.put("new", NewCommand::new);
  }

  /** Runs one command and ends the process with its exit code. */
  public static void main(String[] args) {
    System.exit(new Main(Console.ofProcess()).run(args));
  }

  /** Runs one command. */
  int run(String... args) {
    int code;
    try {
      code = args.length == 0 ? usage() : commandLine(args).execute(args);
    } catch (Exception | StackOverflowError | OutOfMemoryError e) {
      code = Defect.tell(console, e);
    }
    console.out().flush();
    console.err().flush();
    return code;
  }

  private int usage() {
    commandLine().usage(console.err(), Ansi.OFF);
    return Exit.UNUSABLE;
  }

  /** Only the command that is asked for is built: reading its annotations costs start-up time. */
  private CommandLine commandLine(String... args) {
    String first = args.length == 0 ? "" : args[0];
    CommandLine root = new CommandLine(new RootCommand());
    commands.forEach(
        (name, make) -> {
          if (name.equals(first) || !commands.containsKey(first)) {
            root.addSubcommand(name, make.apply(console));
          }
        });
    if (first.equals("help")) {
      root.addSubcommand("help", new CommandLine.HelpCommand());
    }
    root.getCommandSpec().version("coilwright " + Version.text());
    return root.setOut(writer(console.out()))
        .setErr(writer(console.err()))
        .setColorScheme(CommandLine.Help.defaultColorScheme(Ansi.OFF))
        .setCaseInsensitiveEnumValuesAllowed(true)
        .setExpandAtFiles(false)
        .setUsageHelpWidth(Style.PLAIN.width() + 10)
        .setExecutionStrategy(this::execute)
        .setParameterExceptionHandler((e, unused) -> misused(e))
        .setExecutionExceptionHandler((e, line, parsed) -> Defect.tell(console, e));
  }

  private static PrintWriter writer(PrintStream stream) {
    return new PrintWriter(stream, false, StandardCharsets.UTF_8);
  }

  private int execute(CommandLine.ParseResult parsed) {
    if (!parsed.hasSubcommand() && !parsed.isUsageHelpRequested()) {
      if (!parsed.isVersionHelpRequested()) {
        return usage();
      }
    }
    return new CommandLine.RunLast().execute(parsed);
  }

  private int misused(ParameterException e) {
    CommandLine line = e.getCommandLine();
    String command = line.getCommandSpec().qualifiedName();
    String message = Objects.requireNonNullElse(e.getMessage(), "the command line cannot be used");
    if (e instanceof UnmatchedArgumentException unmatched && !unmatched.getUnmatched().isEmpty()) {
      message = unknown(line, unmatched.getUnmatched().get(0));
    } else if (e.getArgSpec() instanceof CommandLine.Model.OptionSpec option
        && option.type().isEnum()
        && e.getValue() != null) {
      message =
          "%s takes %s, not %s."
              .formatted(option.longestName(), Words.either(choices(option.type())), e.getValue());
    }
    console.err().println("coilwright: " + Lines.harmless(message));
    console.err().println("Try:   " + command + " --help");
    return Exit.UNUSABLE;
  }

  private static List<String> choices(Class<?> type) {
    return Arrays.stream(type.getEnumConstants()).map(String::valueOf).toList();
  }

  private static String unknown(CommandLine line, String typed) {
    if (typed.startsWith("-")) {
      Collection<String> options = line.getCommandSpec().optionsMap().keySet();
      return "There is no option " + typed + "." + Near.question(typed, options);
    }
    Collection<String> names = line.getSubcommands().keySet();
    if (names.isEmpty()) {
      return "There is one argument too many: " + typed + ".";
    }
    return "There is no command " + typed + "." + Near.question(typed, names);
  }
}
