// Over 250 lines: one claim, recounted from every side.
package org.coilwright.checklist;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.coilwright.checklist.Coverage.Entry;
import org.coilwright.checklist.Coverage.Fate;
import org.coilwright.checklist.Expected.Band;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Mistake;
import org.coilwright.circuit.Mistakes;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Terminal;
import org.coilwright.solve.Probing;
import org.coilwright.solve.State;
import org.coilwright.solve.Study;
import org.coilwright.table.Tables;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class CoverageTest {
  private static final Texts ENGLISH = Texts.english();

  /** Those whose sheet holds every row that was counted by: a mend sheet holds few. */
  static Stream<String> sound() {
    return examples().filter(name -> !Checked.kept(name, "en").isStopped());
  }

  static Stream<String> examples() {
    return Stream.of(
        "wash-room-tub", "guest-house-cylinder", "cabin-water-heater", "attic-mistakes");
  }

  @ParameterizedTest
  @MethodSource("sound")
  void no_mistake_is_neither_shown_nor_warned_of(String example) {
    Checklist checklist = Checked.example(example);
    for (Entry entry : checklist.coverage().entries()) {
      if (entry.fate() == Fate.BY_EYE) {
        TestRow row = row(checklist, entry);
        assertTrue(row.condition().contains("By eye, for no reading tells it"), row::condition);
      }
    }
    Circuit circuit = Mistaken.of(example).tests().anatomy().circuit();
    assertEquals(Mistakes.of(circuit).size(), checklist.coverage().entries().size());
  }

  @ParameterizedTest
  @CsvSource({"wash-room-tub, 204", "guest-house-cylinder, 491", "cabin-water-heater, 253"})
  void every_mistake_of_a_circuit_to_be_built_shows_before_the_mains_is_on(
      String example, long mistakes) {
    Coverage coverage = Checked.example(example).coverage();
    assertEquals(coverage.mistakes(), coverage.count(Fate.BEFORE_MAINS));
    assertTrue(coverage.mistakes() <= mistakes && coverage.mistakes() > mistakes - 5);
  }

  /** The printed claim, counted again from the rows: what shows where, and nowhere before. */
  @ParameterizedTest
  @MethodSource("sound")
  void the_printed_figure_is_what_counting_again_gives(String example) {
    Checklist checklist = Checked.example(example);
    Coverage coverage = checklist.coverage();
    Mistaken mistaken = Mistaken.of(example);
    List<Row> rows = mistaken.rows();
    List<String> names = checklist.rows().stream().map(TestRow::name).toList();
    MistakeWords words = new MistakeWords(mistaken.tests().anatomy().circuit(), ENGLISH);
    Set<String> counted = new HashSet<>();
    int last = -1;
    for (Mistake mistake : mistaken.tests().mistakes().all()) {
      List<String> showing = new ArrayList<>();
      for (Row row : rows) {
        Band band = (Band) row.expected();
        var shown = mistaken.tests().readings().shown(row.probing().orElseThrow(), mistake, band);
        boolean above = band.max().isPresent() && shown.low() > band.max().getAsDouble();
        if (above || shown.high() < band.min().orElse(0)) {
          showing.add(row.name());
        }
      }
      if (!showing.isEmpty()) {
        counted.add(words.of(mistake));
        Entry entry = entry(coverage, words.of(mistake));
        int first = showing.stream().mapToInt(names::indexOf).min().orElseThrow();
        assertEquals(names.get(first), entry.row(), mistake::toString);
        last = Math.max(last, first);
      }
    }
    assertEquals(coverage.count(Fate.BEFORE_MAINS), counted.size());
    long shown = counted.size() + coverage.count(Fate.WITH_MAINS);
    String sentence = coverage.sentence(ENGLISH);
    assertTrue(
        sentence.startsWith(
            "Of %d single wiring mistakes %d show by step %s, "
                .formatted(coverage.mistakes(), shown, coverage.lastStep())),
        sentence);
    if (coverage.count(Fate.WITH_MAINS) == 0) {
      assertEquals(checklist.rows().get(last).number(), coverage.lastStep());
      assertTrue(sentence.contains(", all before mains"), sentence);
    } else {
      assertTrue(sentence.contains(", " + counted.size() + " of them before mains"), sentence);
    }
  }

  /** The long thin line hides it from the ohmmeter, and no volt reaches the coil. */
  @Test
  void what_only_the_voltmeter_tells_is_counted_apart() {
    Coverage coverage = Checked.example("attic-mistakes").coverage();
    Entry entry = entry(coverage, "wire 19 (K1.A2 to U1.X3) is on U1.X4 instead of U1.X3");
    assertEquals(Fate.WITH_MAINS, entry.fate());
    assertEquals("K1.coil-voltage-on", entry.row());
    assertEquals("0 V DC", entry.reading());
  }

  /**
   * A thermostat may not open in cold water, and a cut-out may have no test means: with the wires
   * lifted from the other pin of its pole, the same mistakes show at the same rows.
   */
  @ParameterizedTest
  @MethodSource("examples")
  void lifting_the_wires_at_the_other_pin_shows_what_opening_the_contact_does(String example) {
    Mistaken mistaken = Mistaken.of(example);
    DeadReadings readings = mistaken.tests().readings();
    for (Row row : mistaken.rows()) {
      Probing opened = row.probing().orElseThrow();
      if (!row.name().endsWith(".continuity") || opened.operated().isEmpty()) {
        continue;
      }
      Set<Terminal> others = new HashSet<>();
      for (Terminal pin : List.of(opened.plus().get(0), opened.minus().get(0))) {
        if (mistaken.netlist().parts().get(pin.part()) instanceof Part.Thermal thermal) {
          for (Part.Pole pole : thermal.poles()) {
            String other = pole.from().equals(pin.pin()) ? pole.to() : pole.from();
            if (pole.from().equals(pin.pin()) || pole.to().equals(pin.pin())) {
              others.add(new Terminal(pin.part(), other));
            }
          }
        }
      }
      if (others.isEmpty()) {
        continue;
      }
      Band band = (Band) row.expected();
      Probing lifted = opened.operating(Map.of()).lifting(others);
      assertTrue(readings.fits(lifted, band), row::name);
      for (Mistake mistake : mistaken.tests().mistakes().all()) {
        if (readings.shows(opened, mistake, band)) {
          assertTrue(readings.shows(lifted, mistake, band), row.name() + ": " + mistake);
        }
      }
    }
  }

  /** A row without a measurement claims nothing; the examples shall not lean on that. */
  @ParameterizedTest
  @MethodSource("examples")
  void every_reading_of_ohms_on_a_dead_circuit_is_computed(String example) {
    Mistaken mistaken = Mistaken.of(example);
    Set<String> computed = new HashSet<>(mistaken.rows().stream().map(Row::name).toList());
    List<Row> all =
        new DeadTopics(mistaken.tests())
            .topics().stream().flatMap(topic -> topic.rows().stream()).toList();
    for (Row row : all) {
      boolean ohms = Set.of("Ω", "kΩ", "MΩ").contains(row.expected().unit());
      // a conductor that nobody has wired has a row, and reads open
      boolean missing =
          row.name().endsWith(".protective-conductor")
              && !mistaken
                  .tests()
                  .anatomy()
                  .wired(row.name().substring(0, row.name().indexOf('.')), "PE");
      assertTrue(!ohms || missing || computed.contains(row.name()), row::name);
    }
  }

  @ParameterizedTest
  @MethodSource("examples")
  void what_is_called_harmless_changes_no_state_and_no_coil(String example) {
    Mistaken mistaken = Mistaken.of(example);
    Study drawn = mistaken.tests().anatomy().study();
    for (Mistake mistake : mistaken.tests().mistakes().harmless()) {
      Study built = Study.of(Circuit.of(mistake.in(mistaken.netlist())), Tables.load());
      assertEquals(drawn.states(), built.states());
      for (State state : drawn.states()) {
        for (String relay : state.pulledIn().keySet()) {
          double volts = drawn.coil(relay, state).volts();
          // Another length of wire may carry it: the line's loss differs, what it does does not.
          assertEquals(volts, built.coil(relay, state).volts(), 0.05 * Math.abs(volts) + 1e-6);
        }
      }
    }
  }

  @Test
  void a_wire_that_reads_open_is_said_to_be_missing_first() {
    Mistaken mistaken = Mistaken.of("wash-room-tub");
    List<String> means =
        diagnosis("wash-room-tub").of("wire-8.continuity", Double.POSITIVE_INFINITY);
    assertEquals("Wire 8 (K1.14 to B1.1) is missing, broken or loose at one end.", means.get(0));
    assertTrue(means.size() > 3, means::toString);
    assertFalse(mistaken.rows().isEmpty());
  }

  @Test
  void a_mistake_that_would_have_shown_at_a_row_as_expected_is_not_guessed() {
    Diagnosis diagnosis = diagnosis("wash-room-tub");
    String name = "wire-8.continuity";
    List<String> alone = diagnosis.of(name, Double.POSITIVE_INFINITY);
    Set<String> others =
        Checked.example("wash-room-tub").rows().stream()
            .map(TestRow::name)
            .filter(other -> !other.equals(name))
            .collect(Collectors.toSet());
    List<String> beside = diagnosis.of(name, Double.POSITIVE_INFINITY, others);
    assertTrue(beside.size() < alone.size(), beside::toString);
    for (String guess : beside) {
      String wire = guess.substring(0, guess.indexOf(')'));
      assertTrue(alone.stream().anyMatch(a -> a.startsWith(wire)), guess);
    }
  }

  @Test
  void a_reading_no_mistake_gives_is_said_to_mean_none() {
    assertEquals(List.of(), diagnosis("wash-room-tub").of("wire-8.continuity", 7.5));
    assertEquals(List.of(), diagnosis("wash-room-tub").of("no-such.row", 7.5));
  }

  /** For every mistake: reading its first row, it is among what that reading is said to mean. */
  @ParameterizedTest
  @CsvSource({"wash-room-tub", "cabin-water-heater"})
  void a_mistake_is_among_what_its_own_reading_is_said_to_mean(String example) {
    Mistaken mistaken = Mistaken.of(example);
    List<Row> rows = mistaken.rows();
    Diagnosis diagnosis = diagnosis(example);
    MistakeWords words = new MistakeWords(mistaken.tests().anatomy().circuit(), ENGLISH);
    for (Mistake mistake : mistaken.tests().mistakes().all()) {
      Row row = mistaken.tests().mistakes().first(rows, mistake).orElseThrow();
      var shown =
          mistaken
              .tests()
              .readings()
              .shown(row.probing().orElseThrow(), mistake, (Band) row.expected());
      double value = shown.isOpen() ? shown.low() : shown.low() + 1e-9;
      String means = String.join(" ", diagnosis.of(row.name(), value));
      String wire =
          mistake.turned().isPresent()
              ? mistake.turned().get().part()
              : words.wire(mistake.wires().get(0)).substring(1);
      assertTrue(means.contains(wire) || means.contains("reversed"), mistake + ": " + means);
    }
  }

  private static Diagnosis diagnosis(String example) {
    return Checked.diagnosis(example);
  }

  private static TestRow row(Checklist checklist, Entry entry) {
    return checklist.rows().stream()
        .filter(r -> r.name().equals(entry.row()))
        .findFirst()
        .orElseThrow();
  }

  private static Entry entry(Coverage coverage, String mistake) {
    return coverage.entries().stream()
        .filter(e -> e.mistake().equals(mistake))
        .findFirst()
        .orElseThrow(() -> new AssertionError("not counted: " + mistake));
  }
}
