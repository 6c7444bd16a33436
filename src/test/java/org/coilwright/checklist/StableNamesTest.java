package org.coilwright.checklist;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A filled-in value is found again by its name, so names must not move. */
class StableNamesTest {
  private static final List<String> EXAMPLES =
      List.of("wash-room-tub", "guest-house-cylinder", "cabin-water-heater", "attic-mistakes");

  private static final String PARTS =
      """
      G9:
        is: dc-supply
        output: {plus: 1, minus: 2, voltage: 12 V DC, limit: 1 A}
      S9: {is: switch, poles: 1, form: NO, least-load: 5 mA at 12 V}
      K9:
        is: relay
        coil: {pins: [A1, A2], voltage: 12 V DC, resistance: 400 Ω}
        contacts: [{pins: [11, 14], form: NO}]\
      """
          .indent(2);
  private static final String WIRES =
      """
      - {from: G9.1, to: S9.1, length: 1 m, size: 0.5 mm²}
      - {from: S9.2, to: K9.A1, length: 1 m, size: 0.5 mm²}
      - {from: K9.A2, to: G9.2, length: 1 m, size: 0.5 mm²}\
      """
          .indent(2);

  static Stream<Checklist> checklists() {
    return EXAMPLES.stream().map(name -> Checked.kept(name, "en"));
  }

  @ParameterizedTest
  @MethodSource("checklists")
  void no_two_things_to_fill_in_share_a_name(Checklist checklist) {
    List<String> names = names(checklist);
    assertEquals(names.size(), new HashSet<>(names).size(), names::toString);
  }

  /** A dot in a form field's name parts it from the field above. */
  @ParameterizedTest
  @MethodSource("checklists")
  void a_name_is_a_subject_a_dot_and_a_test(Checklist checklist) {
    for (String name : names(checklist)) {
      assertTrue(name.matches("[\\p{L}\\p{N}+~/_-]+\\.[\\p{L}\\p{N}+~/_-]+"), name);
    }
  }

  @Test
  void names_tell_device_and_test() {
    List<String> names =
        Checked.example("guest-house-cylinder").rows().stream().map(TestRow::name).toList();
    assertTrue(
        names.containsAll(
            List.of(
                "K1.coil-resistance",
                "Q1.pulls-in",
                "E1.current-1",
                "F0.test-button",
                "G0.voltage-L1-N",
                "voltage-tester.proved-before")),
        names::toString);
  }

  /**
   * A lamp on its own supply, written before everything else, so that every running number moves.
   */
  @ParameterizedTest
  @ValueSource(strings = {"wash-room-tub", "guest-house-cylinder", "cabin-water-heater"})
  void an_unrelated_part_changes_no_name(String example) throws IOException {
    String text = Files.readString(Path.of("wiring-examples", example + ".yaml"));
    String extra =
        text.replaceFirst("(?m)^parts:$", "parts:\n" + PARTS)
            .replaceFirst("(?m)^wires:$", "wires:\n" + WIRES);
    Map<String, String> before = actions(Checked.text(text));
    Map<String, String> after = actions(Checked.text(extra));
    assertTrue(after.containsKey("K9.coil-resistance"), after::toString);
    before.forEach((name, action) -> assertEquals(action, after.get(name), name));
    List<String> all = names(Checked.text(extra));
    assertTrue(all.containsAll(withoutSections(names(Checked.text(text)))));
  }

  /** Which row ends a section depends on how many there are; its name says which row it is. */
  private static List<String> withoutSections(List<String> names) {
    return names.stream().filter(n -> !n.startsWith("section-")).toList();
  }

  private static Map<String, String> actions(Checklist checklist) {
    Map<String, String> actions = new HashMap<>();
    // what is taken off or put back for all of them names all of them
    checklist
        .rows()
        .forEach(r -> actions.put(r.name(), r.action() + (r.manner().isDone() ? "" : r.where())));
    return actions;
  }

  static List<String> names(Checklist checklist) {
    return Stream.of(
            checklist.rows().stream().map(TestRow::name),
            checklist.wires().stream().map(Checklist.WireRow::name),
            checklist.findings().stream().map(Checklist.FindingEntry::name),
            checklist.accepted().stream().map(Checklist.AcceptedEntry::name),
            checklist.openPoints().stream().map(Checklist.OpenPoint::name),
            checklist.instruments().stream().map(Checklist.Instrument::name),
            checklist.signers().stream().map(Checklist.Signer::name),
            checklist.steps().stream().map(StableNamesTest::name))
        .flatMap(s -> s)
        .toList();
  }

  private static String name(Step step) {
    if (step instanceof Hold hold) {
      return hold.name();
    }
    return ((Section) step).name();
  }
}
