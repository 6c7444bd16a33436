package org.coilwright.rules;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * A netlist that shows one rule at work. Its folder names the rule, its own name says what the rule
 * must answer.
 *
 * @param rule id of the rule
 * @param kind what the rule must answer
 * @param name what it is about, the part of the file name after the kind
 * @param netlist the netlist's path
 */
record Fixture(String rule, Kind kind, String name, Path netlist) {
  static final Path ROOT = Path.of("src/test/resources/rules");

  private static final Pattern FILE_NAME = Pattern.compile("(bad|good|undecided)-(.+)\\.yaml");

  /** What the rule must answer. */
  enum Kind {
    /** It is violated. */
    BAD,
    /** It is satisfied somewhere and violated nowhere. */
    GOOD,
    /** It cannot be checked. */
    UNDECIDED
  }

  /** Every fixture, by rule and then by file name. */
  static List<Fixture> all() {
    return files().stream().flatMap(file -> of(file).stream()).toList();
  }

  /** Every file below the root, sorted. */
  static List<Path> files() {
    try (Stream<Path> files = Files.walk(ROOT)) {
      return files.filter(Files::isRegularFile).sorted().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The fixture a file is; empty if its name is none of a fixture's. */
  static Optional<Fixture> of(Path file) {
    Matcher name = FILE_NAME.matcher(file.getFileName().toString());
    Path folder = file.getParent();
    if (folder == null || !name.matches()) {
      return Optional.empty();
    }
    return Optional.of(
        new Fixture(
            folder.getFileName().toString(),
            Kind.valueOf(name.group(1).toUpperCase(Locale.ROOT)),
            name.group(2),
            file));
  }

  /** The file that holds the text a user sees. */
  Path expected() {
    return netlist.resolveSibling(stem() + ".expected.txt");
  }

  /** The good fixture that shows the same thing put right. */
  Optional<Fixture> twin() {
    Path good = netlist.resolveSibling("good-" + name + ".yaml");
    return kind == Kind.BAD && Files.exists(good) ? of(good) : Optional.empty();
  }

  /** The file name without its ending. */
  String stem() {
    return netlist.getFileName().toString().replaceFirst("\\.yaml$", "");
  }

  /** The lines of the netlist. */
  List<String> lines() {
    return read(netlist).lines().toList();
  }

  /** The text of a file. */
  static String read(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public String toString() {
    return rule + "/" + stem();
  }
}
