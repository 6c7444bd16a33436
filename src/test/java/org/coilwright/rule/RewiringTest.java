package org.coilwright.rule;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.coilwright.circuit.Bench;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.Netlist;
import org.coilwright.netlist.Terminal;
import org.coilwright.netlist.Wire;
import org.junit.jupiter.api.Test;

/** What a remedy writes, as the text that then stands there. */
class RewiringTest {
  private static final Netlist NETLIST =
      Bench.netlist(
          "{phases: 1, voltage: 230 V, frequency: 50 Hz}",
          """
          parts:
            G0: {is: mains}
            K1: {is: relay, coil: {pins: [A1, A2], voltage: 230 V AC}, contacts: [{pins: [11, 14], form: NO}]}
            D1: {is: diode}
          runs:
            W1: {length: 3 m}
          wires:
            - {from: G0.L, to: K1.11}
            - {from: K1.11, to: K1.A1, run: W1}
            - from: K1.A2
              to: G0.N
            - {from: K1.14, to: D1.A}
          """);

  /** The lines that differ once the changes are made. */
  private static List<String> written(List<Change> changes) {
    List<StringBuilder> lines = new ArrayList<>();
    NETLIST.text().lines().forEach(l -> lines.add(new StringBuilder(l)));
    changes.stream()
        .sorted(Comparator.comparing((Change c) -> c.mark().column()).reversed())
        .forEach(
            c ->
                lines
                    .get(c.mark().line() - 1)
                    .replace(c.mark().column() - 1, c.mark().endColumn() - 1, c.text()));
    List<String> differ = new ArrayList<>();
    for (int i = 0; i < lines.size(); i++) {
      if (!lines.get(i).toString().equals(NETLIST.text().lines().get(i))) {
        differ.add(lines.get(i).toString());
      }
    }
    return differ;
  }

  @Test
  void a_wire_stands_on_a_line_of_its_own_before_the_first() {
    assertEquals(
        List.of("  - {from: G0.L, to: K1.14}\n  - {from: G0.L, to: K1.11}"),
        written(Rewiring.wire(NETLIST, "G0.L", "K1.14", Optional.empty())));
    assertEquals(
        List.of("  - {from: G0.L, to: K1.14, run: W1}\n  - {from: G0.L, to: K1.11}"),
        written(Rewiring.wire(NETLIST, "G0.L", "K1.14", Optional.of("W1"))));
  }

  @Test
  void a_part_stands_on_a_line_of_its_own_before_the_first() {
    assertEquals(
        List.of("  D2: {is: diode}\n  G0: {is: mains}"),
        written(Rewiring.part(NETLIST, "D2", "is: diode")));
  }

  /** K1.11 has two wires already: the next goes to the far end of one. */
  @Test
  void a_part_across_two_pins_is_wired_where_there_is_room() {
    List<Change> changes =
        Rewiring.across(NETLIST, "D2", "is: diode", List.of("K", "A"), List.of("K1.11", "K1.A2"));
    List<String> texts =
        changes.stream().map(c -> c.text().lines().findFirst().orElse("")).toList();
    assertEquals(
        List.of("  D2: {is: diode}", "  - {from: D2.K, to: G0.L}", "  - {from: D2.A, to: K1.A2}"),
        texts);
  }

  @Test
  void a_free_designation_is_the_first_that_no_part_has() {
    assertEquals("D2", Rewiring.free(NETLIST, "D"));
    assertEquals("Q1", Rewiring.free(NETLIST, "Q"));
  }

  /** A wire over two lines cannot be struck out with one of them. */
  @Test
  void a_wire_is_struck_out_where_it_stands_alone_on_its_line() {
    Wire first = NETLIST.wires().get(0);
    assertEquals(List.of(""), written(Rewiring.without(NETLIST, first)));
    assertEquals(first.mark().line(), Rewiring.without(NETLIST, first).get(0).mark().line());
    Netlist two =
        Bench.netlist(
            "{phases: 1, voltage: 230 V, frequency: 50 Hz}",
            """
            parts: {G0: {is: mains}, D1: {is: diode}}
            wires: [{from: G0.L, to: D1.A}, {from: D1.K, to: G0.N}]
            """);
    assertEquals(List.of(), Rewiring.without(two, two.wires().get(0)));
  }

  @Test
  void two_pins_are_exchanged_at_every_wire_end_on_them() {
    assertEquals(
        List.of(
            "  - {from: G0.L, to: K1.14}",
            "  - {from: K1.14, to: K1.A1, run: W1}",
            "  - {from: K1.11, to: D1.A}"),
        written(Rewiring.exchanged(NETLIST, new Terminal("K1", "11"), new Terminal("K1", "14"))));
  }

  @Test
  void the_run_of_a_part_is_that_of_its_first_wire_in_one() {
    assertEquals(Optional.of("W1"), Rewiring.runOf(NETLIST, "K1"));
    assertEquals(Optional.empty(), Rewiring.runOf(NETLIST, "D1"));
    assertEquals(Optional.empty(), Rewiring.runOf(NETLIST, "G0"));
  }

  @Test
  void a_word_of_a_part_is_the_first_behind_its_designation() {
    Mark part = Objects.requireNonNull(NETLIST.parts().get("D1")).head().mark();
    assertEquals(
        List.of("  D1: {is: varistor}"),
        written(Rewiring.word(NETLIST, part, "diode", "varistor")));
    assertEquals(List.of(), Rewiring.word(NETLIST, part, "D1", "D2"));
    assertEquals(List.of(), Rewiring.word(NETLIST, part, "absent", "x"));
  }
}
