package org.coilwright.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** {@code coilwright new [FILE]}. */
@Command(
    name = "new",
    description = "Writes a commented netlist to start from; never over a file that is there.",
    footer = {"", "Examples:", "  coilwright new boiler.yaml", "  coilwright new | less"})
final class NewCommand extends ConsoleCommand {
  @Parameters(
      arity = "0..1",
      paramLabel = "FILE",
      description = "File to write; standard output without it.")
  private String file = InputFile.STDIN;

  NewCommand(Console console) {
    super(console);
  }

  @Override
  public Integer call() throws IOException {
    byte[] starter = starter();
    if (file.equals(InputFile.STDIN)) {
      console().out().write(starter);
      return Exit.NOTHING_FOUND;
    }
    String name = Lines.harmless(file);
    try {
      Files.write(Path.of(file), starter, StandardOpenOption.CREATE_NEW);
      console().err().println("Wrote " + name + ". Change it to fit your circuit.");
      console().err().println("Next:  coilwright check " + Shell.quoted(name));
      return Exit.NOTHING_FOUND;
    } catch (FileAlreadyExistsException e) {
      console()
          .err()
          .println(name + " is there already and was left as it is. Choose another name.");
    } catch (NoSuchFileException e) {
      console()
          .err()
          .println(name + " cannot be written: its folder does not exist. Make it first.");
    } catch (InvalidPathException | IOException e) {
      console().err().println(name + " cannot be written. Choose a place where you may write.");
    }
    return Exit.UNUSABLE;
  }

  private static byte[] starter() throws IOException {
    try (InputStream in = NewCommand.class.getResourceAsStream("starter.yaml")) {
      if (in == null) {
        throw new IllegalStateException("the build left out starter.yaml");
      }
      return in.readAllBytes();
    }
  }
}
