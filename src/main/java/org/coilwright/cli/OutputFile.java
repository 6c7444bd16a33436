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
 * A file that is written whole or not at all: beside its place first, then moved into it. What it
 * would replace is looked at first. A link is followed, and the file behind it is meant.
 *
 * @param name as the user gave it
 */
record OutputFile(String name) {
  /** More links than any chain has that ends. */
  private static final int MOST_LINKS = 40;

  /** What came of writing. */
  sealed interface Written {}

  /** It is there. */
  record Whole() implements Written {}

  /** Nothing was changed. {@code why} is one sentence, or two, for the user. */
  record Refused(String why) implements Written {}

  /** Says why a file that is there must stay, as the end of a sentence. */
  @FunctionalInterface
  private interface Keeper {
    Optional<String> refusal(Path target, byte[] coming);
  }

  /**
   * Writes a PDF, under a name that says so, and over nothing but an untouched sheet.
   *
   * @param inputs names of the files that were read, which must not be lost
   */
  Written writePdf(byte[] bytes, Collection<String> inputs) {
    if (!name.toLowerCase(Locale.ROOT).endsWith(".pdf")) {
      return new Refused("A PDF ends in .pdf, and this name does not: " + name + ".");
    }
    return write(bytes, inputs, KeptSheets::refusal);
  }

  /**
   * Writes a drawing, and over nothing but a drawing that was written likewise.
   *
   * @param inputs names of the files that were read, which must not be lost
   */
  Written writeDrawing(byte[] bytes, Collection<String> inputs) {
    return write(DrawnFile.marked(bytes), inputs, DrawnFile::refusal);
  }

  /** Writes a file that is not there yet. */
  Written writeNew(byte[] bytes) {
    Written written =
        write(
            bytes,
            List.of(),
            (target, coming) ->
                Files.exists(target)
                    ? Optional.of("is there already and was left as it is.")
                    : Optional.empty());
    return written instanceof Refused refused
        ? new Refused(refused.why().replace("Give another name after -o", "Choose another name"))
        : written;
  }

  private Written write(byte[] bytes, Collection<String> inputs, Keeper keeper) {
    Path target;
    try {
      target = Path.of(name).toAbsolutePath();
    } catch (InvalidPathException e) {
      return new Refused("No file can be called that. Give another name after -o.");
    }
    Optional<String> tooLong = FileNames.tooLong(target);
    if (tooLong.isPresent()) {
      return new Refused(name + " cannot be written: " + tooLong.get() + ".");
    }
    try {
      target = behindLinks(target);
    } catch (IOException e) {
      return new Refused(name + " is a link that leads nowhere. Give another name after -o.");
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
    Optional<String> kept = kept(target, inputs, bytes, keeper);
    return kept.isPresent()
        ? new Refused(name + " " + kept.get() + " Give another name after -o.")
        : beside(target, folder, bytes);
  }

  /** Why what is there must stay. */
  private static Optional<String> kept(
      Path target, Collection<String> inputs, byte[] bytes, Keeper keeper) {
    if (inputs.stream().anyMatch(input -> isSame(target, input))) {
      return Optional.of("is a file that is read.");
    }
    if (Files.exists(target) && !Files.isRegularFile(target)) {
      return Optional.of("is no ordinary file.");
    }
    Optional<String> refusal = keeper.refusal(target, bytes);
    return refusal.isEmpty() && Files.exists(target) && !Files.isWritable(target)
        ? Optional.of("may not be written over: it is write-protected.")
        : refusal;
  }

  private static Path behindLinks(Path named) throws IOException {
    Path path = named;
    for (int links = 0; Files.isSymbolicLink(path); links++) {
      if (links > MOST_LINKS) {
        throw new IOException("links in a circle");
      }
      path = path.resolveSibling(Files.readSymbolicLink(path));
    }
    return path;
  }

  private Written beside(Path target, Path folder, byte[] bytes) {
    long process = ProcessHandle.current().pid();
    String instant = Long.toHexString(System.nanoTime());
    Path part = folder.resolve(".coilwright-" + process + "-" + instant + ".part");
    part.toFile().deleteOnExit();
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
