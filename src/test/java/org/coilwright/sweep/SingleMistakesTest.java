package org.coilwright.sweep;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
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
import org.coilwright.rules.AllRules;
import org.coilwright.table.Tables;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * Every single mistake with the wires and values of ten circuits: what an oracle of its own sees in
 * each must be named by the rules that mean it. A part drawn by a seed; with {@code -Psweep} all.
 */
class SingleMistakesTest {
  private static final boolean WHOLE = System.getProperty("sweep", "").equals("all");

  /** The share of moved and missing wires whose first finding may be about something else. */
  private static final double MISLED_SHARE = 0.01;

  private static Tally tally = new Tally();

  @BeforeAll
  static void sweep() {
    tally = Sweep.run(WHOLE, SingleMistakesTest::keep);
    System.out.println(tally.table());
  }

  /** What is known so far, in the files that a run leaves behind. */
  private static void keep(Tally tally) {
    try {
      write(tally, Files.createDirectories(Path.of("target")));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void write(Tally tally, Path target) throws IOException {
    Files.writeString(target.resolve("sweep.txt"), tally.table());
    List<String> details = new ArrayList<>();
    tally.gaps().forEach((what, m) -> m.forEach(name -> details.add(what + "\t" + name)));
    tally
        .alarms()
        .forEach((what, m) -> m.forEach(name -> details.add("alarm " + what + "\t" + name)));
    tally.faults().forEach((name, trace) -> details.add("failed\t" + name + "\t" + trace));
    Files.write(target.resolve("sweep-mutants.txt"), details);
  }

  @Test
  void no_mistake_makes_the_program_fail() {
    assertEquals("", String.join("\n\n", tally.faults().values()));
  }

  @Test
  void no_hazard_is_passed_over_in_silence() {
    held("silent");
  }

  @Test
  void no_rule_says_and_unsays_one_thing() {
    held("contradiction");
  }

  @Test
  void one_mistake_gives_no_more_findings_than_a_person_reads() {
    held("many");
  }

  @Test
  void the_first_finding_is_about_the_mistake() {
    if (tally.misledShare() > MISLED_SHARE) {
      held("misled");
    }
  }

  /** What the known gaps do not cover. Nothing may be added to their list. */
  private static void held(String kind) {
    Map<String, Set<String>> found = new TreeMap<>();
    tally
        .gaps()
        .forEach(
            (what, mutants) -> {
              if (what.startsWith(kind)) {
                found.put(what, mutants);
              }
            });
    List<String> differences = Known.read("known-gaps.txt", WHOLE).only(kind).differences(found);
    assertEquals("", String.join("\n", differences));
  }

  @Test
  void each_false_alarm_is_explained() {
    List<String> differences =
        Known.read("explained-alarms.txt", WHOLE).differences(tally.alarms());
    assertEquals("", String.join("\n", differences));
  }

  @Test
  void what_is_wrong_with_the_circuits_themselves_is_known() {
    Map<String, String> seen = new TreeMap<>();
    for (Base base : Base.all()) {
      seen.put(base.name(), String.valueOf(Oracle.dangers(base.netlist())));
    }
    seen.values().removeIf("[]"::equals);
    assertEquals(
        Map.of(
            "attic-mistakes",
            "[SHORT_CIRCUIT, RESERVED_PIN at U1, RELAY_INSULATION at K1, EARTH_MISSING at E2]",
            "press-shop",
            "[LATCHING at Q1]"),
        seen);
  }

  @Test
  void the_rules_that_mean_a_hazard_are_there() {
    Set<String> rules =
        AllRules.of(Tables.load()).stream().map(r -> r.facts().id()).collect(Collectors.toSet());
    Map<String, Set<String>> missing = new TreeMap<>();
    for (Hazard hazard : Hazard.values()) {
      for (String rule : hazard.rules()) {
        if (!rules.contains(rule)) {
          missing.computeIfAbsent("rule " + rule, r -> new TreeSet<>()).add("" + hazard);
        }
      }
    }
    List<String> differences = Known.read("known-gaps.txt", true).only("rule").differences(missing);
    assertEquals("", String.join("\n", differences));
  }

  @Test
  void the_whole_sweep_meets_every_hazard() {
    Set<Hazard> unseen = EnumSet.allOf(Hazard.class);
    unseen.removeAll(tally.hazards());
    unseen.removeAll(RuleFixturesTest.reachedHere());
    assertTrue(!WHOLE || unseen.isEmpty(), () -> "never met: " + unseen);
  }
}
