// Over 250 lines: one question to the circuit after the other.
package org.coilwright.circuit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.coilwright.circuit.Branch.Conductor;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Branch.LoadElement;
import org.coilwright.circuit.Branch.Source;
import org.coilwright.netlist.Terminal;
import org.junit.jupiter.api.Test;

class CircuitTest {
  private static final String RELAY =
      """
      parts:
        G0: {is: mains}
        F1: {is: breaker, curve: B, rating: 10 A, poles: 1+N}
        U1:
          is: controller
          aux-supply: {plus: 22, minus: 21, voltage: 24 V DC ± 5 %, limit: 120 mA, isolation: SELV}
          outputs:
            heat: {pins: [13, 14], form: NO}
          mains: {pins: [1, 2]}
        K1:
          is: relay
          coil: {pins: [A1, A2], voltage: 24 V DC, resistance: 960 Ω ± 10 %}
          contacts:
            - {common: 11, NC: 12, NO: 14}
        E1: {is: heater, power: 1.5 kW, voltage: 230 V, connection: single}
        X1: {is: terminals, count: 4, bridged: [[1, 2], [2, 3]]}
      runs:
        W1: {length: 14 m, size: 0.75 mm², insulation: 300 V}
        W2: {length: 16 m, size: 2.5 mm²}
      wires:
        - G0.L to F1.1 in W2
        - G0.N to F1.N1 in W2
        - F1.2 to X1.1 in W2
        - X1.3 to K1.11 in W2
        - K1.14 to E1.1 in W2
        - E1.2 to F1.N2 in W2
        - X1.2 to U1.1 in W2
        - F1.N2 to U1.2 in W2
        - U1.22 to U1.13
        - {from: U1.14, to: K1.A1, run: W1, length: 3 m}
        - K1.A2 to U1.21 in W1
      """;

  private static Node at(Circuit circuit, String pin) {
    int dot = pin.indexOf('.');
    return circuit
        .find(new Terminal(pin.substring(0, dot), pin.substring(dot + 1)))
        .orElseThrow(() -> new AssertionError(pin));
  }

  private static Contact contact(Circuit circuit, String id) {
    return (Contact) circuit.branch(id).orElseThrow(() -> new AssertionError(id));
  }

  @Test
  void bridged_clamps_are_one_node_and_the_rest_are_apart() {
    Circuit circuit = Bench.circuit(RELAY);
    assertEquals(at(circuit, "X1.1"), at(circuit, "X1.3"));
    assertEquals("X1.1", at(circuit, "X1.3").name());
    assertFalse(at(circuit, "X1.4").equals(at(circuit, "X1.1")));
    assertTrue(circuit.find(new Terminal("X1", "9")).isEmpty());
  }

  @Test
  void control_and_mains_are_islands_with_their_own_domain() {
    Circuit circuit = Bench.circuit(RELAY);
    assertEquals(Domain.MAINS, circuit.domain(at(circuit, "E1.1")));
    assertEquals(Domain.SELV, circuit.domain(at(circuit, "K1.A1")));
    assertEquals(Domain.NONE, circuit.domain(at(circuit, "X1.4")));
    assertTrue(circuit.islandOf(at(circuit, "U1.1")).hasMains());
    assertFalse(circuit.islandOf(at(circuit, "U1.14")).hasMains());
  }

  @Test
  void undeclared_isolation_is_not_taken_for_selv() {
    Circuit circuit = Bench.circuit(RELAY.replace(", isolation: SELV", ""));
    assertEquals(Domain.UNDECLARED_ELV, circuit.domain(at(circuit, "K1.A1")));
    assertEquals(
        Domain.PELV, Bench.circuit(RELAY.replace("SELV", "PELV")).domain(at(circuit, "K1.A1")));
  }

  @Test
  void a_wires_own_keys_override_its_runs_and_a_bridge_is_short_and_thin() {
    List<Conductor> wires = Bench.circuit(RELAY).branches(Conductor.class);
    Conductor overridden = wires.get(9);
    assertEquals(3, overridden.length().orElseThrow());
    assertEquals(0.75, overridden.size().orElseThrow().mm2());
    assertEquals(300, overridden.insulation().orElseThrow().nominal());
    Conductor bridge = wires.get(8);
    assertTrue(bridge.bridge());
    assertEquals(0.2, bridge.length().orElseThrow());
    assertEquals(0.75, bridge.size().orElseThrow().mm2());
  }

  @Test
  void a_changeover_is_two_contacts_of_one_armature() {
    Circuit circuit = Bench.circuit(RELAY);
    Contact closing = contact(circuit, "K1.11-14");
    Contact opening = contact(circuit, "K1.11-12");
    assertEquals(closing.actuator(), opening.actuator());
    assertTrue(closing.conductsWhen(true));
    assertFalse(opening.conductsWhen(true));
    assertEquals(List.of(opening, closing), circuit.contactsOf(closing.actuator()));
  }

  @Test
  void only_contacts_that_nothing_in_the_circuit_moves_are_independent() {
    assertEquals(
        List.of("U1.heat"),
        Bench.circuit(RELAY).independentActuators().stream().map(Actuator::name).toList());
  }

  @Test
  void the_way_to_the_load_is_cut_by_the_relay_and_by_either_pole() {
    Circuit circuit = Bench.circuit(RELAY);
    Node line = at(circuit, "G0.L");
    Node load = at(circuit, "E1.1");
    assertTrue(circuit.cuts(List.of(contact(circuit, "K1.11-14")), line, load, Circuit::isWay));
    assertFalse(circuit.cuts(List.of(contact(circuit, "K1.11-12")), line, load, Circuit::isWay));
    assertEquals(
        "G0.L → F1.1 → F1.2 → X1.1 → K1.11 → K1.14 → E1.1",
        circuit.path(line, load, Circuit::isWay).orElseThrow().inWords());
    assertTrue(circuit.pathsAround(List.of(contact(circuit, "K1.11-14")), "E1").isEmpty());
  }

  @Test
  void a_way_around_the_contact_is_found_and_named() {
    Circuit circuit = Bench.circuit(RELAY + "  - F1.2 to E1.1 in W2\n");
    assertEquals(
        List.of("G0.L → F1.1 → F1.2 → E1.1"),
        circuit.pathsAround(List.of(contact(circuit, "K1.11-14")), "E1").stream()
            .map(Branch.Path::inWords)
            .toList());
  }

  @Test
  void paths_come_shortest_first_and_parallel_wires_count_apart() {
    Circuit circuit = Bench.circuit(RELAY + "  - F1.2 to E1.1 in W2\n  - F1.2 to E1.1 in W1\n");
    List<Branch.Path> paths =
        circuit.paths(at(circuit, "F1.2"), at(circuit, "E1.1"), Circuit::isWay, 10);
    assertEquals(3, paths.size());
    assertEquals(1, paths.get(0).branches().size());
    assertEquals(1, paths.get(1).branches().size());
    assertFalse(paths.get(0).branches().equals(paths.get(1).branches()));
    assertEquals(4, paths.get(2).branches().size());
    assertEquals(
        2, circuit.paths(at(circuit, "F1.2"), at(circuit, "E1.1"), Circuit::isWay, 2).size());
  }

  @Test
  void the_supply_of_a_coil_is_found_through_its_contact() {
    Circuit circuit = Bench.circuit(RELAY);
    assertEquals(
        List.of("U1.aux-supply"),
        circuit.suppliesOf(circuit.branch("K1.coil").orElseThrow()).stream()
            .map(Source::id)
            .toList());
  }

  @Test
  void wires_at_a_terminal_are_not_those_of_its_bridged_neighbours() {
    Circuit circuit = Bench.circuit(RELAY);
    assertEquals(1, circuit.wiresAt(new Terminal("X1", "2")).size());
    assertEquals(0, circuit.wiresAt(new Terminal("X1", "4")).size());
    assertEquals(2, circuit.wiresAt(new Terminal("F1", "N2")).size());
    assertEquals(3, circuit.net(at(circuit, "F1.N2")).size());
  }

  @Test
  void three_phase_sources_stand_at_the_line_to_neutral_voltage() {
    Circuit circuit =
        Bench.circuit(
            "{phases: 3, voltage: 400 V ± 10 %, frequency: 50 Hz}",
            """
            parts:
              G0: {is: mains}
              E1: {is: heater, power: 9 kW, voltage: 400 V, connection: star}
              E2: {is: heater, power: 9 kW, voltage: 400 V, connection: delta}
              E3: {is: heater, power: 9 kW, voltage: 400 V, connection: star-with-neutral}
            wires: [G0.L1 to E1.1]
            """);
    List<Source> sources = circuit.branches(Source.class);
    assertEquals(
        List.of(0, -120, 120), sources.stream().map(s -> s.phaseDegrees().orElseThrow()).toList());
    assertEquals(230.94, sources.get(0).volts().orElseThrow().nominal(), 0.01);
    // the tolerance counts from 230 V, as such a network is named
    assertEquals(253, sources.get(0).volts().orElseThrow().high(), 1e-9);
    List<LoadElement> elements = circuit.branches(LoadElement.class);
    assertEquals(9, elements.size());
    assertEquals(230.94, elements.get(0).ratedVolts().orElseThrow(), 0.01);
    assertEquals("E1.star", elements.get(0).to().name());
    assertEquals(400, elements.get(3).ratedVolts().orElseThrow(), 1e-9);
    assertEquals(3000, elements.get(3).ratedWatts().orElseThrow(), 1e-9);
    assertEquals("E3.N", elements.get(6).to().name());
  }

  /** 4 kW at the shaft, and √3 · 400 V · 8.5 A · 0.83 = 4888 W from the line. */
  @Test
  void a_motor_takes_what_its_current_says_where_that_is_more_than_its_shaft_gives() {
    String motor = "M1: {is: motor, voltage: 400 V, connection: delta, power-factor: 0.83";
    assertEquals(4888, watts(motor + ", power: 4 kW, current: 8.5 A}"), 1);
    assertEquals(4888, watts(motor + ", current: 8.5 A}"), 1);
    assertEquals(4000, watts(motor + ", power: 4 kW, current: 5 A}"), 1e-9);
  }

  private static double watts(String load) {
    Circuit circuit =
        Bench.circuit(
            "{phases: 3, voltage: 400 V ± 10 %, frequency: 50 Hz}",
            "parts:\n  G0: {is: mains}\n  %s\nwires: [G0.L1 to M1.1]\n".formatted(load));
    return circuit.branches(LoadElement.class).stream()
        .mapToDouble(e -> e.ratedWatts().orElseThrow())
        .sum();
  }

  @Test
  void split_phase_has_two_halves_in_opposition() {
    Circuit circuit =
        Bench.circuit(
            "{phases: split, voltage: 120/240 V, frequency: 60 Hz}",
            """
            parts:
              G0: {is: mains}
              E1: {is: heater, power: 4.5 kW, voltage: 240 V, connection: single}
            wires: [G0.L1 to E1.1]
            """);
    List<Source> sources = circuit.branches(Source.class);
    assertEquals(2, sources.size());
    assertEquals(120, sources.get(1).volts().orElseThrow().nominal(), 1e-9);
    assertEquals(180, sources.get(1).phaseDegrees().orElseThrow());
  }

  /** A plain second way to find bridges: take each branch out and see whether its ends part. */
  @Test
  void bridges_are_the_branches_whose_loss_parts_the_island() {
    Random random = new Random(20260101);
    for (int round = 0; round < 60; round++) {
      Circuit circuit = randomNet(random);
      for (Circuit.Island island : circuit.islands()) {
        Set<String> expected = new HashSet<>();
        for (Branch branch : island.branches()) {
          if (circuit.cuts(List.of(branch), branch.from(), branch.to(), b -> true)) {
            expected.add(branch.id());
          }
        }
        assertEquals(
            expected, circuit.bridges(island).stream().map(Branch::id).collect(Collectors.toSet()));
      }
    }
  }

  /** A plain second way to find paths: walk everywhere that was not walked yet. */
  @Test
  void paths_between_any_two_nodes_are_all_there_shortest_first_and_each_once() {
    Random random = new Random(20260102);
    int most = 0;
    for (int round = 0; round < 60; round++) {
      Circuit circuit = randomNet(random);
      Predicate<Branch> through = b -> !b.id().equals("R1.1-2");
      Routes routes = circuit.routes(through);
      List<Node> nodes = circuit.nodes();
      for (int pair = 0; pair < 20; pair++) {
        Node from = nodes.get(random.nextInt(nodes.size()));
        Node to = nodes.get(random.nextInt(nodes.size()));
        Set<List<Branch>> expected = new HashSet<>();
        walk(circuit, from, to, through, new ArrayList<>(List.of(from)), List.of(), expected);
        List<Branch.Path> paths = routes.between(from, to, 100_000);
        assertEquals(expected.size(), paths.size());
        assertEquals(
            expected, paths.stream().map(Branch.Path::branches).collect(Collectors.toSet()));
        for (int i = 0; i + 1 < paths.size(); i++) {
          assertTrue(paths.get(i).branches().size() <= paths.get(i + 1).branches().size());
        }
        for (Branch.Path path : paths) {
          assertEquals(path.branches().size() + 1, path.nodes().size());
          assertEquals(from, path.nodes().get(0));
          assertEquals(to, path.nodes().get(path.nodes().size() - 1));
        }
        assertEquals(paths.subList(0, Math.min(3, paths.size())), routes.between(from, to, 3));
        most = Math.max(most, paths.size());
      }
    }
    assertTrue(most > 50, "no net had many paths: " + most);
  }

  private static void walk(
      Circuit circuit,
      Node at,
      Node to,
      Predicate<Branch> through,
      List<Node> seen,
      List<Branch> so,
      Set<List<Branch>> found) {
    if (at.equals(to)) {
      found.add(so);
      return;
    }
    for (Branch branch : circuit.branchesAt(at)) {
      Node next = branch.other(at);
      if (through.test(branch) && !seen.contains(next)) {
        seen.add(next);
        List<Branch> longer = new ArrayList<>(so);
        longer.add(branch);
        walk(circuit, next, to, through, seen, longer, found);
        seen.remove(next);
      }
    }
  }

  private static Circuit randomNet(Random random) {
    StringBuilder body = new StringBuilder("parts:\n");
    int resistors = 3 + random.nextInt(10);
    for (int i = 0; i < resistors; i++) {
      body.append("  R").append(i).append(": {is: resistor, resistance: 100 Ω}\n");
    }
    body.append("wires:\n");
    Set<String> used = new HashSet<>();
    int wires = 3 + random.nextInt(2 * resistors);
    for (int i = 0; i < wires; i++) {
      String from = "R" + random.nextInt(resistors) + "." + (1 + random.nextInt(2));
      String to = "R" + random.nextInt(resistors) + "." + (1 + random.nextInt(2));
      if (!from.equals(to) && used.add(from + to)) {
        body.append("  - ").append(from).append(" to ").append(to).append('\n');
      }
    }
    body.append("  - R0.1 to R1.2\n");
    return Bench.circuit(body.toString());
  }

  @Test
  void a_ladder_of_ten_thousand_rungs_does_not_overflow_the_stack() {
    int strips = 50;
    int clamps = 200;
    StringBuilder body = new StringBuilder("parts:\n");
    for (int x = 0; x < strips; x++) {
      body.append("  X").append(x).append(": {is: terminals, count: 200}\n");
    }
    body.append("wires:\n");
    for (int i = 0; i + 1 < strips * clamps; i++) {
      body.append("  - ").append(clamp(i)).append(" to ").append(clamp(i + 1)).append('\n');
    }
    Circuit circuit = Bench.circuit(body.toString());
    assertEquals(1, circuit.islands().size());
    assertEquals(9999, circuit.bridges(circuit.islands().get(0)).size());
  }

  private static String clamp(int number) {
    return "X" + number / 200 + "." + (number % 200 + 1);
  }
}
