package org.coilwright.solve;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.BitSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.coilwright.netlist.Mark;
import org.coilwright.solve.FaultCase.Harm;
import org.coilwright.solve.LoadEffect.Effect;
import org.coilwright.solve.WorkTable.Work;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a fault does to a load of 2 kW, from its watts before and after; and the worse of two. */
class FaultJudgeTest {
  private static final double RATED = 2000;

  /** A table of one row: the load's watts in each steady state, and whether a line reaches it. */
  private static WorkTable table(String watts, boolean live) {
    WorkTable table = WorkTable.of(List.of());
    table.rows.put(
        new BitSet(),
        Stream.of(watts.split(" ", -1))
            .filter(w -> !w.isEmpty())
            .map(
                w ->
                    new Work(
                        Map.of("E1", Double.valueOf(w)),
                        live ? Map.of("E1", Set.of("L1")) : Map.of()))
            .toList());
    return table;
  }

  private static Set<Effect> effects(WorkTable before, WorkTable after) {
    return FaultJudge.compare("E1", RATED, before, after).keySet();
  }

  /** A twentieth more or less is told, and a hundredth of its power is on. */
  @ParameterizedTest
  @CsvSource({
    "0, 2000, STAYS_ON",
    "0, 20, STAYS_ON",
    "0, 19.9, ''",
    "0 2000, 2000, STARTS_BY_ITSELF",
    "0 2000, 0 2000, ''",
    "2000, 2101, STRONGER",
    "2000, 2099, ''",
    "2000, 1899, WEAKER",
    "2000, 1901, ''",
    "1900 2000, 1900 2101, STRONGER",
    "1900 2000, 1800 2000, WEAKER",
    "2000, '', UNSETTLED",
    "0, '', UNSETTLED",
    "2000, 0, STAYS_OFF",
    "2000, 0 2000, STAYS_OFF",
    "0 2000, 0, LETS_GO",
    "0, 0, ''"
  })
  void an_effect_is_told_from_the_watts_before_and_after(
      String before, String after, String effect) {
    assertEquals(
        effect.isEmpty() ? Set.of() : Set.of(Effect.valueOf(effect)),
        effects(table(before, false), table(after, false)));
  }

  @Test
  void a_line_that_reaches_a_load_that_is_off_is_told() {
    assertEquals(Set.of(Effect.STAYS_LIVE), effects(table("0", false), table("0", true)));
    assertEquals(Set.of(), effects(table("0", true), table("0", true)));
    assertEquals(Set.of(), effects(table("2000", true), table("2000", true)));
  }

  @Test
  void where_the_protection_opens_nothing_else_is_told() {
    WorkTable tripped = table("2000", false);
    tripped.tripped.add(new BitSet());
    assertEquals(Set.of(), effects(table("0", false), tripped));
    assertEquals(Set.of(), effects(tripped, table("0", false)));
  }

  private static FaultCase fault(Effect effect, boolean explored, String... shorted) {
    return new FaultCase(
        new Fault(Fault.Kind.WIRE_BROKEN, List.of("w"), new Mark("f", 1, 1, 2), "w breaks"),
        List.of(new LoadEffect("E1", effect, List.of(), List.of())),
        List.of(shorted),
        Optional.empty(),
        explored);
  }

  @Test
  void of_two_ways_a_fault_can_go_the_worse_is_told_whichever_comes_first() {
    FaultCase mild = fault(Effect.STAYS_OFF, true);
    FaultCase bad = fault(Effect.STAYS_ON, true);
    assertEquals(Harm.STAYS_ON, FaultJudge.worse(mild, bad).harm());
    assertEquals(Harm.STAYS_ON, FaultJudge.worse(bad, mild).harm());
    assertEquals(bad.effects(), FaultJudge.worse(mild, bad).effects());
  }

  @Test
  void the_worse_of_two_keeps_the_short_circuits_of_both_and_what_was_not_looked_at() {
    FaultCase worse =
        FaultJudge.worse(fault(Effect.STAYS_OFF, true, "G1"), fault(Effect.STAYS_ON, false, "G2"));
    assertEquals(List.of("G1", "G2"), worse.shorted());
    assertFalse(worse.explored());
    assertFalse(
        FaultJudge.worse(fault(Effect.STAYS_ON, false), fault(Effect.STAYS_OFF, true)).explored());
    assertTrue(
        FaultJudge.worse(fault(Effect.STAYS_ON, true), fault(Effect.STAYS_OFF, true)).explored());
  }

  private static FaultCase crossing(double volts) {
    FaultCase plain = fault(Effect.STAYS_OFF, true);
    return new FaultCase(
        plain.fault(),
        plain.effects(),
        plain.shorted(),
        Optional.of(new Crossing(List.of("U1.1"), volts)),
        true);
  }

  @Test
  void the_worse_of_two_has_the_higher_voltage_that_crosses() {
    assertEquals(230, volts(FaultJudge.worse(crossing(230), crossing(24))));
    assertEquals(230, volts(FaultJudge.worse(crossing(24), crossing(230))));
    assertEquals(24, volts(FaultJudge.worse(crossing(24), fault(Effect.STAYS_ON, true))));
    assertEquals(24, volts(FaultJudge.worse(fault(Effect.STAYS_ON, true), crossing(24))));
  }

  private static double volts(FaultCase of) {
    return of.crossing().orElseThrow().volts();
  }

  @Test
  void two_pieces_of_one_fault_add_up_worst_first() {
    FaultCase both =
        FaultJudge.both(fault(Effect.STAYS_OFF, true, "G1"), fault(Effect.STAYS_ON, false, "G2"));
    assertEquals(
        List.of(Effect.STAYS_ON, Effect.STAYS_OFF),
        both.effects().stream().map(LoadEffect::effect).toList());
    assertEquals(List.of("G1", "G2"), both.shorted());
    assertFalse(both.explored());
  }
}
