package org.coilwright.circuit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.coilwright.circuit.Branch.Conductor;
import org.coilwright.circuit.Mistake.Kind;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.Netlist;
import org.coilwright.netlist.NetlistReader;
import org.coilwright.netlist.Reading;
import org.coilwright.netlist.Terminal;
import org.coilwright.netlist.Wire;
import org.coilwright.netlist.Written;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class MistakesTest {
  private static final String LAMP =
      """
      parts:
        G1: {is: dc-supply, output: {plus: P, minus: M, voltage: 24 V DC, isolation: SELV}}
        P1: {is: lamp, voltage: 24 V, current: 20 mA}
      wires:
        - G1.P to P1.1
        - P1.2 to G1.M
      """;

  /**
   * Two wires, two parts of two pins: each of four ends on the one other pin, each wire left out,
   * the ends swapped at G1 (which reverses the supply) and at P1.
   */
  @Test
  void every_mistake_of_two_wires_between_two_pairs_of_pins_is_there_once() {
    List<Mistake> all = Mistakes.of(Bench.circuit(LAMP));
    assertEquals(8, all.size());
    assertEquals(4, count(all, Kind.MOVED));
    assertEquals(2, count(all, Kind.LEFT_OUT));
    assertEquals(1, count(all, Kind.SWAPPED));
    assertEquals(1, count(all, Kind.SUPPLY_REVERSED));
    assertEquals(Set.of(), Mistakes.harmless(Bench.circuit(LAMP), all));
  }

  @Test
  void a_diode_can_be_turned_and_exchanging_its_leads_is_the_same_mistake() {
    List<Mistake> all =
        Mistakes.of(
            Bench.circuit(
                """
                parts:
                  V1: {is: diode}
                  K1: {is: relay, coil: {pins: [A1, A2], voltage: 24 V DC}, contacts: [{pins: [11, 14], form: NO}]}
                wires:
                  - V1.K to K1.A1
                  - V1.A to K1.A2
                """));
    assertEquals(1, count(all, Kind.TURNED));
    assertEquals(
        List.of("K1"),
        all.stream()
            .filter(m -> m.kind() == Kind.SWAPPED)
            .map(m -> m.pins().get(0).part())
            .toList());
  }

  @Test
  void a_wire_on_another_clamp_of_its_bridge_is_harmless_and_one_beyond_it_is_not() {
    Circuit circuit =
        Bench.circuit(
            """
            parts:
              X1: {is: terminals, count: 3, bridged: [[1, 2]]}
              P1: {is: lamp, voltage: 24 V, current: 20 mA}
            wires:
              - X1.1 to P1.1
              - P1.2 to X1.3
            """);
    List<Mistake> all = Mistakes.of(circuit);
    Set<Mistake> harmless = Mistakes.harmless(circuit, all);
    assertEquals(
        Set.of(List.of(new Terminal("X1", "1"), new Terminal("X1", "2"))),
        new HashSet<>(harmless.stream().map(Mistake::pins).toList()));
  }

  @Test
  void the_second_of_two_wires_between_the_same_pins_can_be_left_out_without_harm() {
    Circuit circuit = Bench.circuit(LAMP + "  - G1.P to P1.1\n");
    List<Mistake> all = Mistakes.of(circuit);
    assertEquals(
        List.of(0, 2),
        Mistakes.harmless(circuit, all).stream()
            .filter(m -> m.kind() == Kind.LEFT_OUT)
            .map(m -> m.leftOut().getAsInt())
            .sorted()
            .toList());
  }

  /** What was meant is typed into the file itself, as somebody would who draws what was built. */
  @ParameterizedTest
  @ValueSource(
      strings = {"wash-room-tub", "cabin-water-heater", "guest-house-cylinder", "attic-mistakes"})
  void the_circuit_of_the_changed_file_is_the_circuit_of_the_mistake(String example)
      throws IOException {
    Path file = Path.of("wiring-examples", example + ".yaml");
    Netlist drawn = read(file.toString(), Files.readString(file));
    List<Mistake> all = Mistakes.of(Circuit.of(drawn));
    assertTrue(all.size() > 150, "too few: " + all.size());
    for (int i = 0; i < all.size(); i += 3) {
      Mistake mistake = all.get(i);
      Circuit typed = Circuit.of(read(file.toString(), typed(drawn, mistake)));
      assertEquals(
          ends(typed), ends(Circuit.of(mistake.in(drawn))), () -> mistake + " in " + example);
    }
  }

  /** Wires as pairs of nodes, and how often each pair is joined. */
  private static Map<Set<String>, Integer> ends(Circuit circuit) {
    Map<Set<String>, Integer> ends = new HashMap<>();
    for (Conductor wire : circuit.branches(Conductor.class)) {
      ends.merge(new TreeSet<>(Set.copyOf(names(wire))), 1, Integer::sum);
    }
    return ends;
  }

  private static List<String> names(Conductor wire) {
    return List.of(wire.from().name(), wire.to().name()).stream().distinct().toList();
  }

  private record Edit(Mark mark, String with) {}

  private static String typed(Netlist drawn, Mistake mistake) {
    List<Edit> edits = new ArrayList<>();
    for (Mistake.Laid laid : mistake.laid()) {
      Wire wire = drawn.wires().get(laid.wire());
      edits.add(new Edit(wire.from().mark(), laid.from().toString()));
      edits.add(new Edit(wire.to().mark(), laid.to().toString()));
    }
    for (Wire wire : drawn.wires()) {
      for (Written<Terminal> end : List.of(wire.from(), wire.to())) {
        mistake
            .turned()
            .filter(t -> t.part().equals(end.value().part()))
            .ifPresent(
                t ->
                    edits.add(
                        new Edit(
                            end.mark(), t.part() + (end.value().pin().equals("A") ? ".K" : ".A"))));
      }
    }
    List<StringBuilder> lines =
        new ArrayList<>(drawn.text().lines().stream().map(StringBuilder::new).toList());
    edits.stream()
        .sorted(Comparator.comparingInt((Edit e) -> e.mark().column()).reversed())
        .forEach(
            e ->
                lines
                    .get(e.mark().line() - 1)
                    .replace(e.mark().column() - 1, e.mark().endColumn() - 1, e.with()));
    mistake
        .leftOut()
        .ifPresent(i -> lines.get(drawn.wires().get(i).mark().line() - 1).setLength(0));
    return String.join("\n", lines);
  }

  private static Netlist read(String file, String text) {
    Reading reading = NetlistReader.read(file, text.getBytes(StandardCharsets.UTF_8));
    if (reading instanceof Reading.Read read) {
      return read.netlist();
    }
    throw new AssertionError(reading.toString());
  }

  private static long count(List<Mistake> all, Kind kind) {
    return all.stream().filter(m -> m.kind() == kind).count();
  }
}
