// Over 250 lines: one kind of reading after the other, held against the same boards.
package org.coilwright.solve;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.coilwright.circuit.Bench;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Circuit;
import org.junit.jupiter.api.Test;

/** Circuits that share a feed say the same, parted or not. */
class FeedsTest {
  private static final String ONE = "{phases: 1, voltage: 230 V ± 10 %, frequency: 50 Hz}";

  /** Twice the square of what a stiff feed may lose. */
  private static final double SECOND_ORDER = 2 * Feeds.STIFF * Feeds.STIFF;

  private static Circuit board(Random random, int round) {
    boolean three = round % 3 == 0;
    return Bench.circuit(
        three ? Studies.THREE : ONE, SharedFeed.of(random, three, 2 + random.nextInt(2)));
  }

  private static boolean isRestless(Study study) {
    return !Studies.troubles(study, Trouble.NoSteadyState.class).isEmpty();
  }

  @Test
  void every_reading_of_random_boards_is_the_same_parted_or_not() {
    Random random = new Random(311);
    int parted = 0;
    for (int round = 0; round < 60; round++) {
      Circuit circuit = board(random, round);
      Study apart = Study.of(circuit, Studies.TABLES);
      Study together = Study.unparted(circuit, Studies.TABLES);
      if (!isRestless(together) && apart.listsEveryCombination()) {
        parted += apart.model().grid.bundles().size();
        assertEquals(told(together), told(apart), "round " + round);
      }
    }
    assertTrue(parted > 30, "parted " + parted);
  }

  /** What every coil, load, contact and supply does, by the state. */
  private static Map<String, String> told(Study study) {
    Map<String, String> told = new TreeMap<>();
    for (State state : study.states()) {
      StringBuilder row = new StringBuilder();
      for (String relay : state.pulledIn().keySet()) {
        CoilReading coil = study.coil(relay, state);
        row.append(relay).append(digits(coil.volts())).append(digits(coil.lowest()));
        row.append(digits(coil.highest())).append(digits(coil.amps())).append(coil.highestCorner());
      }
      for (String load : loads(study)) {
        row.append(load).append(digits(study.load(load, state).watts()));
        study
            .loadVolts(load, state)
            .ifPresent(v -> row.append(digits(v.lowest())).append(digits(v.highest())));
      }
      for (Branch.Contact contact : study.circuit().branches(Branch.Contact.class)) {
        ContactReading reading = study.contact(contact, state);
        row.append(reading.closed()).append(digits(reading.amps())).append(digits(reading.volts()));
      }
      for (Branch.Source source : study.circuit().branches(Branch.Source.class)) {
        row.append(digits(study.supply(source.id(), state).amps()));
      }
      told.put(new TreeMap<>(state.positions()) + " " + new TreeMap<>(state.pulledIn()), row + "");
    }
    return told;
  }

  private static Set<String> loads(Study study) {
    Set<String> loads = new TreeSet<>();
    study.circuit().branches(Branch.LoadElement.class).forEach(b -> loads.add(b.part()));
    return loads;
  }

  private static String digits(double value) {
    return Math.abs(value) < 1e-6 ? " 0" : String.format(Locale.ROOT, " %.6e", value);
  }

  @Test
  void a_coil_is_told_what_the_worst_of_its_neighbours_leave_it() {
    Random random = new Random(312);
    int compared = 0;
    for (int round = 0; round < 40; round++) {
      Circuit circuit = board(random, round);
      Study apart = Study.of(circuit, Studies.TABLES);
      Study together = Study.unparted(circuit, Studies.TABLES);
      if (isRestless(together) || apart.model().grid.bundles().isEmpty()) {
        continue;
      }
      CoilReadings alone =
          new CoilReadings(new Lookup(apart.model(), false), new Extremes(apart.model().setup.air));
      for (Branch.Coil coil : circuit.branches(Branch.Coil.class)) {
        Group group = apart.model().groupsOf(coil).iterator().next();
        for (State state : apart.statesFor(coil.part())) {
          List<State> same =
              together.states().stream()
                  .filter(
                      s -> apart.lookup().bits(group, s).equals(apart.lookup().bits(group, state)))
                  .toList();
          CoilReading told = alone.of(coil.part(), state);
          double least =
              same.stream()
                  .mapToDouble(s -> together.coil(coil.part(), s).lowest())
                  .min()
                  .orElse(0);
          double most =
              same.stream()
                  .mapToDouble(s -> together.coil(coil.part(), s).highest())
                  .max()
                  .orElse(0);
          assertFalse(same.isEmpty());
          assertEquals(least, told.lowest(), SECOND_ORDER * least + 1e-6, "round " + round);
          assertEquals(most, told.highest(), SECOND_ORDER * most + 1e-6, "round " + round);
          compared++;
        }
      }
    }
    assertTrue(compared > 60, "compared " + compared);
  }

  @Test
  void faults_of_random_boards_do_the_same_parted_or_not() {
    Random random = new Random(313);
    List<String> other = new ArrayList<>();
    int judged = 0;
    for (int round = 0; round < 24; round++) {
      Circuit circuit = board(random, round);
      Study apart = Study.of(circuit, Studies.TABLES);
      Study together = Study.unparted(circuit, Studies.TABLES);
      if (isRestless(together)) {
        continue;
      }
      List<FaultCase> one = Faults.of(apart).cases();
      List<FaultCase> two = Faults.of(together).cases();
      for (int i = 0; i < one.size(); i++) {
        judged++;
        String what = round + " " + one.get(i).fault().inWords() + ": ";
        if (!alike(one.get(i), two.get(i))) {
          other.add(what + told(one.get(i)) + " but together " + told(two.get(i)));
        }
      }
    }
    assertEquals(List.of(), other);
    assertTrue(judged > 1000, "judged " + judged);
  }

  @Test
  void a_lost_neutral_of_three_lines_is_found_as_bad_in_company_as_in_every_combination() {
    Random random = new Random(314);
    int compared = 0;
    for (int round = 0; round < 20; round++) {
      Circuit circuit = Bench.circuit(Studies.THREE, SharedFeed.of(random, true, 3));
      Study study = Study.of(circuit, Studies.TABLES);
      Branch neutral =
          circuit.branches(Branch.Conductor.class).stream()
              .filter(w -> w.wire().to().value().toString().equals("R1.N1"))
              .findFirst()
              .orElseThrow();
      FaultReach reach = new FaultReach(circuit, study.model(), Earth.of(circuit));
      FaultJudge judge = new FaultJudge(circuit, study.model());
      List<FaultReach.Affected> pieces = reach.of(Alteration.gone(neutral));
      Fault fault =
          new Fault(
              Fault.Kind.WIRE_BROKEN, List.of(neutral.id()), neutral.mark(), neutral + " breaks");
      boolean coils =
          pieces.get(0).base().stream()
              .flatMap(g -> g.zones.stream())
              .anyMatch(z -> z.reference.hasMains() && hasCoil(z));
      if (pieces.size() != 1 || pieces.get(0).base().size() < 2 || coils || isRestless(study)) {
        continue;
      }
      FaultCase every = judge.judge(fault, pieces.get(0)).fault();
      FaultCase company =
          new LostNeutral(study.model(), reach, judge).judge(fault, pieces.get(0)).orElseThrow();
      assertTrue(every.explored() && company.explored());
      Set<String> missed = does(every);
      missed.removeAll(does(company));
      // what lies between all off and all on: the load is told to do worse already
      missed.removeIf(
          m -> m.endsWith("WEAKER") && loads(company).contains(m.substring(0, m.indexOf(' '))));
      assertEquals(Set.of(), missed, "round " + round);
      assertEquals(every.harm(), company.harm(), "round " + round);
      compared++;
    }
    assertTrue(compared > 3, "compared " + compared);
  }

  private static Set<String> loads(FaultCase one) {
    Set<String> loads = new HashSet<>();
    one.effects().forEach(e -> loads.add(e.load()));
    return loads;
  }

  private static boolean hasCoil(Zone zone) {
    return zone.elements.stream().anyMatch(e -> e.kind() == Element.Kind.COIL);
  }

  /** Which load does what. */
  private static Set<String> does(FaultCase one) {
    Set<String> told = new TreeSet<>();
    one.effects().forEach(e -> told.add(e.load() + " " + e.effect()));
    return told;
  }

  private static String told(FaultCase one) {
    Map<String, Object> told = new LinkedHashMap<>();
    one.effects()
        .forEach(
            e -> told.put(e.load() + " " + e.effect(), e.positions().size() + "" + e.stoppedBy()));
    return told + " " + one.shorted() + one.explored();
  }

  /** The same loads do the same, in the same positions of their own contacts. */
  private static boolean alike(FaultCase apart, FaultCase together) {
    Map<String, LoadEffect> one = new TreeMap<>();
    Map<String, LoadEffect> two = new TreeMap<>();
    apart.effects().forEach(e -> one.put(e.load() + e.effect(), e));
    together.effects().forEach(e -> two.put(e.load() + e.effect(), e));
    return one.keySet().equals(two.keySet())
        && one.entrySet().stream()
            .allMatch(
                e ->
                    Optional.ofNullable(two.get(e.getKey()))
                        .filter(other -> alike(e.getValue(), other))
                        .isPresent())
        && Set.copyOf(apart.shorted()).equals(Set.copyOf(together.shorted()))
        && apart.explored() == together.explored()
        && apart.harm() == together.harm();
  }

  private static boolean alike(LoadEffect apart, LoadEffect together) {
    Set<Map<String, Boolean>> projected = new HashSet<>();
    Set<String> columns = new HashSet<>();
    apart.positions().forEach(p -> columns.addAll(p.keySet()));
    for (Map<String, Boolean> positions : together.positions()) {
      Map<String, Boolean> own = new TreeMap<>(positions);
      own.keySet().retainAll(columns);
      projected.add(own);
    }
    Set<Map<String, Boolean>> those = new HashSet<>();
    apart
        .positions()
        .forEach(
            p -> {
              Map<String, Boolean> own = new TreeMap<>(p);
              if (!together.positions().isEmpty()) {
                own.keySet().retainAll(together.positions().get(0).keySet());
              }
              those.add(own);
            });
    return projected.equals(those)
        && Set.copyOf(apart.stoppedBy()).equals(Set.copyOf(together.stoppedBy()));
  }
}
