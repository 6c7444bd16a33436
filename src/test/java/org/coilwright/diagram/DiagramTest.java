// Over 250 lines: every netlist measured in every way, and every way of spoiling it.
package org.coilwright.diagram;

import static java.util.stream.Collectors.joining;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.coilwright.checklist.Texts;
import org.coilwright.circuit.Circuit;
import org.coilwright.diagram.Item.Kind;
import org.coilwright.drawing.Shape;
import org.coilwright.drawing.Svg;
import org.coilwright.netlist.Netlist;
import org.coilwright.netlist.NetlistReader;
import org.coilwright.netlist.Reading;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class DiagramTest {
  private static final int GENERATED = 60;
  private static final Diagram.Words WORDS = Texts.english()::of;

  /** A netlist by a name that tells which. */
  private record Named(String name, Netlist netlist) {
    @Override
    public String toString() {
      return name;
    }
  }

  static Stream<Named> examples() throws IOException {
    return in(Path.of("wiring-examples"));
  }

  static Stream<Named> generated() {
    return IntStream.range(0, GENERATED)
        .mapToObj(i -> read("generated " + i, RandomPanel.of(i).getBytes(StandardCharsets.UTF_8)));
  }

  private static Stream<Named> in(Path folder) throws IOException {
    List<Named> all = new ArrayList<>();
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.filter(f -> f.toString().endsWith(".yaml")).sorted().toList()) {
        all.add(read(file.toString(), Files.readAllBytes(file)));
      }
    }
    return all.stream();
  }

  private static Named read(String name, byte[] bytes) {
    if (NetlistReader.read(name, bytes) instanceof Reading.Read read) {
      return new Named(name, read.netlist());
    }
    throw new AssertionError(name + " cannot be read");
  }

  private static List<DrawnSheet> sheets(Named named) {
    List<Diagram.Finding> findings = new ArrayList<>();
    for (String part : named.netlist().parts().keySet()) {
      findings.add(new Diagram.Finding("NOTE", part + " is marked", List.of(part)));
    }
    named
        .netlist()
        .runs()
        .keySet()
        .forEach(r -> findings.add(new Diagram.Finding("FIX", "run " + r, List.of(r))));
    return Diagram.sheets(Circuit.of(named.netlist()), findings, WORDS);
  }

  private static List<String> faults(Named named, List<DrawnSheet> sheets) {
    List<String> faults = new ArrayList<>();
    for (DrawnSheet sheet : sheets) {
      Overlaps.of(sheet).forEach(f -> faults.add(sheet.title() + ": " + f));
    }
    faults.addAll(Coverage.of(named.netlist(), sheets));
    return faults;
  }

  @ParameterizedTest
  @MethodSource({"examples", "generated"})
  void nothing_stands_on_anything_and_every_conductor_runs_from_its_pin_to_its_pin(Named named) {
    assertEquals(List.of(), faults(named, sheets(named)));
  }

  @Test
  void the_same_holds_for_every_netlist_of_the_rules() throws IOException {
    List<String> faults = new ArrayList<>();
    in(Path.of("src/test/resources/rules"))
        .forEach(n -> faults(n, sheets(n)).forEach(f -> faults.add(n + ": " + f)));
    assertEquals(List.of(), faults);
  }

  /** What is measured must be able to fail: each of these spoils a sheet in one place. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "text moved onto other text",
        "text moved onto a line",
        "symbol moved onto a line",
        "conductor moved through a symbol",
        "conductor moved off its pin",
        "conductor on top of another",
        "conductor left out",
        "pin left out",
        "pin named twice",
        "moved out of the frame"
      })
  void a_mutilated_sheet_is_found(String how) throws IOException {
    Random random = new Random(7);
    for (Named named : examples().toList()) {
      List<DrawnSheet> sheets = new ArrayList<>(sheets(named));
      DrawnSheet sheet = sheets.get(0);
      for (int time = 0; time < 5; time++) {
        sheets.set(0, spoilt(sheet, how, random));
        assertFalse(faults(named, sheets).isEmpty(), named + ": " + how);
      }
    }
  }

  private static DrawnSheet spoilt(DrawnSheet sheet, String how, Random random) {
    List<Item> items = new ArrayList<>(sheet.items());
    Item wire = any(items, Kind.WIRE, random);
    Item text = any(items, Kind.WIRE_TEXT, random);
    Item pin = any(items, Kind.PIN, random);
    Item symbol = any(items, Kind.SYMBOL, random);
    switch (how) {
      case "text moved onto other text" -> move(items, text, at(text), at(pin));
      case "text moved onto a line" -> move(items, text, at(text), middle(wire));
      case "symbol moved onto a line" -> move(items, symbol, middle(symbol), middle(wire));
      case "conductor moved through a symbol" -> move(items, wire, middle(wire), middle(symbol));
      case "conductor moved off its pin" -> {
        Shape.Point from = middle(wire);
        move(items, wire, from, from.moved(4, 0));
      }
      case "conductor on top of another" -> {
        items.add(new Item(Kind.WIRE, "wire 1", wire.shapes()));
      }
      case "conductor left out" ->
          items.removeIf(i -> i.kind() == Kind.WIRE && i.of().equals(bothHere(items).of()));
      case "pin left out" -> items.remove(pin);
      case "pin named twice" -> items.add(pin);
      case "moved out of the frame" ->
          move(items, pin, at(pin), new Shape.Point(Diagram.WIDTH - 2, 40));
      default -> throw new AssertionError(how);
    }
    return new DrawnSheet(sheet.title(), sheet.shows(), items);
  }

  /** A conductor that is drawn in whole on this sheet: its ends are no references. */
  private static Item bothHere(List<Item> items) {
    return items.stream()
        .filter(i -> i.kind() == Kind.WIRE)
        .findFirst()
        .orElseThrow(() -> new AssertionError("no conductor"));
  }

  private static Item any(List<Item> items, Kind kind, Random random) {
    List<Item> some = items.stream().filter(i -> i.kind() == kind).toList();
    return some.get(random.nextInt(some.size()));
  }

  private static Shape.Point at(Item item) {
    return ((Shape.Label) item.shapes().get(0)).at();
  }

  private static Shape.Point middle(Item item) {
    for (Shape shape : item.shapes()) {
      if (shape instanceof Shape.Path path) {
        Shape.Point a = path.points().get(0);
        Shape.Point b = path.points().get(1);
        return new Shape.Point((a.x() + b.x()) / 2, (a.y() + b.y()) / 2);
      }
    }
    throw new AssertionError("no line in " + item.of());
  }

  private static void move(List<Item> items, Item item, Shape.Point from, Shape.Point to) {
    double dx = to.x() - from.x();
    double dy = to.y() - from.y();
    items.set(
        items.indexOf(item),
        new Item(
            item.kind(), item.of(), item.shapes().stream().map(s -> s.moved(dx, dy)).toList()));
  }

  @ParameterizedTest
  @MethodSource("examples")
  void every_marked_finding_is_told_in_a_key(Named named) {
    List<DrawnSheet> sheets = sheets(named);
    List<String> markers = kinds(sheets, Kind.MARKER, "");
    List<String> keys = kinds(sheets, Kind.FRAME, "key ");
    assertFalse(markers.isEmpty());
    assertTrue(keys.containsAll(markers), markers + " in " + keys);
    assertEquals(keys.size(), keys.stream().distinct().count());
    int findings = named.netlist().parts().size() + named.netlist().runs().size();
    assertEquals(findings, keys.size());
  }

  private static List<String> kinds(List<DrawnSheet> sheets, Kind kind, String prefix) {
    return sheets.stream()
        .flatMap(s -> s.items().stream())
        .filter(i -> i.kind() == kind && i.of().startsWith(prefix))
        .map(i -> i.of().substring(prefix.length()))
        .toList();
  }

  @Test
  void the_power_circuit_stands_apart_from_the_control_circuits() throws IOException {
    Named guestHouse =
        examples().filter(n -> n.name().contains("guest-house")).findFirst().orElseThrow();
    List<String> shows =
        Diagram.of(Circuit.of(guestHouse.netlist()), List.of(), WORDS).stream()
            .flatMap(s -> s.shows().stream())
            .toList();
    assertEquals(
        List.of(
            "Power circuit: G0, F0, F1, Q1, F3, E1",
            "Control circuit, mains: F2, U1, K1, Q1, B1",
            "Pins to keep free: U1",
            "Control circuit, 24 V DC ± 8 %, SELV: U1, K1"),
        shows);
  }

  @Test
  void beneath_a_coil_stands_where_each_of_its_contacts_is_drawn() throws IOException {
    Named guestHouse =
        examples().filter(n -> n.name().contains("guest-house")).findFirst().orElseThrow();
    List<String> table =
        sheets(guestHouse).stream()
            .flatMap(s -> s.items().stream())
            .filter(i -> i.kind() == Kind.TABLE && i.of().equals("Q1"))
            .flatMap(i -> i.shapes().stream())
            .filter(Shape.Label.class::isInstance)
            .map(s -> ((Shape.Label) s).text())
            .toList();
    assertTrue(table.contains("21–22") && table.contains("free"), table::toString);
    assertEquals(3, table.stream().filter(t -> t.startsWith("/1.")).count(), table::toString);
  }

  @Test
  void what_is_larger_than_a_sheet_is_drawn_smaller_and_stays_in_its_frame() {
    String name = "W".repeat(30);
    String clamps = IntStream.rangeClosed(1, 40).mapToObj(i -> "" + i).collect(joining(", "));
    String text =
        """
        coilwright: 1
        circuit: {title: %s}
        site: {mains: {phases: 1, voltage: 230 V}, practice: iec}
        parts:
          G0: {is: mains}
          %s: {is: breaker, curve: B, rating: 6 A, poles: 1}
          X1: {is: terminals, count: 40, bridged: [[%s]]}
          E1: {is: heater, power: 1 kW, voltage: 230 V, connection: single}
        wires:
          - G0.L to %s.1
          - %s.2 to X1.1
          - X1.40 to E1.1
          - E1.2 to G0.N
        """
            .formatted("on and ".repeat(40), name, clamps, name, name);
    Named wide = read("wide", text.getBytes(StandardCharsets.UTF_8));
    for (DrawnSheet sheet : sheets(wide)) {
      for (String fault : Overlaps.of(sheet)) {
        assertTrue(fault.startsWith("letters too small"), fault);
      }
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"en", "de"})
  void every_language_keeps_to_the_frame(String language) throws IOException {
    for (Named named : examples().toList()) {
      for (DrawnSheet sheet :
          Diagram.sheets(Circuit.of(named.netlist()), List.of(), Texts.in(language)::of)) {
        assertEquals(List.of(), Overlaps.of(sheet));
      }
    }
  }

  @ParameterizedTest
  @MethodSource("examples")
  void the_same_netlist_gives_the_same_drawing(Named named) {
    List<String> once = sheets(named).stream().map(s -> Svg.of(s.picture())).toList();
    List<String> again = sheets(named).stream().map(s -> Svg.of(s.picture())).toList();
    assertEquals(once, again);
  }
}
