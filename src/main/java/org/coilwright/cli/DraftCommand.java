package org.coilwright.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.coilwright.draft.Draft;
import org.coilwright.draft.Judges;
import org.coilwright.netlist.Brief;
import org.coilwright.netlist.BriefReader;
import org.coilwright.netlist.ReadingProblem;
import org.coilwright.rules.AllRules;
import org.coilwright.table.Tables;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.ParseResult;

/** {@code coilwright draft [BRIEF]}. */
final class DraftCommand extends ConsoleCommand {
  private static final String TYPED = "what was typed, as a brief";
  private static final String OUT = "-o";

  /** Option, what stands behind it, what it says. */
  private static final List<List<String>> OPTIONS =
      List.of(
          List.of("load", "PLATE", "Its nameplate: \"9 kW, 400 V, star\"."),
          List.of("vessel", "WORDS", "What it heats: \"300 l, closed, 90..95 C\"."),
          List.of(
              "controller",
              "MANUAL",
              "\"24 V DC 200 mA; contact 0.5 A at 30 V DC-13\", or \"none; contact B300\"."),
          List.of("practice", "SET", "iec or nec. Default: iec."),
          List.of("mains", "WORDS", "\"3 phases, 400 V, TN-S, 3 kA, 0.35 ohm\", as far as known."),
          List.of("island", "none", "That nothing feeds it when the mains fail."),
          List.of("air", "T", "Hottest air around the devices. Default: 40C."),
          List.of("room", "T", "Air around the wires outside. Default: as --air."),
          List.of("altitude", "H", "Height above the sea."),
          List.of("board-to-box", "L", "Cable from the board to the box. Default: 1m."),
          List.of("box-to-load", "L", "Cable from the box to the load. Default: 1m."),
          List.of("controller-to-box", "L", "Cable from the controller to the box. Default: 1m."),
          List.of("plant", "WORDS", "For the settings: \"peak 10 kW, base 350 W, step 7 kW\"."),
          List.of("title", "TEXT", "What the circuit is for."));

  DraftCommand(Console console) {
    super(console);
  }

  @Override
  CommandSpec spec() {
    CommandSpec spec =
        spec(
            "Designs a circuit from a nameplate, a manual and distances, and proves it.",
            "",
            "BRIEF is a small YAML file; options say the same; without either it asks, and a",
            "script may answer. The netlist goes to -o, or to standard output.",
            "",
            "Examples:",
            "  coilwright draft boiler-brief.yaml -o boiler.yaml",
            "  coilwright draft --load \"9 kW, 400 V, star\" --vessel \"300 l, closed\" \\",
            "    --controller \"24 V DC 200 mA; contact 0.5 A at 30 V DC-13\" --air 45C \\",
            "    --box-to-load 8m --controller-to-box 22m -o boiler.yaml",
            "  coilwright draft",
            "",
            "Ends with 0: a netlist was written, 1: no arrangement passes, 2: a brief that",
            "cannot be used, 3: a fault of coilwright itself.");
    spec.addPositional(
        PositionalParamSpec.builder()
            .arity("0..1")
            .type(String.class)
            .paramLabel("BRIEF")
            .description("Brief; - reads standard input.")
            .build());
    spec.addOption(
        OptionSpec.builder(OUT, "--output")
            .paramLabel("OUT")
            .type(String.class)
            .description("File to write; never over a file that is there.")
            .build());
    for (List<String> option : OPTIONS) {
      spec.addOption(
          OptionSpec.builder("--" + option.get(0))
              .paramLabel(option.get(1))
              .type(String.class)
              .description(option.get(2))
              .build());
    }
    return spec;
  }

  @Override
  int run(ParseResult parsed) throws IOException {
    Map<String, String> typed = new LinkedHashMap<>();
    for (List<String> option : OPTIONS) {
      String value = parsed.matchedOptionValue("--" + option.get(0), "");
      if (!value.isEmpty()) {
        typed.put(option.get(0), value);
      }
    }
    String out = parsed.matchedOptionValue(OUT, "");
    String file = parsed.matchedPositionalValue(0, "");
    if (!file.isEmpty()) {
      if (!typed.isEmpty()) {
        return refuse(
            "A brief and --%s both say what is wanted: give one of the two."
                .formatted(typed.keySet().iterator().next()));
      }
      return fromFile(file, out);
    }
    boolean whole = typed.containsKey("load") && typed.containsKey("controller");
    boolean asks = typed.isEmpty() || (!whole && console().terminals().contains("in"));
    try {
      String text = DraftFlags.brief(asks ? asked(typed) : typed);
      if (asks) {
        keep(text, out);
      }
      return draft(TYPED, text.getBytes(StandardCharsets.UTF_8), out);
    } catch (DraftFlags.Refused refused) {
      return misused(refused.sentence());
    } catch (DraftQuestions.NoAnswer none) {
      return misused(none.sentence());
    }
  }

  private int misused(String sentence) {
    console().err().println("coilwright: " + Lines.harmless(sentence));
    console().err().println("Try:   coilwright draft --help");
    return Exit.UNUSABLE;
  }

  private int fromFile(String file, String out) {
    InputFile input = InputFile.read(file, console().in());
    if (input instanceof InputFile.Bytes bytes) {
      return draft(file, bytes.bytes(), out);
    }
    ReadingProblem problem = ((InputFile.Missing) input).problem();
    return told(file, List.of(problem));
  }

  private Map<String, String> asked(Map<String, String> typed)
      throws IOException, DraftQuestions.NoAnswer {
    BufferedReader in =
        new BufferedReader(new InputStreamReader(console().in(), StandardCharsets.UTF_8));
    return new DraftQuestions(console(), in).ask(typed, DraftCommand::trouble);
  }

  /** Why what was answered so far cannot be used; what was not asked yet may be missing. */
  private static Optional<String> trouble(Map<String, String> typed) {
    try {
      Map<String, String> whole = new LinkedHashMap<>(typed);
      whole.putIfAbsent("load", "1 kW, 230 V");
      whole.putIfAbsent("controller", "none; contact 1 A at 30 V DC");
      byte[] text = DraftFlags.brief(whole).getBytes(StandardCharsets.UTF_8);
      return BriefReader.read(TYPED, text) instanceof BriefReader.Unusable unusable
          ? Optional.of(sentence(unusable.problems().get(0)))
          : Optional.empty();
    } catch (DraftFlags.Refused refused) {
      return Optional.of(refused.sentence());
    }
  }

  private static String sentence(ReadingProblem problem) {
    return problem.what() + ": " + problem.remedy() + ".";
  }

  /** Puts the answers where they need not be typed again. */
  private void keep(String brief, String out) {
    if (out.isEmpty()) {
      console().err().println("Your answers as a brief, to be kept in a file:");
      console().err().print(brief);
      return;
    }
    String name = out.replaceFirst("\\.ya?ml$", "") + "-brief.yaml";
    OutputFile.Written written =
        new OutputFile(name).writeNew(brief.getBytes(StandardCharsets.UTF_8));
    console()
        .err()
        .println(
            written instanceof OutputFile.Refused refused
                ? Lines.harmless(refused.why())
                : "Wrote your answers to " + Lines.harmless(name) + ".");
  }

  private int draft(String name, byte[] bytes, String out) {
    BriefReader.Read read = BriefReader.read(name, bytes);
    if (read instanceof BriefReader.Unusable unusable) {
      return told(name, unusable.problems());
    }
    Brief brief = ((BriefReader.Good) read).brief();
    Tables tables = Tables.load();
    Draft.Answer answer = Draft.of(brief, tables, Judges.of(AllRules.of(tables), AllRules::runner));
    if (answer instanceof Draft.Unusable unusable) {
      return told(name, unusable.problems());
    }
    if (answer instanceof Draft.Nothing nothing) {
      console().out().print(DraftText.of(nothing, outStyle()));
      return Exit.FINDINGS;
    }
    return write((Draft.Drafted) answer, out);
  }

  private int write(Draft.Drafted drafted, String out) {
    if (out.isEmpty() || out.equals(InputFile.STDIN)) {
      console().out().print(drafted.netlist());
      console().err().print(DraftText.of(drafted, errStyle()));
      console().err().println("Next:  coilwright draft … -o FILE, then coilwright check FILE");
      return Options.exit(drafted.report());
    }
    OutputFile.Written written =
        new OutputFile(out).writeNew(drafted.netlist().getBytes(StandardCharsets.UTF_8));
    if (written instanceof OutputFile.Refused refused) {
      return refuse(refused.why());
    }
    console().out().print(DraftText.of(drafted, outStyle()));
    console().err().println("Wrote " + Lines.harmless(out) + ".");
    console().err().println("Next:  coilwright check " + Shell.quoted(Lines.harmless(out)));
    return Options.exit(drafted.report());
  }

  private int told(String name, List<ReadingProblem> problems) {
    console()
        .err()
        .print(
            ProblemText.of(name, problems, errStyle())
                .replace(" was not checked: ", " was not drafted: "));
    return Exit.UNUSABLE;
  }
}
