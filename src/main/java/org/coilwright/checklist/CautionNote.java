package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * A caution as its file has it: front matter between two lines of dashes, then paragraphs.
 *
 * @param name file name without ending
 * @param appliesWhen all must hold
 * @param before what it stands before: topics or {@code wiring}, then the stage to fall back on
 * @param source key of the bibliography
 * @param standing word for how sure it is
 */
record CautionNote(
    String name,
    String title,
    List<Condition> appliesWhen,
    List<String> before,
    String source,
    String standing,
    List<String> paragraphs) {
  private static final String DASHES = "---";

  /**
   * Reads a file's text.
   *
   * @throws IllegalArgumentException if a key is missing or unknown: a fault of the program
   */
  static CautionNote parse(String name, String text) {
    List<String> lines = Arrays.asList(text.split("\n", -1));
    int end = lines.subList(1, lines.size()).indexOf(DASHES) + 1;
    if (!lines.get(0).equals(DASHES) || end == 0) {
      throw new IllegalArgumentException(name + " has no front matter");
    }
    Map<String, String> front = new HashMap<>();
    for (String line : lines.subList(1, end)) {
      int colon = line.indexOf(": ");
      if (colon < 0) {
        throw new IllegalArgumentException(name + " has no key in: " + line);
      }
      front.put(line.substring(0, colon), line.substring(colon + 2));
    }
    List<Condition> conditions =
        Arrays.stream(key(name, front, "applies-when").split(", ", -1))
            .map(word -> Condition.valueOf(word.replace('-', '_').toUpperCase(Locale.ROOT)))
            .toList();
    return new CautionNote(
        name,
        key(name, front, "title"),
        conditions,
        List.of(key(name, front, "before").split(", ", -1)),
        key(name, front, "source"),
        key(name, front, "standing"),
        paragraphs(lines.subList(end + 1, lines.size())));
  }

  private static String key(String name, Map<String, String> front, String key) {
    String value = front.get(key);
    if (value == null || value.isBlank()) {
      throw new IllegalArgumentException(name + " has no " + key);
    }
    return value;
  }

  private static List<String> paragraphs(List<String> lines) {
    List<String> paragraphs = new ArrayList<>();
    StringBuilder paragraph = new StringBuilder();
    for (String line : lines) {
      if (line.isBlank() && !paragraph.isEmpty()) {
        paragraphs.add(paragraph.toString());
        paragraph.setLength(0);
      } else if (!line.isBlank()) {
        paragraph.append(paragraph.isEmpty() ? "" : " ").append(line.strip());
      }
    }
    if (!paragraph.isEmpty()) {
      paragraphs.add(paragraph.toString());
    }
    return paragraphs;
  }
}
