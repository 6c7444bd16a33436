package org.coilwright.sweep;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.coilwright.rule.Report;
import org.coilwright.sweep.Examiner.Answer;
import org.junit.jupiter.api.Test;

/**
 * The oracle looks at the circuits of all rules, too: what it finds dangerous there must be named,
 * and what is not is listed with the reason. A part drawn by name; with {@code -Psweep} all.
 */
class RuleFixturesTest {
  private static final boolean WHOLE = System.getProperty("sweep", "").equals("all");

  /** One in so many is looked at in each build. */
  private static final int ONE_IN = 24;

  private static final Path RULES = Path.of("src/test/resources/rules");

  /** Circuits in which the oracle sees more than there is: file, danger and why. */
  private static final Path BEYOND = Path.of("src/test/resources/sweep/fixtures-beyond.txt");

  /** What no single mistake in a sound circuit of the sweep leads to. */
  private static final Set<Hazard> REACHED_HERE =
      EnumSet.of(Hazard.SHARED_DEVICE, Hazard.EARTH_SWITCHED, Hazard.DIODE_CONDUCTS);

  private final Map<String, String> silent = new TreeMap<>();
  private final Set<Hazard> named = EnumSet.noneOf(Hazard.class);
  private final Set<String> contradictions = new TreeSet<>();
  private final Set<String> looked = new TreeSet<>();

  @Test
  void what_the_oracle_finds_in_the_circuits_of_the_rules_is_named() throws IOException {
    Examiner examiner = new Examiner();
    for (Path file : fixtures()) {
      look(examiner, file);
    }
    Map<String, String> known = known();
    List<String> differences = new ArrayList<>(contradictions);
    silent.forEach(
        (file, dangers) -> {
          if (!dangers.equals(known.get(file))) {
            differences.add(file + " | " + dangers + " | (why?)");
          }
        });
    known.keySet().stream()
        .filter(file -> looked.contains(file) && !silent.containsKey(file))
        .forEach(file -> differences.add(file + ": gone; strike it out of " + BEYOND));
    assertEquals("", String.join("\n", differences));
    if (WHOLE) {
      Set<Hazard> unseen = EnumSet.copyOf(REACHED_HERE);
      unseen.removeAll(named);
      assertEquals(Set.of(), unseen, "no circuit of a rule shows it");
    }
  }

  /** Hazards that the sweep of single mistakes need not meet, because this test does. */
  static Set<Hazard> reachedHere() {
    return REACHED_HERE;
  }

  private void look(Examiner examiner, Path file) throws IOException {
    String text = Files.readString(file);
    Answer answer = examiner.check(text);
    assertEquals("", answer.fault(), file::toString);
    if (answer.isRefused()) {
      return;
    }
    String name = RULES.relativize(file).toString().replace('\\', '/');
    looked.add(name);
    Report report = answer.report().orElseThrow();
    Mutant unchanged =
        new Mutant(name, Mutant.Kind.VALUE, "as it is", text.lines().toList(), Set.of(), Set.of());
    Verdict verdict =
        Verdict.of(unchanged, Oracle.dangers(answer.netlist().orElseThrow()), report, report);
    verdict.named().forEach(danger -> named.add(danger.hazard()));
    verdict.contradictions().forEach(c -> contradictions.add(name + ": " + c));
    if (!verdict.silent().isEmpty()) {
      silent.put(
          name,
          verdict.silent().stream()
              .map(Danger::toString)
              .sorted()
              .collect(Collectors.joining(", ")));
    }
  }

  private static List<Path> fixtures() throws IOException {
    try (Stream<Path> files = Files.walk(RULES)) {
      return files
          .filter(f -> f.toString().endsWith(".yaml"))
          .filter(f -> WHOLE || Math.floorMod(RULES.relativize(f).hashCode(), ONE_IN) == 0)
          .sorted()
          .toList();
    }
  }

  private static Map<String, String> known() throws IOException {
    Map<String, String> known = new TreeMap<>();
    for (String line : Files.readAllLines(BEYOND)) {
      if (!line.isBlank() && !line.startsWith("#")) {
        String[] pieces = line.split("\\s*\\|\\s*", 3);
        assertEquals(3, pieces.length, line);
        known.put(pieces[0], pieces[1]);
      }
    }
    return known;
  }
}
