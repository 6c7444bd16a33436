package org.coilwright.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import picocli.CommandLine.Model.CommandSpec;
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
            "Examples:",
            "  coilwright new boiler.yaml",
            "  coilwright new | less");
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
    String starter = starter();
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

  private static String starter() {
    try (InputStream in = NewCommand.class.getResourceAsStream("starter.yaml")) {
      if (in == null) {
        throw new IllegalStateException("the build left out starter.yaml");
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
