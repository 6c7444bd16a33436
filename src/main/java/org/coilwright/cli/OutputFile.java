package org.coilwright.cli;

import java.io.IOException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * A file that is written whole or not at all: beside its place first, then moved into it.
 *
 * @param name as the user gave it
 */
record OutputFile(String name) {
  /** What came of writing. */
  sealed interface Written {}

  /** It is there. */
  record Whole() implements Written {}

  /** Nothing was changed. {@code why} is one sentence, or two, for the user. */
  record Refused(String why) implements Written {}

  /**
   * Writes a PDF, under a name that says so, and over nothing that is something else.
   *
   * @param inputs names of the files that were read, which must not be lost
   */
  Written writePdf(byte[] bytes, Collection<String> inputs) {
    if (!name.toLowerCase(Locale.ROOT).endsWith(".pdf")) {
      return new Refused("A PDF ends in .pdf, and this name does not: " + name + ".");
    }
    try {
      Path target = Path.of(name);
      boolean other =
          Files.isRegularFile(target) && Files.size(target) > 0 && !KeptSheets.startsAsPdf(target);
      if (other) {
        return new Refused(
            name + " is no PDF, whatever its name says. Give another name after -o.");
      }
    } catch (IOException | InvalidPathException e) {
      return write(bytes, inputs); // which says why it cannot be
    }
    return write(bytes, inputs);
  }

  /**
   * Writes.
   *
   * @param input name of the file that was read, which must not be lost
   */
  Written write(byte[] bytes, String input) {
    return write(bytes, List.of(input));
  }

  private Written write(byte[] bytes, Collection<String> inputs) {
    Path target;
    try {
      target = Path.of(name).toAbsolutePath();
    } catch (InvalidPathException e) {
      return new Refused("No file can be called that. Give another name after -o.");
    }
    Path folder = target.getParent();
    if (name.isBlank() || folder == null || Files.isDirectory(target)) {
      return new Refused("'" + name + "' is a folder. Name a file in it after -o.");
    }
    if (!Files.isDirectory(folder)) {
      return new Refused(
          name
              + " cannot be written: its folder does not exist. Make it first, or choose another.");
    }
    if (inputs.stream().anyMatch(input -> isSame(target, input))) {
      return new Refused(name + " is a file that is read. Give another name after -o.");
    }
    if (Files.exists(target) && !Files.isRegularFile(target)) {
      return new Refused(name + " is no ordinary file. Give another name after -o.");
    }
    Optional<String> filledIn = KeptSheets.refusal(target, bytes);
    if (filledIn.isPresent()) {
      return new Refused(name + " " + filledIn.get() + " Give another name after -o.");
    }
    return beside(target, folder, bytes);
  }

  private Written beside(Path target, Path folder, byte[] bytes) {
    long process = ProcessHandle.current().pid();
    Path part = folder.resolve("." + target.getFileName() + "." + process + ".part");
    try {
      Files.write(part, bytes, StandardOpenOption.CREATE_NEW);
      move(part, target);
      return new Whole();
    } catch (IOException e) {
      try {
        Files.deleteIfExists(part);
      } catch (IOException stuck) {
        e.addSuppressed(stuck);
      }
      return new Refused(
          name + " cannot be written. Check that you may write there and that the disk has room.");
    }
  }

  private static void move(Path part, Path target) throws IOException {
    try {
      Files.move(part, target, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    } catch (AtomicMoveNotSupportedException e) {
      Files.move(part, target, StandardCopyOption.REPLACE_EXISTING);
    }
  }

  private static boolean isSame(Path target, String input) {
    try {
      return !input.equals(InputFile.STDIN) && Files.isSameFile(target, Path.of(input));
    } catch (IOException | InvalidPathException e) {
      return false;
    }
  }
}
