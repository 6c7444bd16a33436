package org.coilwright.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import org.coilwright.draft.Draft;
import org.coilwright.draft.Judges;
import org.coilwright.netlist.BriefReader;
import org.coilwright.rules.AllRules;
import org.coilwright.table.Tables;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.ParseResult;

/** {@code coilwright new [FILE]}. */
final class NewCommand extends ConsoleCommand {
  NewCommand(Console console) {
    super(console);
  }

  @Override
  CommandSpec spec() {
    CommandSpec spec =
        spec(
            "Writes a commented netlist to start from; never over a file that is there.",
            "",
            "Each passes as it is written: contactor, three-phase and split-phase are drafted, as",
            "coilwright draft does from your own figures.",
            "",
            "Examples:",
            "  coilwright new boiler.yaml",
            "  coilwright new --like three-phase boiler.yaml",
            "  coilwright new | less");
    spec.addOption(
        OptionSpec.builder("--like")
            .paramLabel("WHAT")
            .type(Like.class)
            .description(
                "one-relay (default), contactor, three-phase, split-phase, two-loads or latch.")
            .build());
    spec.addPositional(
        PositionalParamSpec.builder()
            .arity("0..1")
            .type(String.class)
            .paramLabel("FILE")
            .description("File to write; standard output without it.")
            .build());
    return spec;
  }

  @Override
  int run(ParseResult parsed) {
    String file = parsed.matchedPositionalValue(0, InputFile.STDIN);
    String starter = starter(parsed.matchedOptionValue("--like", Like.ONE_RELAY));
    if (file.equals(InputFile.STDIN)) {
      console().out().print(starter);
      return Exit.NOTHING_FOUND;
    }
    String name = Lines.harmless(file);
    OutputFile.Written written =
        new OutputFile(file).writeNew(starter.getBytes(StandardCharsets.UTF_8));
    if (written instanceof OutputFile.Refused refused) {
      return refuse(refused.why());
    }
    console().err().println("Wrote " + name + ". Change it to fit your circuit.");
    console().err().println("Next:  coilwright check " + Shell.quoted(name));
    return Exit.NOTHING_FOUND;
  }

  /** What a netlist to start from is like. */
  enum Like {
    ONE_RELAY("starter.yaml"),
    CONTACTOR("/arrangements/like/contactor.yaml"),
    THREE_PHASE("/arrangements/like/three-phase.yaml"),
    SPLIT_PHASE("/arrangements/like/split-phase.yaml"),
    TWO_LOADS("two-loads.yaml"),
    LATCH("latch.yaml");

    private final String resource;

    Like(String resource) {
      this.resource = resource;
    }

    @Override
    public String toString() {
      return typed(this).replace('_', '-');
    }
  }

  private static String starter(Like like) {
    byte[] bytes = resource(like.resource);
    if (!like.resource.startsWith("/")) {
      return new String(bytes, StandardCharsets.UTF_8);
    }
    Tables tables = Tables.load();
    BriefReader.Read read = BriefReader.read(like.resource, bytes);
    if (read instanceof BriefReader.Good good
        && Draft.of(good.brief(), tables, Judges.of(AllRules.of(tables), AllRules::runner))
            instanceof Draft.Drafted drafted) {
      return drafted.netlist();
    }
    throw new IllegalStateException("nothing can be drafted of " + like.resource);
  }

  private static byte[] resource(String name) {
    try (InputStream in = NewCommand.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalStateException("the build left out " + name);
      }
      return in.readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
