package org.coilwright.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
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
    try {
      Files.writeString(Path.of(file), starter, StandardOpenOption.CREATE_NEW);
      console().err().println("Wrote " + name + ". Change it to fit your circuit.");
      console().err().println("Next:  coilwright check " + Shell.quoted(name));
      return Exit.NOTHING_FOUND;
    } catch (FileAlreadyExistsException e) {
      say(name + " is there already and was left as it is. Choose another name.");
    } catch (NoSuchFileException e) {
      say(name + " cannot be written: its folder does not exist. Make it first.");
    } catch (InvalidPathException | IOException e) {
      say(name + " cannot be written. Choose a place where you may write.");
    }
    return Exit.UNUSABLE;
  }

  private void say(String sentence) {
    console().err().println(sentence);
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
