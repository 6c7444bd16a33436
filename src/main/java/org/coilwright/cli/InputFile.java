package org.coilwright.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Collection;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import org.coilwright.netlist.FolderIncludes;
import org.coilwright.netlist.Includes;
import org.coilwright.netlist.LargestFile;
import org.coilwright.netlist.ReadingProblem;
import org.coilwright.quantity.Words;

/** The bytes of a netlist, or why there are none. */
sealed interface InputFile {
  /** Names of all files that were read so far, those included among them. */
  Collection<String> files();

  /** What the user called standard input. */
  String STDIN = "-";

  /** What every PDF begins with. */
  String PDF = "%PDF-";

  /**
   * Bytes were there.
   *
   * @param includes brings what it includes
   */
  @SuppressWarnings("ArrayRecordComponent") // handed on once, never compared
  record Bytes(String name, byte[] bytes, Includes includes) implements InputFile {
    @Override
    public Collection<String> files() {
      return Stream.concat(Stream.of(name), includes.files().stream().map(Path::toString)).toList();
    }
  }

  /** Nothing to read. */
  record Missing(ReadingProblem problem) implements InputFile {
    @Override
    public Collection<String> files() {
      return List.of();
    }
  }

  /** Reads what {@code name} stands for; {@code -} is standard input. */
  static InputFile read(String name, InputStream stdin) {
    try {
      if (name.equals(STDIN)) {
        return bounded(name, stdin, Includes.none());
      }
      if (name.isBlank()) {
        return missing(name, "an empty name names no file", "give the path of a netlist");
      }
      Path path = Path.of(name);
      Optional<String> tooLong = FileNames.tooLong(path);
      if (tooLong.isPresent()) {
        return missing(name, tooLong.get(), "check the path");
      }
      if (Files.isDirectory(path)) {
        return missing(name, name + " is a folder", folderRemedy(path));
      }
      if (Files.isRegularFile(path) && Files.size(path) > LargestFile.BYTES) {
        return tooLarge(name, LargestFile.words(Files.size(path)));
      }
      try (InputStream in = Files.newInputStream(path)) {
        return bounded(name, in, new FolderIncludes(name, path));
      }
    } catch (NoSuchFileException e) {
      return missing(name, "there is no file " + name, nearRemedy(name));
    } catch (AccessDeniedException e) {
      return missing(
          name, name + " may not be read by this user", "change its permissions, or copy it");
    } catch (InvalidPathException e) {
      return missing(name, "no file can have this name", "give the path of a netlist");
    } catch (IOException e) {
      return missing(
          name,
          name + " cannot be read: " + Objects.requireNonNullElse(e.getMessage(), "unknown"),
          "check the disk, or copy the file elsewhere");
    }
  }

  private static InputFile bounded(String name, InputStream in, Includes includes)
      throws IOException {
    byte[] bytes = in.readNBytes(LargestFile.BYTES + 1);
    if (bytes.length > LargestFile.BYTES) {
      return tooLarge(name, "more than " + LargestFile.words());
    }
    if (new String(bytes, 0, Math.min(bytes.length, PDF.length()), StandardCharsets.ISO_8859_1)
        .equals(PDF)) {
      return missing(
          name,
          (name.equals(STDIN) ? "this" : name) + " is a PDF and no netlist",
          "coilwright readback reads a filled-in sheet; coilwright verify checks the netlist in"
              + " it");
    }
    return new Bytes(name, bytes, includes);
  }

  private static InputFile tooLarge(String name, String size) {
    return missing(
        name,
        "%s has %s; at most %s are read"
            .formatted(name.equals(STDIN) ? "this" : name, size, LargestFile.words()),
        "a netlist is a small text file: check that this is the one you mean, or split it");
  }

  private static InputFile missing(String name, String what, String remedy) {
    return new Missing(new ReadingProblem(name, Optional.empty(), what, remedy, Optional.empty()));
  }

  private static String folderRemedy(Path folder) {
    return netlistsIn(folder).stream()
        .findFirst()
        .map(file -> "name a file in it, such as " + folder.resolve(file))
        .orElse("name a file");
  }

  private static String nearRemedy(String name) {
    Path path = Path.of(name);
    Path folder = path.getParent() == null ? Path.of("") : path.getParent();
    Path last = path.getFileName();
    List<String> near =
        Near.to(last == null ? name : last.toString(), netlistsIn(folder)).stream()
            .map(file -> folder.resolve(file).toString())
            .toList();
    return near.isEmpty()
        ? "check the path; coilwright new FILE writes a netlist to start from"
        : "did you mean " + Words.either(near) + "?";
  }

  private static List<String> netlistsIn(Path folder) {
    Path listed = folder.toString().isEmpty() ? Path.of(".") : folder;
    try (Stream<Path> files = Files.list(listed)) {
      return files
          .map(file -> String.valueOf(file.getFileName()))
          .filter(file -> file.endsWith(".yaml") || file.endsWith(".yml"))
          .limit(1000)
          .sorted()
          .toList();
    } catch (IOException | java.io.UncheckedIOException e) {
      return List.of();
    }
  }
}
