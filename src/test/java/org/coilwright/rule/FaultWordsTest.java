package org.coilwright.rule;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.coilwright.netlist.Mark;
import org.coilwright.solve.Fault;
import org.coilwright.solve.FaultCase;
import org.coilwright.solve.LoadEffect;
import org.coilwright.solve.LoadEffect.Effect;
import org.junit.jupiter.api.Test;

class FaultWordsTest {
  private static final Map<String, Boolean> ONE = Map.of("S1", false, "S2", true);
  private static final Map<String, Boolean> OTHER = Map.of("S1", true, "S2", true);

  private static String then(LoadEffect... effects) {
    Fault fault =
        new Fault(Fault.Kind.CONTACT_WELDS, List.of("S1"), new Mark("x", 1, 1, 3), "S1 welds");
    return FaultWords.then(
        new FaultCase(fault, List.of(effects), List.of(), Optional.empty(), true));
  }

  private static LoadEffect effect(Effect effect, List<Map<String, Boolean>> positions) {
    return new LoadEffect("E1", effect, positions, List.of());
  }

  @Test
  void effects_that_show_in_different_positions_say_in_how_many() {
    assertEquals(
        "E1 takes less than it should (in 1 of 4 positions); E1 stays off (in 2 of 4 positions)",
        then(effect(Effect.WEAKER, List.of(ONE)), effect(Effect.STAYS_OFF, List.of(ONE, OTHER))));
  }

  @Test
  void one_effect_needs_no_count() {
    assertEquals("E1 stays off", then(effect(Effect.STAYS_OFF, List.of(ONE))));
  }

  @Test
  void a_load_that_cannot_be_turned_off_is_not_said_to_start_as_well() {
    assertEquals(
        "E1 is on when it should be off",
        then(
            effect(Effect.STAYS_ON, List.of(ONE)),
            effect(Effect.STARTS_BY_ITSELF, List.of(OTHER))));
  }

  @Test
  void nothing_found_is_not_said_to_be_nothing_changed() {
    assertEquals("no load behaves differently, and nobody notices", then());
  }
}
