// Over 250 lines: one kind of circuit after the other.
package org.coilwright.solve;

import static org.coilwright.solve.Studies.state;
import static org.coilwright.solve.Studies.states;
import static org.coilwright.solve.Studies.study;
import static org.coilwright.solve.Studies.troubles;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class StatesTest {
  private static final String COIL = "coil: {pins: [A1, A2], voltage: 24 V DC, resistance: 600 Ω}";

  private static String relay(String name, String contacts) {
    return "  %s: {is: relay, %s, contacts: [%s]}\n".formatted(name, COIL, contacts);
  }

  private static String closing(String pins) {
    return "{pins: [%s], form: NO}".formatted(pins);
  }

  private static String opening(String pins) {
    return "{pins: [%s], form: NC}".formatted(pins);
  }

  @Test
  void states_are_listed_from_rest_with_the_last_column_fastest() {
    Study study =
        study(
            "parts:\n"
                + Studies.SUPPLY
                + relay("K1", closing("11, 14"))
                + "  S1: {is: switch, form: NO, poles: 1}\n"
                + "  B1: {is: thermostat, form: NC, opens-at: 60 °C}\n"
                + """
                wires:
                  - G1.P to S1.1
                  - S1.2 to B1.1
                  - B1.2 to K1.A1
                  - K1.A2 to G1.M
                """);
    assertEquals(List.of("S1", "B1"), study.columns());
    assertEquals(
        List.of(
            Map.of("S1", false, "B1", true),
            Map.of("S1", false, "B1", false),
            Map.of("S1", true, "B1", true),
            Map.of("S1", true, "B1", false)),
        study.states().stream().map(s -> Map.copyOf(s.positions())).toList());
    assertEquals(
        List.of(false, false, true, false),
        study.states().stream().map(s -> s.isIn("K1")).toList());
    assertTrue(study.troubles().isEmpty());
  }

  @Test
  void a_contact_that_is_not_wired_makes_no_column_unless_the_intent_names_it() {
    String body =
        "parts:\n"
            + Studies.SUPPLY
            + relay("K1", closing("11, 14"))
            + "  S1: {is: switch, form: NO, poles: 1}\n"
            + "  S2: {is: switch, form: NO, poles: 1}\n"
            + "  E1: {is: heater, power: 1 kW, voltage: 230 V, connection: single}\n"
            + """
            wires:
              - G1.P to S1.1
              - S1.2 to K1.A1
              - K1.A2 to G1.M
            """;
    assertEquals(List.of("S1"), study(body).columns());
    assertEquals(List.of("S1", "S2"), study(body + "intent: {E1: S1 and S2}\n").columns());
  }

  private static final String BEHIND_A_BREAKER =
      """
      parts:
        G0: {is: mains}
        F1: {is: breaker, curve: B, rating: 10 A, poles: 1}
        S1: {is: switch, form: NO, poles: 1}
        E1: {is: heater, power: 1 kW, voltage: 230 V, connection: single}
      wires:
        - G0.L to F1.1
        - F1.2 to S1.1
        - S1.2 to E1.1
        - E1.2 to G0.N
      """;

  @Test
  void a_protective_device_counts_as_closed_unless_the_intent_asks_for_it() {
    assertEquals(List.of("S1"), study(BEHIND_A_BREAKER).columns());
    Study asked = study(BEHIND_A_BREAKER + "intent: {E1: F1 and S1}\n");
    assertEquals(List.of("F1", "S1"), asked.columns());
    assertTrue(asked.states().get(0).positions().getOrDefault("F1", false), "closed at rest");
    assertTrue(asked.load("E1", state(asked, "F1", "S1")).on());
    assertFalse(asked.load("E1", state(asked, "S1")).on());
  }

  @Test
  void a_protective_device_that_the_intent_asks_for_matters_when_it_sticks() {
    FaultCase sticks =
        Faults.of(
                study(BEHIND_A_BREAKER + "intent: {E1: F1 and S1}\n"),
                EnumSet.of(Fault.Kind.PROTECTION_STUCK))
            .cases()
            .get(0);
    assertEquals(FaultCase.Harm.STAYS_ON, sticks.harm());
    assertEquals(
        List.of("S1"),
        sticks.effects().get(0).stoppedBy().stream()
            .map(org.coilwright.circuit.Actuator::name)
            .toList());
  }

  @Test
  void one_relay_drives_the_next() {
    Study study =
        study(
            "parts:\n"
                + Studies.SUPPLY
                + relay("K1", closing("11, 14"))
                + relay("K2", opening("11, 12"))
                + relay("K3", closing("11, 14"))
                + "  S1: {is: switch, form: NO, poles: 1}\n"
                + """
                wires:
                  - G1.P to S1.1
                  - S1.2 to K1.A1
                  - K1.A2 to G1.M
                  - G1.P to K1.11
                  - K1.14 to K2.A1
                  - K2.A2 to G1.M
                  - G1.P to K2.11
                  - K2.12 to K3.A1
                  - K3.A2 to G1.M
                """);
    assertEquals(Map.of("K1", false, "K2", false, "K3", true), Map.copyOf(state(study).pulledIn()));
    assertEquals(
        Map.of("K1", true, "K2", true, "K3", false), Map.copyOf(state(study, "S1").pulledIn()));
  }

  private static final String LATCH =
      "parts:\n"
          + Studies.SUPPLY
          + relay("K1", closing("11, 14"))
          + "  S1: {is: switch, form: NC, poles: 1}\n"
          + "  S2: {is: switch, form: NO, poles: 1}\n"
          + """
          wires:
            - G1.P to S1.1
            - S1.2 to S2.1
            - S2.2 to K1.A1
            - K1.A2 to G1.M
            - S1.2 to K1.11
            - K1.14 to K1.A1
          """;

  @Test
  void a_relay_that_holds_itself_in_has_two_steady_states_and_both_are_listed() {
    Study study = study(LATCH);
    List<Trouble.TwoSteadyStates> two = troubles(study, Trouble.TwoSteadyStates.class);
    assertEquals(1, two.size());
    assertEquals(List.of("K1"), two.get(0).relays());
    assertEquals(Map.of("S1", false, "S2", false), Map.copyOf(two.get(0).positions()));
    assertFalse(two.get(0).first().isIn("K1"));
    assertTrue(two.get(0).second().isIn("K1"));
    assertEquals(List.of(false, true), states(study).stream().map(s -> s.isIn("K1")).toList());
    assertTrue(state(study, "S2").isIn("K1"));
    assertFalse(state(study, "S1", "S2").isIn("K1"));
  }

  @Test
  void a_relay_that_opens_its_own_coil_never_rests() {
    Study study =
        study(
            "parts:\n"
                + Studies.SUPPLY
                + relay("K1", opening("11, 12"))
                + "  S1: {is: switch, form: NO, poles: 1}\n"
                + """
                wires:
                  - G1.P to S1.1
                  - S1.2 to K1.11
                  - K1.12 to K1.A1
                  - K1.A2 to G1.M
                """);
    List<Trouble.NoSteadyState> none = troubles(study, Trouble.NoSteadyState.class);
    assertEquals(1, none.size());
    assertEquals(List.of("K1"), none.get(0).relays());
    assertEquals(Map.of("S1", true), Map.copyOf(none.get(0).positions()));
    assertEquals(1, study.states().size());
  }

  @Test
  void two_relays_that_lock_each_other_out_rest_either_way() {
    Study study =
        study(
            "parts:\n"
                + Studies.SUPPLY
                + relay("K1", opening("11, 12"))
                + relay("K2", opening("11, 12"))
                + """
                wires:
                  - G1.P to K2.11
                  - K2.12 to K1.A1
                  - K1.A2 to G1.M
                  - G1.P to K1.11
                  - K1.12 to K2.A1
                  - K2.A2 to G1.M
                """);
    assertEquals(
        List.of(Map.of("K1", true, "K2", false), Map.of("K1", false, "K2", true)),
        study.states().stream()
            .map(s -> Map.copyOf(s.pulledIn()))
            .sorted(
                (a, b) -> Boolean.compare(b.getOrDefault("K1", false), a.getOrDefault("K1", false)))
            .toList());
    assertEquals(1, troubles(study, Trouble.TwoSteadyStates.class).size());
    assertTrue(troubles(study, Trouble.NoSteadyState.class).isEmpty());
  }

  /** S1 calls K1 and K2 at once; K3 gets current while K1 is in and K2 is not yet, and holds. */
  private static Study race(String timesOfOne, String timesOfTwo, String timesOfThree) {
    return study(
        "parts:\n"
            + Studies.SUPPLY
            + timed("K1", timesOfOne, closing("11, 14"))
            + timed("K2", timesOfTwo, opening("11, 12"))
            + timed("K3", timesOfThree, closing("11, 14"))
            + "  S1: {is: switch, form: NO, poles: 1}\n"
            + """
            wires:
              - G1.P to S1.1
              - S1.2 to K1.A1
              - K1.A2 to G1.M
              - S1.2 to K2.A1
              - K2.A2 to G1.M
              - S1.2 to K1.11
              - K1.14 to K2.11
              - K2.12 to K3.A1
              - K3.A2 to G1.M
              - S1.2 to K3.11
              - K3.14 to K3.A1
            """);
  }

  private static String timed(String name, String times, String contact) {
    return relay(name, contact).replace("voltage: 24 V DC", "voltage: 24 V DC" + times);
  }

  @Test
  void a_race_between_relays_of_unknown_times_is_followed_either_way() {
    Study study = race("", "", "");
    List<Trouble.TwoSteadyStates> two = troubles(study, Trouble.TwoSteadyStates.class);
    assertEquals(1, two.size());
    assertEquals(List.of("K3"), two.get(0).relays());
    assertTrue(two.get(0).race());
    assertEquals(2, states(study, "S1").size());
  }

  @Test
  void known_times_decide_a_race() {
    String fast = ", operate-time: 4..6 ms";
    String slow = ", operate-time: 20 ms";
    String third = ", operate-time: 5 ms";
    assertTrue(troubles(race(slow, fast, ""), Trouble.TwoSteadyStates.class).isEmpty());
    assertFalse(state(race(slow, fast, ""), "S1").isIn("K3"));
    // K1 is first; whether K3 is in before K2 cuts it off then hangs on K3's own time
    assertEquals(2, states(race(fast, slow, ""), "S1").size());
    Study all = race(fast, slow, third);
    assertTrue(state(all, "S1").isIn("K3"));
    assertTrue(troubles(all, Trouble.TwoSteadyStates.class).isEmpty());
  }

  @Test
  void times_that_overlap_leave_a_race_open() {
    Study study = race(", operate-time: 5..9 ms", ", operate-time: 8..12 ms", "");
    assertEquals(2, states(study, "S1").size());
  }

  @Test
  void more_orders_than_are_followed_are_named_and_not_sampled() {
    StringBuilder parts = new StringBuilder("parts:\n" + Studies.SUPPLY);
    StringBuilder wires = new StringBuilder("wires:\n  - G1.P to S1.1\n");
    parts.append("  S1: {is: switch, form: NO, poles: 1}\n");
    String before = "S1.2";
    for (int i = 10; i < 24; i++) {
      parts.append(relay("K" + i, opening("11, 12")));
      wires.append("  - S1.2 to K%d.A1\n  - K%d.A2 to G1.M\n".formatted(i, i));
      wires.append("  - %s to K%d.11\n".formatted(before, i));
      before = "K" + i + ".12";
    }
    parts.append(relay("K30", closing("11, 14")));
    wires.append("  - %s to K30.A1\n  - K30.A2 to G1.M\n".formatted(before));
    Study study = study(parts.toString() + wires);
    List<Trouble.NotExplored> not = troubles(study, Trouble.NotExplored.class);
    assertEquals(1, not.size());
    assertTrue(not.get(0).orders());
    assertEquals(15, not.get(0).contacts().size());
    assertTrue(troubles(study, Trouble.NoSteadyState.class).isEmpty());
  }

  @Test
  void a_coil_between_release_and_operate_keeps_what_it_did_before() {
    // 600 Ω behind 600 Ω: 12 V, half of what it needs. Past the resistor it gets 24 V.
    Study study =
        study(
            "parts:\n"
                + Studies.SUPPLY
                + relay("K1", closing("11, 14"))
                + "  R1: {is: resistor, resistance: 600 Ω}\n"
                + "  S1: {is: switch, form: NO, poles: 1}\n"
                + """
                wires:
                  - G1.P to R1.1
                  - R1.2 to K1.A1
                  - G1.P to S1.1
                  - S1.2 to K1.A1
                  - K1.A2 to G1.M
                """);
    assertEquals(List.of(false, true), states(study).stream().map(s -> s.isIn("K1")).toList());
    CoilReading half = study.coil("K1", states(study).get(0));
    assertEquals(12, half.volts(), 0.01);
    assertTrue(state(study, "S1").isIn("K1"));
  }

  @Test
  void a_polarised_coil_the_wrong_way_round_stays_out() {
    String body =
        "parts:\n"
            + Studies.SUPPLY
            + "  K1: {is: relay, coil: {pins: [A1, A2], voltage: 24 V DC, resistance: 600 Ω,"
            + " polarity: A1 plus}, contacts: [{pins: [11, 14], form: NO}]}\n"
            + """
            wires:
              - G1.M to K1.A1
              - G1.P to K1.A2
            """;
    Study study = study(body);
    assertEquals(-24, study.coil("K1", state(study)).volts(), 0.01);
    assertFalse(state(study).isIn("K1"));
    Study right = study(body.replace("A1 plus", "A2 plus"));
    assertTrue(right.states().get(0).isIn("K1"));
  }

  @Test
  void a_direct_coil_on_alternating_current_does_not_pull_in_and_its_kind_is_told() {
    Study study =
        study(
            """
            parts:
              G0: {is: mains}
              K1: {is: relay, coil: {pins: [A1, A2], voltage: 230 V DC, resistance: 40 kΩ}, contacts: [{pins: [11, 14], form: NO}]}
            wires:
              - G0.L to K1.A1
              - G0.N to K1.A2
            """);
    assertFalse(state(study).isIn("K1"));
    CoilReading reading = study.coil("K1", state(study));
    assertEquals(org.coilwright.quantity.CurrentKind.AC, reading.kind());
    assertEquals(230, reading.volts(), 0.01);
  }

  private static final String FED =
      "parts:\n"
          + "  G0: {is: mains}\n"
          + "  G1: {is: dc-supply, input: {pins: [L, N], voltage: 230 V AC},"
          + " output: {plus: P, minus: M, voltage: 24 V DC}}\n"
          + "  S1: {is: switch, form: NO, poles: 1}\n"
          + relay("K1", closing("11, 14"))
          + """
          wires:
            - G1.P to K1.A1
            - K1.A2 to G1.M
          """;

  @Test
  void a_supply_gives_nothing_while_its_own_mains_is_off() {
    Study study = study(FED + "  - G0.L to S1.1\n  - S1.2 to G1.L\n  - G0.N to G1.N\n");
    assertFalse(state(study).isIn("K1"));
    assertEquals(0, study.coil("K1", state(study)).volts());
    assertTrue(state(study, "S1").isIn("K1"));
    assertEquals(24, study.coil("K1", state(study, "S1")).volts(), 0.01);
  }

  @Test
  void a_supply_whose_input_is_not_wired_at_all_is_taken_as_fed() {
    assertTrue(study(FED).states().get(0).isIn("K1"));
  }

  private static String group(int number, int contacts) {
    StringBuilder parts = new StringBuilder();
    String g = "G1" + number;
    parts.append(Studies.SUPPLY.replace("G1", g)).append(relay("K1" + number, closing("11, 14")));
    for (int i = 0; i < contacts; i++) {
      parts.append("  S%d%02d: {is: switch, form: NO, poles: 1}\n".formatted(number, i));
    }
    return parts.toString();
  }

  private static String wiring(int number, int contacts) {
    StringBuilder wires = new StringBuilder();
    String from = "G1" + number + ".P";
    for (int i = 0; i < contacts; i++) {
      String s = "S%d%02d".formatted(number, i);
      wires.append("  - %s to %s.1\n".formatted(from, s));
      from = s + ".2";
    }
    wires.append(
        "  - %s to K1%d.A1\n  - K1%d.A2 to G1%d.M\n".formatted(from, number, number, number));
    return wires.toString();
  }

  @Test
  void twenty_contacts_in_five_groups_are_listed_group_by_group() {
    StringBuilder parts = new StringBuilder("parts:\n");
    StringBuilder wires = new StringBuilder("wires:\n");
    for (int g = 0; g < 5; g++) {
      parts.append(group(g, 4));
      wires.append(wiring(g, 4));
    }
    Study study = study(parts.toString() + wires);
    assertEquals(20, study.columns().size());
    assertFalse(study.listsEveryCombination());
    assertEquals(1 + 5 * 15, study.states().size());
    assertEquals(16, study.statesFor("K12").size());
    assertTrue(study.troubles().isEmpty());
    assertEquals(1, study.statesFor("K12").stream().filter(s -> s.isIn("K12")).count());
  }

  private static int solutions(Study study) {
    return study.model().grid.zones.stream().mapToInt(Zone::solutions).sum();
  }

  /** Lamps that have four switches each before them, all on one supply. */
  private static String lamps(int lamps, String more) {
    StringBuilder parts = new StringBuilder("parts:\n" + Studies.SUPPLY);
    StringBuilder wires = new StringBuilder("wires:\n");
    for (int lamp = 0; lamp < lamps; lamp++) {
      parts.append("  H%d: {is: lamp, voltage: 24 V, current: 20 mA}\n".formatted(lamp));
      String from = "G1.P";
      for (int i = 0; i < 4; i++) {
        String s = "S%d%d".formatted(lamp, i);
        parts.append("  %s: {is: switch, form: NO, poles: 1}\n".formatted(s));
        wires.append("  - %s to %s.1\n".formatted(from, s));
        from = s + ".2";
      }
      wires.append("  - %s to H%d.1\n  - H%d.2 to G1.M\n".formatted(from, lamp, lamp));
    }
    return parts.toString() + wires + more;
  }

  @Test
  void twenty_contacts_in_five_groups_cost_five_times_sixteen_solves() {
    assertEquals(5 * 16, solutions(study(lamps(5, ""))));
  }

  @Test
  void a_relay_adds_the_positions_that_its_armature_is_in_for() {
    StringBuilder parts = new StringBuilder("parts:\n");
    StringBuilder wires = new StringBuilder("wires:\n");
    for (int g = 0; g < 5; g++) {
      parts.append(group(g, 4));
      wires.append(wiring(g, 4));
    }
    Study study = study(parts.toString() + wires);
    int solutions =
        study.model().grid.zones.stream()
            .filter(z -> z.elements.stream().anyMatch(e -> e.kind() == Element.Kind.COIL))
            .mapToInt(Zone::solutions)
            .sum();
    // in with all four closed, and still in for the moment after each of them has opened
    assertEquals(5 * (16 + 1 + 4), solutions);
  }

  @Test
  void what_shares_a_node_or_an_armature_is_one_group() {
    assertEquals(16, study(lamps(3, "")).statesFor("H0").size());
    Study joined = study(lamps(3, "  - S03.2 to S13.2\n"));
    assertEquals(256, joined.statesFor("H0").size(), "H0 and H1 share a node");
    assertEquals(16, joined.statesFor("H2").size(), "H2 shares nothing with them");
    assertEquals(256 + 16, solutions(joined));
    String parts = "parts:\n" + group(0, 2) + group(1, 2);
    String wires = "wires:\n" + wiring(0, 2) + wiring(1, 2);
    assertEquals(4, study(parts + wires).statesFor("K11").size());
    assertEquals(
        16,
        study(
                parts
                    + wires.replace(
                        "  - S101.2 to K11.A1\n", "  - S101.2 to K10.11\n  - K10.14 to K11.A1\n"))
            .statesFor("K11")
            .size(),
        "K11's coil hangs on a contact of K10");
  }

  @Test
  void two_small_groups_are_listed_in_every_combination() {
    Study study =
        study("parts:\n" + group(0, 2) + group(1, 1) + "wires:\n" + wiring(0, 2) + wiring(1, 1));
    assertTrue(study.listsEveryCombination());
    assertEquals(8, study.states().size());
    assertEquals(
        List.of(false, true, false, true, false, true, false, true),
        study.states().stream().map(s -> s.isIn("K11")).toList());
  }

  @Test
  void a_group_beyond_the_limit_is_named_and_not_sampled() {
    Study study = study("parts:\n" + group(0, 13) + "wires:\n" + wiring(0, 13));
    List<Trouble.NotExplored> not = troubles(study, Trouble.NotExplored.class);
    assertEquals(1, not.size());
    assertEquals(13, not.get(0).contacts().size());
    assertEquals(12, not.get(0).limit());
    assertEquals(1, study.states().size());
  }
}
