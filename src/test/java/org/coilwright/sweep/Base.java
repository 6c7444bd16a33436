package org.coilwright.sweep;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.coilwright.netlist.Netlist;
import org.coilwright.netlist.NetlistReader;
import org.coilwright.netlist.Reading;

/**
 * A circuit in which the sweep makes mistakes, one at a time.
 *
 * @param name its file's name without the ending
 * @param lines the file's lines, each wire on one of its own
 */
record Base(String name, List<String> lines, Netlist netlist) {
  private static final List<Path> FOLDERS =
      List.of(Path.of("wiring-examples"), Path.of("src/test/resources/sweep"));

  /** The examples that are shipped, and the circuits of the sweep's own. */
  static List<Base> all() {
    return FOLDERS.stream().flatMap(Base::in).toList();
  }

  private static Stream<Base> in(Path folder) {
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .filter(f -> f.toString().endsWith(".yaml"))
          .sorted()
          .map(Base::read)
          .toList()
          .stream();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Base read(Path file) {
    try {
      String name = String.valueOf(file.getFileName());
      Reading reading = NetlistReader.read(name, Files.readAllBytes(file));
      if (reading instanceof Reading.Read read) {
        return new Base(
            name.substring(0, name.lastIndexOf('.')), Files.readAllLines(file), read.netlist());
      }
      throw new AssertionError(file + " cannot be read: " + reading);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
