package org.coilwright;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.coilwright.netlist.NetlistSchema;
import org.junit.jupiter.api.Test;

/**
 * What is printed decides nothing: reword a sentence, and no figure and no finding may change. So
 * no source compares a text with a literal, but for the readers, whose work that is; a whole word
 * of the netlist and the name of a pin may be asked for. {@code text-decides.txt} holds what is
 * left, each with its reason.
 */
class TextDecidesTest {
  private static final Path SOURCES = Path.of("src/main/java/org/coilwright");
  private static final Path LIST = Path.of("src/test/resources/text-decides.txt");

  /** How long the list was when it was begun; it may only become shorter. */
  private static final int MOST = 25;

  /** They read what people and programs write: files, briefs, filled-in sheets, tables. */
  private static final List<String> READERS =
      List.of(
          "cli/",
          "draft/",
          "netlist/",
          "quantity/",
          "table/",
          "checklist/",
          "pdf/",
          "behaviour/Day");

  private static final Pattern LITERAL =
      Pattern.compile(
          "\\.(startsWith|endsWith|contains|matches|equals|equalsIgnoreCase|indexOf)"
              + "\\(\\s*\"((?:[^\"\\\\]|\\\\.)*)\"");

  /** Sentences and their parts, whatever they are compared with. */
  private static final Pattern SENTENCE =
      Pattern.compile(
          "\\b(why|words|headline|numbers|sentence|detail|remedy|[a-z]+Reason)\\(\\)\\s*"
              + "\\.(startsWith|endsWith|contains|matches|equals|indexOf)\\(([^)]*)\\)");

  private static final Pattern PIN = Pattern.compile("PE|N|L[123]?|[0-9]{1,2}");

  private static Set<String> found() throws IOException {
    Set<String> found = new TreeSet<>();
    try (Stream<Path> files = Files.walk(SOURCES)) {
      for (Path file : files.filter(f -> f.toString().endsWith(".java")).sorted().toList()) {
        String name = SOURCES.relativize(file).toString().replace('\\', '/');
        if (READERS.stream().noneMatch(name::startsWith)) {
          String text = Files.readString(file);
          compared(text).forEach(c -> found.add(name + " " + c));
        }
      }
    }
    return found;
  }

  /** The comparisons in a source that a text decides. */
  private static Set<String> compared(String source) {
    Set<String> found = new TreeSet<>();
    Matcher literal = LITERAL.matcher(source);
    while (literal.find()) {
      boolean whole = literal.group(1).startsWith("equals") || literal.group(1).equals("contains");
      String word = literal.group(2);
      if (!whole || !(PIN.matcher(word).matches() || WORDS.contains('"' + word + '"'))) {
        found.add(literal.group(1) + " " + word);
      }
    }
    Matcher sentence = SENTENCE.matcher(source);
    while (sentence.find()) {
      found.add(sentence.group(1) + "() " + sentence.group(2) + " " + sentence.group(3));
    }
    return found;
  }

  private static final String WORDS = NetlistSchema.text();

  private static Map<String, String> listed() throws IOException {
    Map<String, String> reasons = new LinkedHashMap<>();
    for (String line : Files.readAllLines(LIST)) {
      if (!line.isBlank() && !line.startsWith("#")) {
        String[] parts = line.split(" \\| ", 2);
        assertEquals(2, parts.length, "no reason: " + line);
        reasons.put(parts[0], parts[1]);
      }
    }
    return reasons;
  }

  @Test
  void no_printed_word_decides_anything() throws IOException {
    Map<String, String> listed = listed();
    Set<String> found = found();
    Set<String> fresh = new TreeSet<>(found);
    fresh.removeAll(listed.keySet());
    assertEquals(Set.of(), fresh, "a text decides; use a value, an enum or a named question");
    Set<String> gone = new TreeSet<>(listed.keySet());
    gone.removeAll(found);
    assertEquals(Set.of(), gone, "no longer there: strike it from " + LIST);
    assertTrue(listed.size() <= MOST, () -> listed.size() + " are listed, at most " + MOST);
  }

  @Test
  void a_text_that_decides_is_found() {
    assertEquals(
        Set.of("startsWith air at", "why() startsWith \"air at\""),
        compared("if (factor.why().startsWith(\"air at\")) {"));
    assertEquals(Set.of("endsWith star"), compared("!element.id().endsWith(\"star\")"));
    assertEquals(
        Set.of("operateReason() startsWith operate.text("),
        compared("limits.operateReason().startsWith(operate.text())"));
    assertEquals(Set.of("equals too warm"), compared("x.equals(\"too warm\")"));
    assertEquals(Set.of(), compared("earthing.equals(\"TT\") || pin.equals(\"PE\")"));
  }
}
