package org.coilwright.pdf;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Collectors;
import org.coilwright.checklist.Grounds;
import org.coilwright.checklist.Texts;

/** Citations by number, each printed once and whole in a list of its own. */
final class Sources {
  private final Map<String, Integer> numbers = new LinkedHashMap<>();
  private final Texts texts;

  Sources(Texts texts) {
    this.texts = texts;
  }

  /** {@code [3] [7], published}; and that it must be confirmed if it rests on memory. */
  String of(Grounds grounds) {
    StringBuilder out = new StringBuilder();
    for (String source : grounds.sources()) {
      int number = numbers.computeIfAbsent(source, s -> numbers.size() + 1);
      out.append(mark(number)).append(' ');
    }
    out.append('(').append(texts.standing(grounds.standing())).append(')');
    return out.toString();
  }

  /** The same, silent about what is published. */
  String brief(Grounds grounds) {
    String whole = of(grounds);
    String published = " (" + texts.standing("published") + ")";
    return whole.endsWith(published)
        ? whole.substring(0, whole.length() - published.length())
        : whole;
  }

  /** All of them, in the order in which they were cited. */
  String list() {
    return numbers.entrySet().stream()
        .map(e -> mark(e.getValue()) + " " + e.getKey() + ".")
        .collect(Collectors.joining("  "));
  }

  private static String mark(int number) {
    return "[" + number + "]";
  }

  boolean isEmpty() {
    return numbers.isEmpty();
  }
}
