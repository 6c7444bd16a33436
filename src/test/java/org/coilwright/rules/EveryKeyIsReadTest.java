// Over 250 lines: one walk along all keys, and the lists it is held against.
package org.coilwright.rules;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.coilwright.netlist.KeyMutants;
import org.coilwright.netlist.KeyMutants.Mutant;
import org.coilwright.netlist.NetlistReader;
import org.coilwright.netlist.Reading;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Outcome.Undecided;
import org.coilwright.rule.Outcome.Violated;
import org.coilwright.rule.Report;
import org.coilwright.rule.Runner;
import org.coilwright.sizing.WarmBox;
import org.coilwright.table.Tables;
import org.junit.jupiter.api.Test;

/**
 * A check may be satisfied only by what it looked at: whatever is written under a key, there must
 * be a value so absurd that a rule judges otherwise or the file is refused. What merely appears in
 * a text does not count. {@code src/test/resources/keys/not-judged.txt} names the keys that no rule
 * judges, each with the reason; it may only shrink. {@code witnesses.txt} holds, for each other
 * key, a change that shows it, so that a build need not look for one; {@code -Daccept=true} looks
 * anew. The whole table, every key with the rules that judge it, is written to {@code
 * target/keys.txt}.
 */
class EveryKeyIsReadTest {
  private static final Path NOT_JUDGED = Path.of("src/test/resources/keys/not-judged.txt");
  private static final Path OWN = Path.of("src/test/resources/keys");
  private static final Path EXAMPLES = Path.of("wiring-examples");
  private static final Path WITNESSES = Path.of("src/test/resources/keys/witnesses.txt");
  private static final boolean ACCEPT = Boolean.getBoolean("accept");
  private static final Path TABLE = Path.of("target/keys.txt");

  /** Netlists in which a key is tried before it is said to be read by nothing. */
  private static final int MOST_FILES = 8;

  private static final Set<String> REFUSED = Set.of("refused by the reader");

  private static final Tables TABLES = Tables.load();
  private final Runner runner = AllRules.runner(TABLES);
  private final Map<Path, Set<String>> sound = new LinkedHashMap<>();

  /** A change of a key after which rules judge otherwise. */
  private record Witness(String key, Path file, String place, String value, Set<String> rules) {
    String line() {
      return String.join(" | ", key, file.toString(), place, value);
    }
  }

  @Test
  void no_value_is_without_a_rule_that_judges_it() throws IOException {
    Map<String, String> known = known();
    Map<String, Map<Path, List<Mutant>>> mutants = mutants(known);
    Map<String, String> reasons = reasons();
    Map<String, String> readBy = new LinkedHashMap<>();
    List<String> witnesses = new ArrayList<>();
    Set<String> silent = new TreeSet<>();
    Set<String> judgedAfterAll = new TreeSet<>();
    for (String key : KeyMutants.keys()) {
      boolean excused = isExcused(reasons, key);
      Map<Path, List<Mutant>> byFile = mutants.getOrDefault(key, Map.of());
      Optional<Witness> found = witness(byFile, known.getOrDefault(key, ""), excused);
      found.ifPresent(witness -> witnesses.add(witness.line()));
      readBy.put(
          key,
          found
              .map(witness -> String.join(", ", witness.rules()))
              .orElse(excused ? "nothing: said on the list" : "nothing"));
      if (found.isEmpty() && !excused) {
        silent.add(key);
      }
      if (found.isPresent() && excused) {
        judgedAfterAll.add(key);
      }
    }
    Files.createDirectories(TABLE.getParent());
    Files.write(
        TABLE, readBy.entrySet().stream().map(e -> e.getKey() + ": " + e.getValue()).toList());
    if (ACCEPT) {
      Files.write(WITNESSES, witnesses);
    }
    assertEquals(Set.of(), silent, "keys that no rule judges, or that no netlist of the tests has");
    assertEquals(Set.of(), judgedAfterAll, "keys that are judged: take them off the list");
  }

  /**
   * A change that a rule answers. The one that is known is tried first; without it, or where it
   * shows nothing any more, all are.
   */
  private Optional<Witness> witness(Map<Path, List<Mutant>> byFile, String known, boolean excused)
      throws IOException {
    if (!ACCEPT) {
      for (Map.Entry<Path, List<Mutant>> entry : byFile.entrySet()) {
        for (Mutant mutant : entry.getValue()) {
          Witness tried = tried(entry.getKey(), mutant, Set.of());
          if (tried.line().equals(known)) {
            Set<String> rules = readers(sound(entry.getKey()), verdicts(mutant));
            if (!rules.isEmpty()) {
              return Optional.of(tried(entry.getKey(), mutant, rules));
            }
          }
        }
      }
    }
    Optional<Witness> refused = Optional.empty();
    for (Map.Entry<Path, List<Mutant>> entry :
        byFile.entrySet().stream().limit(excused ? 1 : MOST_FILES + 1).toList()) {
      Set<String> before = sound(entry.getKey());
      for (Mutant mutant : entry.getValue()) {
        Set<String> after = verdicts(mutant);
        if (after.equals(REFUSED)) {
          refused = refused.or(() -> Optional.of(tried(entry.getKey(), mutant, REFUSED)));
        } else if (!after.equals(before)) {
          return Optional.of(tried(entry.getKey(), mutant, readers(before, after)));
        }
      }
    }
    return refused;
  }

  private static Witness tried(Path file, Mutant mutant, Set<String> rules) {
    return new Witness(mutant.key(), file, mutant.place(), mutant.is(), rules);
  }

  private static boolean isExcused(Map<String, String> reasons, String key) {
    return reasons.keySet().stream().anyMatch(entry -> covers(entry, key));
  }

  /** True if an entry of the list means a key; {@code parts.any.note} means that of every part. */
  private static boolean covers(String entry, String key) {
    return entry.startsWith("parts.any.")
        ? key.matches("parts\\.[a-z-]+" + Pattern.quote(entry.substring("parts.any".length())))
        : entry.equals(key);
  }

  private static Map<String, String> known() throws IOException {
    return Files.readAllLines(WITNESSES).stream()
        .collect(Collectors.toMap(line -> line.substring(0, line.indexOf(" | ")), line -> line));
  }

  /** The keys that no rule judges, with the reason behind the colon. */
  private static Map<String, String> reasons() throws IOException {
    return Files.readAllLines(NOT_JUDGED).stream()
        .filter(line -> !line.isBlank() && !line.startsWith("#"))
        .collect(
            Collectors.toMap(
                line -> line.substring(0, line.indexOf(": ")),
                line -> line.substring(line.indexOf(": ") + 2),
                (one, other) -> one,
                TreeMap::new));
  }

  private static Map<String, Map<Path, List<Mutant>>> mutants(Map<String, String> known)
      throws IOException {
    Map<String, Map<Path, List<Mutant>>> mutants = new LinkedHashMap<>();
    for (Path file : files()) {
      KeyMutants.of(Files.readAllBytes(file))
          .forEach(
              (key, list) -> {
                Map<Path, List<Mutant>> byFile =
                    mutants.computeIfAbsent(key, k -> new LinkedHashMap<>());
                boolean witnessed =
                    known.getOrDefault(key, "").contains(" | %s | ".formatted(file));
                if (byFile.size() < MOST_FILES || witnessed) {
                  byFile.put(file, list);
                }
              });
    }
    return mutants;
  }

  /** The shipped examples first, then the netlists of this test, then the fixtures of the rules. */
  private static List<Path> files() throws IOException {
    List<Path> files = new ArrayList<>();
    for (Path folder : List.of(EXAMPLES, OWN)) {
      try (Stream<Path> found = Files.list(folder)) {
        found.filter(file -> file.toString().endsWith(".yaml")).sorted().forEach(files::add);
      }
    }
    for (Fixture.Kind kind : List.of(Fixture.Kind.GOOD, Fixture.Kind.BAD)) {
      Fixture.all().stream()
          .filter(fixture -> fixture.kind() == kind)
          .map(Fixture::netlist)
          .forEach(files::add);
    }
    return files;
  }

  private static Set<String> readers(Set<String> before, Set<String> after) {
    if (after.equals(REFUSED)) {
      return REFUSED;
    }
    Set<String> changed = new TreeSet<>(before);
    changed.addAll(after);
    changed.removeIf(verdict -> before.contains(verdict) && after.contains(verdict));
    return changed.stream()
        .map(verdict -> verdict.substring(0, verdict.indexOf(' ')))
        .collect(Collectors.toCollection(TreeSet::new));
  }

  private Set<String> sound(Path file) throws IOException {
    Set<String> known = sound.get(file);
    if (known == null) {
      known = verdicts(Files.readAllBytes(file));
      sound.put(file, known);
    }
    return known;
  }

  private Set<String> verdicts(Mutant mutant) {
    return verdicts(mutant.netlist().getBytes(StandardCharsets.UTF_8));
  }

  /** How each rule judges each subject, without a word of what it prints. */
  private Set<String> verdicts(byte[] netlist) {
    if (!(NetlistReader.read("key.yaml", netlist) instanceof Reading.Read read)) {
      return REFUSED;
    }
    Report report = runner.run(WarmBox.study(read.netlist(), TABLES));
    Set<String> verdicts = new TreeSet<>();
    report.findings().forEach(f -> verdicts.add(verdict(f, f.weight().toString())));
    report.silenced().values().stream()
        .flatMap(List::stream)
        .forEach(f -> verdicts.add(verdict(f, f.weight().toString())));
    report.satisfied().forEach(s -> verdicts.add(verdict(s, "satisfied")));
    for (Undecided undecided : report.undecided()) {
      verdicts.add(verdict(undecided, "undecided for " + undecided.missing()));
    }
    return verdicts;
  }

  private static String verdict(Outcome outcome, String how) {
    Object at = outcome instanceof Violated violated ? violated.at().get(0) : outcome.at();
    return "%s %s %s".formatted(outcome.rule().id(), how, at);
  }
}
