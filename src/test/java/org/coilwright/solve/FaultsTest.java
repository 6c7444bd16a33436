// Over 250 lines: one kind of fault after the other.
package org.coilwright.solve;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.BitSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.coilwright.circuit.Actuator;
import org.coilwright.circuit.Bench;
import org.coilwright.circuit.Circuit;
import org.coilwright.solve.FaultCase.Harm;
import org.coilwright.solve.LoadEffect.Effect;
import org.junit.jupiter.api.Test;

class FaultsTest {
  /**
   * A thermostat in the element's line, a relay before it, a low-side or high-side control contact.
   */
  private static String tub(String control) {
    return """
    parts:
      G0: {is: mains}
      F1: {is: breaker, curve: B, rating: 16 A, poles: 1}
      U1:
        is: controller
        aux-supply: {plus: 3, minus: 4, voltage: 24 V DC, limit: 200 mA, isolation: SELV}
        outputs: {heat: {pins: [1, 2], form: NO}}
      K1:
        is: relay
        coil: {pins: [A1, A2], voltage: 24 V DC, resistance: 600 Ω}
        contacts: [{common: 11, NC: 12, NO: 14}]
      B1: {is: thermostat, form: NC, opens-at: 60 °C, poles: 1}
      E1: {is: heater, power: 2 kW, voltage: 230 V, connection: single}
    runs:
      W1: {length: 5 m, size: 0.75 mm²}
      W2: {length: 5 m, size: 1.5 mm²}
    wires:
      - G0.L to F1.1 in W2
      - F1.2 to K1.11 in W2
      - K1.%s to B1.1 in W2
      - B1.2 to E1.1
      - E1.2 to G0.N
      - G0.PE to E1.PE
      - U1.3 to U1.1
      - U1.2 to K1.A1 in W1
      - K1.A2 to U1.4 in W1
    """
        .formatted(control);
  }

  private static Faults faults(String body) {
    return Faults.of(Studies.study(body));
  }

  @Test
  void what_was_judged_of_some_kinds_is_the_same_among_all() {
    Study study = Studies.study(tub("14"));
    Set<Fault.Kind> some = Set.of(Fault.Kind.CONTACT_WELDS, Fault.Kind.WIRE_BROKEN);
    List<FaultCase> first = Faults.of(study, some).cases();
    List<FaultCase> all = Faults.of(study).cases();
    assertEquals(Faults.of(Studies.study(tub("14"))).cases(), all);
    assertEquals(all.stream().filter(c -> some.contains(c.fault().kind())).toList(), first);
  }

  private static FaultCase only(Faults faults, Fault.Kind kind, String at) {
    List<FaultCase> found =
        faults.cases().stream()
            .filter(c -> c.fault().kind() == kind && c.fault().at().contains(at))
            .toList();
    assertEquals(1, found.size(), kind + " at " + at);
    return found.get(0);
  }

  private static List<String> stops(LoadEffect effect) {
    return effect.stoppedBy().stream().map(Actuator::name).toList();
  }

  @Test
  void a_welded_contact_keeps_the_load_on_and_what_still_stops_it_is_named() {
    FaultCase welds = only(faults(tub("14")), Fault.Kind.CONTACT_WELDS, "K1.11-14");
    assertEquals(Harm.STAYS_ON_LIMITED, welds.harm());
    assertEquals(1, welds.effects().size());
    LoadEffect effect = welds.effects().get(0);
    assertEquals(Effect.STAYS_ON, effect.effect());
    assertEquals(List.of(Map.of("U1.heat", false, "B1", true)), copies(effect));
    assertEquals(List.of("B1", "F1"), stops(effect));
  }

  private static List<Map<String, Boolean>> copies(LoadEffect effect) {
    return effect.positions().stream().map(Map::copyOf).toList();
  }

  @Test
  void without_a_thermostat_nothing_limits_a_welded_contact() {
    String bare =
        tub("14").replace("  - K1.14 to B1.1 in W2\n  - B1.2 to E1.1", "  - K1.14 to E1.1");
    FaultCase welds = only(faults(bare), Fault.Kind.CONTACT_WELDS, "K1.11-14");
    assertEquals(Harm.STAYS_ON, welds.harm());
    assertEquals(List.of("F1"), stops(welds.effects().get(0)));
  }

  @Test
  void a_contact_that_never_closes_and_an_open_coil_do_the_same() {
    Faults faults = faults(tub("14"));
    FaultCase open = only(faults, Fault.Kind.COIL_OPEN, "K1.coil");
    FaultCase never = only(faults, Fault.Kind.CONTACT_NEVER_CLOSES, "U1.heat");
    assertEquals(Harm.FAILS, open.harm());
    assertEquals(open.effects(), never.effects());
    FaultClass same =
        faults.classes().stream()
            .filter(c -> c.faults().contains(open.fault()))
            .findFirst()
            .orElseThrow();
    assertTrue(same.faults().contains(never.fault()));
  }

  @Test
  void a_break_holds_a_load_on_that_hangs_on_a_resting_contact() {
    FaultCase breaks = only(faults(tub("12")), Fault.Kind.WIRE_BROKEN, "wire 8");
    assertEquals(Harm.STAYS_ON_LIMITED, breaks.harm());
    assertEquals(List.of(Map.of("U1.heat", true, "B1", true)), copies(breaks.effects().get(0)));
    assertEquals(Harm.FAILS, only(faults(tub("14")), Fault.Kind.WIRE_BROKEN, "wire 8").harm());
  }

  @Test
  void a_shorted_coil_folds_its_supply_and_the_load_stays_off() {
    FaultCase shorted = only(faults(tub("14")), Fault.Kind.COIL_SHORTED, "K1.coil");
    assertEquals(List.of("U1"), shorted.shorted());
    assertEquals(Effect.STAYS_OFF, shorted.effects().get(0).effect());
  }

  @Test
  void a_short_that_folds_a_supply_is_felt_by_the_other_relays_on_it() {
    String body =
        """
        parts:
          G0: {is: mains}
          F1: {is: breaker, curve: B, rating: 16 A, poles: 1}
          F2: {is: breaker, curve: B, rating: 16 A, poles: 1}
          U1:
            is: controller
            aux-supply: {plus: 3, minus: 4, voltage: 24 V DC, limit: 200 mA, isolation: SELV}
            outputs: {one: {pins: [1, 2], form: NO}, two: {pins: [5, 6], form: NO}}
          K1:
            is: relay
            coil: {pins: [A1, A2], voltage: 24 V DC, resistance: 600 Ω}
            contacts: [{common: 11, NC: 12, NO: 14}]
          K2:
            is: relay
            coil: {pins: [A1, A2], voltage: 24 V DC, resistance: 600 Ω}
            contacts: [{common: 11, NC: 12, NO: 14}]
          E1: {is: heater, power: 2 kW, voltage: 230 V, connection: single}
          E2: {is: heater, power: 2 kW, voltage: 230 V, connection: single}
        runs:
          W2: {length: 5 m, size: 1.5 mm²}
        wires:
          - G0.L to F1.1 in W2
          - F1.2 to K1.14 in W2
          - K1.11 to E1.1
          - E1.2 to G0.N
          - G0.L to F2.1 in W2
          - F2.2 to K2.12 in W2
          - K2.11 to E2.1
          - E2.2 to G0.N
          - U1.3 to U1.1
          - U1.3 to U1.5
          - U1.2 to K1.A1
          - U1.6 to K2.A1
          - K1.A2 to U1.4
          - K2.A2 to U1.4
        """;
    FaultCase shorted = only(faults(body), Fault.Kind.COIL_SHORTED, "K1.coil");
    LoadEffect heats =
        shorted.effects().stream().filter(e -> e.load().equals("E2")).findFirst().orElseThrow();
    assertEquals(Effect.STAYS_ON, heats.effect());
    assertEquals(List.of(Map.of("U1.one", true, "U1.two", true)), heats.positions());
    FaultCase other = only(faults(body), Fault.Kind.COIL_SHORTED, "K2.coil");
    assertTrue(
        other.effects().stream()
            .anyMatch(e -> e.load().equals("E1") && e.effect() == Effect.STAYS_OFF));
  }

  @Test
  void failed_insulation_brings_the_line_to_the_control_circuit() {
    FaultCase fails = only(faults(tub("14")), Fault.Kind.INSULATION_FAILED, "K1");
    assertEquals(Harm.CROSSES, fails.harm());
    Crossing crossing = fails.crossing().orElseThrow();
    assertEquals(230, crossing.volts(), 0.1);
    assertTrue(crossing.pins().contains("U1.3"), crossing.pins().toString());
  }

  @Test
  void cores_of_one_run_that_touch_cross_only_if_one_of_them_is_mains() {
    Faults apart = faults(tub("14"));
    FaultCase control =
        apart.cases().stream()
            .filter(c -> c.fault().kind() == Fault.Kind.CORES_JOINED)
            .filter(c -> c.fault().at().equals(List.of("wire 8", "wire 9")))
            .findFirst()
            .orElseThrow();
    assertEquals(List.of("U1"), control.shorted());
    assertTrue(control.crossing().isEmpty());
    Faults shared = faults(tub("14").replace("U1.4 in W1", "U1.4 in W2"));
    assertTrue(
        shared.cases().stream()
            .filter(c -> c.fault().kind() == Fault.Kind.CORES_JOINED)
            .anyMatch(c -> c.harm() == Harm.CROSSES));
  }

  @Test
  void a_broken_protective_conductor_changes_nothing_and_is_listed_all_the_same() {
    assertEquals(Harm.HIDDEN, only(faults(tub("14")), Fault.Kind.WIRE_BROKEN, "wire 6").harm());
    assertEquals(Harm.HIDDEN, only(faults(tub("14")), Fault.Kind.PROTECTION_STUCK, "F1").harm());
  }

  private static final String LOW_SIDE =
      """
      parts:
        G0: {is: mains}
        F1: {is: fuse}
        S1: {is: switch, form: NO, poles: 1}
        Q1:
          is: contactor
          coil: {pins: [A1, A2], voltage: 230 V AC, pick-up: 30 VA, hold: 4.5 VA, hold-power: 1.5 W}
          poles: [[1, 2], [3, 4]]
        E1: {is: heater, power: 2 kW, voltage: 230 V, connection: single}
      wires:
        - G0.L to F1.1
        - F1.2 to Q1.A1
        - Q1.A2 to S1.1
        - S1.2 to G0.N
        - F1.2 to Q1.1
        - Q1.2 to E1.1
        - E1.2 to Q1.4
        - Q1.3 to G0.N
        - G0.PE to E1.PE
      """;

  @Test
  void an_earth_fault_starts_a_load_whose_coil_is_switched_on_its_neutral_side() {
    FaultCase earthed = only(faults(LOW_SIDE), Fault.Kind.EARTHED, "wire 3");
    assertEquals(Harm.STAYS_ON, earthed.harm());
    assertEquals(List.of(Map.of("S1", false)), copies(earthed.effects().get(0)));
    assertEquals(List.of("F1"), stops(earthed.effects().get(0)));
    Faults isolated =
        Faults.of(
            Studies.study("{phases: 1, voltage: 230 V, frequency: 50 Hz, earthing: IT}", LOW_SIDE));
    assertEquals(Harm.HIDDEN, only(isolated, Fault.Kind.EARTHED, "wire 3").harm());
  }

  @Test
  void one_welded_pole_of_two_leaves_the_element_live_and_a_stuck_armature_keeps_it_on() {
    Faults faults = faults(LOW_SIDE);
    assertEquals(Harm.STAYS_LIVE, only(faults, Fault.Kind.CONTACT_WELDS, "Q1.1-2").harm());
    assertEquals(Harm.HIDDEN, only(faults, Fault.Kind.CONTACT_WELDS, "Q1.3-4").harm());
    assertEquals(Harm.STAYS_ON, only(faults, Fault.Kind.ARMATURE_STICKS, "Q1").harm());
  }

  /** Start and stop with a holding contact: with S1 open and S2 closed it rests out or in. */
  private static final String HOLDING =
      """
      parts:
        G0: {is: mains}
        F1: {is: breaker, curve: B, rating: 10 A, poles: 1}
        G1: {is: dc-supply, output: {plus: P, minus: M, voltage: 24 V DC}}
        S1: {is: switch, poles: 1, form: NO}
        S2: {is: switch, poles: 1, form: NC}
        K1:
          is: relay
          coil: {pins: [A1, A2], voltage: 24 V DC, resistance: 300 Ω}
          contacts: [{pins: [11, 14], form: NO}, {pins: [21, 24], form: NO}]
        E1: {is: heater, power: 1 kW, voltage: 230 V, connection: single}
      wires:
        - G0.L to F1.1
        - F1.2 to K1.11
        - K1.14 to E1.1
        - E1.2 to G0.N
        - G0.PE to E1.PE
        - G1.P to S2.1
        - S2.2 to S1.1
        - S2.2 to K1.21
        - S1.2 to K1.A1
        - K1.24 to K1.A1
        - K1.A2 to G1.M
      """;

  @Test
  void a_weld_in_a_holding_circuit_starts_the_load_with_nobody_pressing() {
    Faults faults = faults(HOLDING);
    for (String contact : List.of("S1.1-2", "K1.21-24")) {
      FaultCase welds = only(faults, Fault.Kind.CONTACT_WELDS, contact);
      assertEquals(Harm.STAYS_ON, welds.harm(), contact);
      LoadEffect effect = welds.effects().get(0);
      assertEquals(Effect.STARTS_BY_ITSELF, effect.effect());
      assertEquals(List.of(Map.of("S1", false, "S2", false)), copies(effect));
      assertEquals(List.of("S2", "F1"), stops(effect));
    }
  }

  @Test
  void a_holding_contact_that_never_closes_lets_the_load_go() {
    Faults faults = faults(HOLDING);
    FaultCase never = only(faults, Fault.Kind.CONTACT_NEVER_CLOSES, "K1.21-24");
    assertEquals(Harm.FAILS, never.harm());
    assertEquals(1, never.effects().size());
    assertEquals(Effect.LETS_GO, never.effects().get(0).effect());
    assertEquals(List.of(Map.of("S1", false, "S2", false)), copies(never.effects().get(0)));
    assertEquals(
        never.effects(), only(faults, Fault.Kind.WIRE_BROKEN, "wire 8").effects(), "wire to K1.21");
  }

  @Test
  void classes_come_worst_first_and_hold_every_fault_once() {
    Faults faults = faults(tub("14"));
    List<Harm> harms = faults.classes().stream().map(c -> c.like().harm()).toList();
    assertEquals(harms.stream().sorted().toList(), harms);
    assertEquals(
        faults.cases().size(), faults.classes().stream().mapToInt(c -> c.faults().size()).sum());
    assertFalse(faults.cases().isEmpty());
  }

  /** Solving only the groups that a fault touches finds what solving everything finds. */
  @Test
  void the_part_that_a_fault_touches_stands_for_the_whole() {
    Random random = new Random(33);
    int compared = 0;
    for (int i = 0; i < 40; i++) {
      String mains = i % 3 == 0 ? Studies.THREE : "{phases: 1, voltage: 230 V, frequency: 50 Hz}";
      String body =
          switch (i % 3) {
            case 0 -> GeneratedCircuit.threePhase(random);
            case 1 -> GeneratedCircuit.alternating(random);
            default -> tub(random.nextBoolean() ? "14" : "12");
          };
      Circuit circuit = Bench.circuit(mains, body);
      Study study = Study.of(circuit, Studies.TABLES);
      Model whole = study.model();
      WorkTable before = WorkTable.of(whole.explorations.values());
      Faults faults = Faults.of(study);
      List<Breakage> breakages = Breakages.of(circuit, Earth.of(circuit));
      for (int b = 0; b < breakages.size(); b++) {
        Alteration way = breakages.get(b).ways().get(0);
        if (!way.joints().isEmpty()) {
          continue;
        }
        Model model = Model.apart(whole.setup, circuit.islands(), way);
        WorkTable after = WorkTable.of(model.explorations.values());
        FaultCase found = faults.cases().get(b);
        WorkTable.rated(whole.explorations.values())
            .forEach(
                (load, watts) -> {
                  Map<Effect, List<BitSet>> wholly = FaultJudge.compare(load, watts, before, after);
                  for (BitSet operated : before.rows.keySet()) {
                    if (before.isTripped(operated) || after.isTripped(operated)) {
                      continue;
                    }
                    for (Effect effect : Effect.values()) {
                      boolean there = wholly.getOrDefault(effect, List.of()).contains(operated);
                      assertEquals(
                          there, isNamed(found, load, effect, operated, whole), found + " " + load);
                    }
                  }
                });
        compared++;
      }
    }
    assertTrue(compared > 500, compared + " faults compared");
  }

  private static boolean isNamed(
      FaultCase found, String load, Effect effect, BitSet operated, Model whole) {
    return found.effects().stream()
        .filter(e -> e.load().equals(load) && e.effect() == effect)
        .flatMap(e -> e.positions().stream())
        .anyMatch(
            p ->
                p.entrySet().stream()
                    .allMatch(
                        e ->
                            operated.get(whole.setup.variables.columns().indexOf(e.getKey()))
                                == e.getValue()));
  }
}
