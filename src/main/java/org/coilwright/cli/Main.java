package org.coilwright.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalInt;
import java.util.function.Function;
import org.coilwright.netlist.ReadingProblem;
import org.coilwright.quantity.Words;
import picocli.CommandLine;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;
import picocli.CommandLine.UnmatchedArgumentException;

/** The command line. */
public final class Main {
  private final Console console;
  private final Map<String, Function<Console, ConsoleCommand>> commands = new LinkedHashMap<>();

  Main(Console console) {
    this.console = console;
    commands.put("check", CheckCommand::new);
    commands.put("states", StatesCommand::new);
    commands.put("faults", FaultsCommand::new);
    commands.put("draw", DrawCommand::new);
    commands.put("checklist", ChecklistCommand::new);
    commands.put("readback", ReadbackCommand::new);
    commands.put("verify", VerifyCommand::new);
    commands.put("rehearse", RehearseCommand::new);
    commands.put("choose", ChooseCommand::new);
    commands.put("explain", ExplainCommand::new);
    commands.put("schema", SchemaCommand::new);
    commands.put("draft", DraftCommand::new);
    commands.put("new", NewCommand::new);
  }

  /** Runs one command and ends the process with its exit code. */
  public static void main(String[] args) {
    Launch.main(args);
  }

  /** Runs one command. */
  int run(String... args) {
    int code;
    try {
      code = dispatch(args);
    } catch (ParameterException e) {
      code = misused(e);
    } catch (NoClassDefFoundError e) {
      console.err().println(Launch.incomplete(e));
      code = Exit.DEFECT;
    } catch (OutOfMemoryError e) {
      console.err().println(exhausted());
      code = Exit.UNUSABLE;
    } catch (RuntimeException | IOException | Error e) {
      code = Defect.tell(console, e);
    }
    return delivered(code);
  }

  private static String exhausted() {
    ReadingProblem problem = Room.ofProcess().exhausted("");
    return "coilwright: " + problem.what() + ". To mend it: " + problem.remedy() + ".";
  }

  /** A result that did not arrive is none, whatever it was. */
  private int delivered(int code) {
    boolean lost = console.out().checkError();
    if (lost && !(console.out() instanceof Outlet outlet && outlet.isHungUp())) {
      console
          .err()
          .println(
              "coilwright: the result could not be written to its end. Is the disk full, or the"
                  + " output closed?");
    }
    lost |= console.err().checkError();
    return lost ? Math.max(code, Exit.UNUSABLE) : code;
  }

  private int dispatch(String... args) throws IOException {
    String first = args.length == 0 ? "" : args[0];
    if (first.equals("help")) {
      String[] about = Arrays.copyOfRange(args, 1, args.length + 1);
      about[about.length - 1] = "--help";
      return dispatch(about);
    }
    Function<Console, ConsoleCommand> make = commands.get(first);
    if (make == null) {
      return withoutCommand(args);
    }
    // Only the command that is asked for is built: the others cost start-up time.
    ConsoleCommand command = make.apply(console);
    OptionalInt done = command.plainly(Arrays.asList(args).subList(1, args.length));
    if (done.isPresent()) {
      return done.getAsInt();
    }
    CommandLine root = commandLine(Map.of(first, command));
    ParseResult parsed = root.parseArgs(args).subcommand();
    if (parsed.isUsageHelpRequested()) {
      return usage(parsed.commandSpec().commandLine());
    }
    return command.start(parsed);
  }

  private int withoutCommand(String... args) {
    CommandLine root = whole();
    ParseResult parsed = root.parseArgs(args);
    if (parsed.isUsageHelpRequested()) {
      return usage(root);
    } else if (parsed.isVersionHelpRequested()) {
      console.out().println("coilwright " + Version.text());
      console.out().println(Version.archive());
      return Exit.NOTHING_FOUND;
    }
    console.err().print(root.getUsageMessage(Ansi.OFF));
    return Exit.UNUSABLE;
  }

  /** The command line with every command. */
  CommandLine whole() {
    Map<String, ConsoleCommand> all = new LinkedHashMap<>();
    commands.forEach((name, make) -> all.put(name, make.apply(console)));
    return commandLine(all);
  }

  private static CommandLine commandLine(Map<String, ConsoleCommand> commands) {
    CommandSpec root = RootCommand.spec();
    commands.forEach(
        (name, command) ->
            root.addSubcommand(name, ConsoleCommand.withCommonOptions(command.spec())));
    return new CommandLine(root)
        .setCaseInsensitiveEnumValuesAllowed(true)
        .setExpandAtFiles(false)
        .setUsageHelpWidth(Style.PLAIN.width() + 10);
  }

  private int usage(CommandLine line) {
    line.usage(new PrintWriter(console.out(), true, StandardCharsets.UTF_8), Ansi.OFF);
    return Exit.NOTHING_FOUND;
  }

  private int misused(ParameterException e) {
    console.err().println("coilwright: " + Lines.harmless(sentence(e)));
    String command = e.getCommandLine().getCommandSpec().qualifiedName();
    console.err().println("Try:   " + command + " --help");
    return Exit.UNUSABLE;
  }

  private static String sentence(ParameterException e) {
    if (e instanceof UnmatchedArgumentException unmatched && !unmatched.getUnmatched().isEmpty()) {
      return unknown(e.getCommandLine(), unmatched.getUnmatched().get(0));
    }
    if (e.getArgSpec() instanceof OptionSpec option
        && option.type().isEnum()
        && e.getValue() != null) {
      List<String> choices =
          Arrays.stream(option.type().getEnumConstants()).map(String::valueOf).toList();
      return "%s takes %s, not %s."
          .formatted(option.longestName(), Words.either(choices), e.getValue());
    }
    return Objects.requireNonNullElse(e.getMessage(), "The command line cannot be used.");
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
