package org.coilwright.sweep;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * A list of what is known, and may only become shorter. In each line, with bars between: what it
 * is, how many mutants show it at most in the part drawn for each build, how many in the whole
 * sweep ({@code -} where that has not been counted), and why.
 */
final class Known {
  private final Path file;
  private final boolean whole;
  private final Map<String, Integer> most = new LinkedHashMap<>();

  private Known(Path file, boolean whole) {
    this.file = file;
    this.whole = whole;
  }

  static Known read(String name, boolean whole) {
    Known known = new Known(Path.of("src/test/resources/sweep", name), whole);
    try {
      for (String line : Files.readAllLines(known.file)) {
        if (!line.isBlank() && !line.startsWith("#")) {
          known.add(line);
        }
      }
      return known;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void add(String line) {
    String[] pieces = line.split("\\s*\\|\\s*", 4);
    if (pieces.length < 4 || pieces[3].isBlank()) {
      throw new AssertionError(file + " gives no reason: " + line);
    }
    String number = pieces[whole ? 2 : 1];
    most.put(pieces[0].trim(), number.equals("-") ? Integer.MAX_VALUE : Integer.parseInt(number));
  }

  /** The entries that begin with {@code kind}. */
  Known only(String kind) {
    Known some = new Known(file, whole);
    most.forEach(
        (what, known) -> {
          if (what.startsWith(kind)) {
            some.most.put(what, known);
          }
        });
    return some;
  }

  /**
   * What is found and not known, or oftener than known; in the whole sweep also what is known and
   * no longer found at all, because then the list must be made shorter.
   */
  List<String> differences(Map<String, Set<String>> found) {
    List<String> differences = new ArrayList<>();
    found.forEach(
        (what, mutants) -> {
          int known = most.getOrDefault(what, 0);
          if (mutants.size() > known) {
            List<String> some = mutants.stream().limit(5).toList();
            differences.add(
                "%s: %d mutants, %d known, such as\n      %s"
                    .formatted(what, mutants.size(), known, String.join("\n      ", some)));
          }
        });
    if (whole) {
      most.keySet().stream()
          .filter(what -> !found.containsKey(what))
          .forEach(what -> differences.add(what + ": gone; strike it out of " + file));
    }
    return differences;
  }
}
