package org.coilwright.checklist;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.coilwright.checklist.Expected.Seen;
import org.coilwright.checklist.Expected.State;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The installation as the sheet leaves it, row by row: what is locked off, what is live, what is
 * taken off, held in or turned. Only the printed rows are read, not what they were made from.
 */
class InstallationStateTest {
  private static final Pattern PIN = Pattern.compile("\\b[A-Z][A-Za-z0-9]*\\.[A-Za-z0-9]+");

  /** Row that undoes what another one does. */
  private static final List<List<String>> PAIRS =
      List.of(
          List.of("neutral.neutral-off", "electronics.electronics-back"),
          List.of("thermals.thermals-open", "thermals.thermals-back"),
          List.of("protective-conductor.earth-off", "protective-conductor-back"),
          List.of("electronics.electronics-off", "electronics.electronics-back"),
          List.of("contacts.hold-in", "contacts.let-go"));

  static Stream<Checklist> sheets() {
    return Stream.of("wash-room-tub", "guest-house-cylinder", "cabin-water-heater")
        .map(name -> Checked.kept(name, "en"));
  }

  private static boolean is(TestRow row, State state) {
    return row.expected() instanceof Seen seen && seen.state() == state;
  }

  /** Every supply is locked off and proved dead before anything else is touched. */
  @ParameterizedTest
  @MethodSource("sheets")
  void supplies_are_locked_before_the_first_reading_and_proved_dead_before_the_first_wire(
      Checklist list) {
    Set<String> locked = new HashSet<>();
    boolean proved = false;
    for (TestRow row : list.rows()) {
      if (row.name().endsWith(".locked-off")) {
        locked.add(row.name().substring(0, row.name().indexOf('.')));
        assertFalse(proved, row::name);
      }
      proved |= row.name().endsWith(".proved-dead");
      boolean touches = row.manner() == Manner.DONE && is(row, State.OFF);
      assertTrue(!touches || (proved && !locked.isEmpty()), row::name);
      assertTrue(row.wire().isEmpty() || proved, row::name);
    }
    assertTrue(proved);
  }

  /** What is live says so: once a supply was switched on, every reading behind it does. */
  @ParameterizedTest
  @MethodSource("sheets")
  void a_reading_between_pins_says_live_from_the_first_supply_on(Checklist list) {
    boolean on = false;
    for (Step step : list.steps()) {
      if (!(step instanceof Section section) || section.stage() == Section.Stage.SETTINGS) {
        continue;
      }
      for (TestRow row : section.rows()) {
        boolean switchedOn = row.manner() == Manner.SWITCHED && is(row, State.ON);
        assertTrue(!row.live() || on || switchedOn, row::name);
        boolean volts = Set.of("V AC", "V DC", "A", "ms").contains(row.expected().unit());
        boolean proving = row.name().contains("proved-dead");
        // an own control supply is extra-low voltage until the mains is on
        boolean mains = section.stage() != Section.Stage.ELV;
        assertTrue(!on || !volts || !mains || proving || row.live(), row::name);
        boolean mainsOn = row.name().startsWith("G") && switchedOn;
        on |= mainsOn;
        on &= !(row.manner() == Manner.SWITCHED && is(row, State.LOCKED_OFF));
      }
    }
  }

  /** Nothing is off, held or turned when somebody signs that a supply may come on. */
  @ParameterizedTest
  @MethodSource("sheets")
  void what_a_row_undoes_is_done_again_before_the_next_hold(Checklist list) {
    Set<String> open = new TreeSet<>();
    for (Step step : list.steps()) {
      if (step instanceof Hold hold) {
        assertEquals(Set.of(), open, hold::title);
      } else if (step instanceof Section section) {
        for (TestRow row : section.rows()) {
          for (List<String> pair : PAIRS) {
            if (row.name().equals(pair.get(0))) {
              open.add(pair.get(0));
            } else if (row.name().endsWith(pair.get(1))) {
              open.remove(pair.get(0));
            }
          }
        }
      }
    }
  }

  /** Put back is what was taken off, pin for pin. */
  @ParameterizedTest
  @MethodSource("sheets")
  void every_pin_taken_off_is_named_again_where_it_is_put_back(Checklist list) {
    Set<String> off = new TreeSet<>();
    for (TestRow row : list.rows()) {
      if (row.manner() == Manner.DONE && is(row, State.OFF)) {
        off.addAll(pins(row.where()));
      }
      if (row.manner() == Manner.DONE && is(row, State.BACK)) {
        off.removeAll(pins(row.where()));
      }
      if (row.name().endsWith("protective-conductor-back")) {
        off.removeAll(pins(row.where()));
      }
    }
    assertEquals(Set.of(), off);
  }

  private static Set<String> pins(String text) {
    Set<String> pins = new TreeSet<>();
    Matcher matcher = PIN.matcher(text);
    while (matcher.find()) {
      pins.add(matcher.group());
    }
    return pins;
  }

  /** After the first hold nobody takes a wire off, unless everything was locked off again. */
  @ParameterizedTest
  @MethodSource("sheets")
  void no_wire_is_taken_off_with_a_supply_on(Checklist list) {
    boolean held = false;
    for (Step step : list.steps()) {
      held |= step instanceof Hold;
      if (held && step instanceof Section section) {
        for (TestRow row : section.rows()) {
          boolean takesOff = row.manner() == Manner.DONE && is(row, State.OFF);
          assertFalse(takesOff, row::name);
          boolean moves = row.manner() == Manner.DONE && !row.live();
          assertTrue(!moves || section.stage() == Section.Stage.AGAIN, row::name);
        }
      }
    }
  }

  /** A load's own breaker is switched on once, and nothing is measured at the load before. */
  @ParameterizedTest
  @MethodSource("sheets")
  void the_load_is_switched_on_behind_the_last_hold_and_measured_after_that(Checklist list) {
    int lastHold = -1;
    for (int i = 0; i < list.steps().size(); i++) {
      lastHold = list.steps().get(i) instanceof Hold ? i : lastHold;
    }
    for (int i = 0; i < list.steps().size(); i++) {
      if (list.steps().get(i) instanceof Section section) {
        for (TestRow row : section.rows()) {
          if (row.name().equals("loads.switched-on")) {
            assertTrue(i > lastHold, row::name);
            assertEquals(
                row,
                section.rows().stream()
                    .filter(r -> !r.name().endsWith("switched-on-again"))
                    .findFirst()
                    .orElseThrow(),
                "first of its section, behind the supply where that was locked off again");
          }
          boolean atLoad = row.name().matches("E[0-9]+\\.(off|voltage|current|stopped).*");
          assertTrue(!atLoad || i > lastHold, row::name);
        }
      }
    }
  }
}
