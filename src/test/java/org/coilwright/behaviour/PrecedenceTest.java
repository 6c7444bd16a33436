// Over 250 lines: every line of the table of precedence.
package org.coilwright.behaviour;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.coilwright.behaviour.Battery.Settling;
import org.coilwright.behaviour.Settings.Window;
import org.junit.jupiter.api.Test;

/** Each line of the table of precedence, and how thresholds and timers are read. */
class PrecedenceTest {
  private static final double LOAD = 2000;

  private static double sun(double second) {
    return 5000;
  }

  private static double dark(double second) {
    return 0;
  }

  private static double house(double second) {
    return 500;
  }

  /** A setting at a time; whatever is not set is left out. */
  private static final class Set {
    private double startAfter;
    private OptionalDouble importAbove = OptionalDouble.empty();
    private double stopAfter;
    private OptionalDouble batteryBelow = OptionalDouble.empty();
    private double shortest;
    private OptionalDouble longest = OptionalDouble.empty();
    private final List<Window> windows = new ArrayList<>();
    private Optional<Battery> battery = Optional.empty();
    private Optional<Water> water = Optional.empty();
    private double exportAbove = 1000;

    Set importAbove(double watts, double after) {
      importAbove = OptionalDouble.of(watts);
      stopAfter = after;
      return this;
    }

    Set window(int from, int to) {
      windows.add(new Window(from, to));
      return this;
    }

    Set longest(double seconds) {
      longest = OptionalDouble.of(seconds);
      return this;
    }

    Set shortest(double seconds) {
      shortest = seconds;
      return this;
    }

    Set startAfter(double seconds) {
      startAfter = seconds;
      return this;
    }

    Set exportAbove(double watts) {
      exportAbove = watts;
      return this;
    }

    /** A battery that gives and takes nothing, so that only its level counts. */
    Set level(double level, double below) {
      battery = Optional.of(new Battery(1000, 0, 0, 0, Settling.RAMP, 0, level));
      batteryBelow = OptionalDouble.of(below);
      return this;
    }

    Set water(Water vessel) {
      water = Optional.of(vessel);
      return this;
    }

    /** In which seconds the contact was closed. */
    List<Boolean> run(double seconds, DoubleUnaryOperator pv, DoubleUnaryOperator house) {
      List<Boolean> closed = new ArrayList<>();
      run(seconds, pv, house, (step, on, load, given, grid, level, temp) -> closed.add(on));
      return closed;
    }

    void run(double seconds, DoubleUnaryOperator pv, DoubleUnaryOperator house, Trace trace) {
      Settings settings =
          new Settings(
              OptionalDouble.of(exportAbove),
              startAfter,
              importAbove,
              stopAfter,
              batteryBelow,
              shortest,
              longest,
              windows);
      Rehearsal.run(
          Columns.of(1000, seconds, pv, house), new Plant(LOAD, battery, water), settings, trace);
    }
  }

  private static void assertClosed(List<Boolean> closed, int from, int to) {
    for (int i = 0; i < closed.size(); i++) {
      assertEquals(i >= from && i < to, closed.get(i), "second " + i);
    }
  }

  @Test
  void line_1_longest_per_day_opens_even_in_a_window() {
    assertClosed(
        new Set()
            .longest(100)
            .window(0, 86_400)
            .run(300, PrecedenceTest::dark, PrecedenceTest::house),
        0,
        100);
  }

  @Test
  void line_1_longest_per_day_opens_even_within_the_shortest_run() {
    assertClosed(
        new Set().longest(100).shortest(250).run(300, PrecedenceTest::sun, PrecedenceTest::house),
        1,
        101);
  }

  @Test
  void line_2_a_window_closes_although_there_is_import_and_an_empty_battery() {
    Set set = new Set().window(10, 50).importAbove(100, 0).level(0.1, 0.4);
    assertClosed(set.run(100, PrecedenceTest::dark, PrecedenceTest::house), 10, 50);
  }

  @Test
  void line_3_the_shortest_run_outlasts_import_and_an_empty_battery() {
    DoubleUnaryOperator gone = t -> t < 10 ? 5000 : 0;
    assertClosed(
        new Set().shortest(60).importAbove(100, 0).run(200, gone, PrecedenceTest::house), 1, 61);
    Battery drained = new Battery(100, 9000, 9000, 0, Settling.RAMP, 0, 0.5);
    Set set = new Set().shortest(60).level(1, 0.49);
    set.battery = Optional.of(drained);
    List<Boolean> closed = set.run(200, t -> t < 10 ? 20_000 : 0, PrecedenceTest::house);
    int start = closed.indexOf(true);
    assertTrue(start > 0);
    assertTrue(closed.subList(start, start + 60).stream().allMatch(on -> on));
    assertFalse(closed.get(start + 60), "the battery is empty by then");
  }

  @Test
  void line_4_a_low_battery_keeps_open_although_there_is_export() {
    assertClosed(
        new Set().level(0.3, 0.4).run(100, PrecedenceTest::sun, PrecedenceTest::house), 0, 0);
    assertClosed(
        new Set().level(0.4, 0.4).run(100, PrecedenceTest::sun, PrecedenceTest::house), 1, 100);
  }

  @Test
  void line_4_import_that_lasts_its_time_opens() {
    DoubleUnaryOperator gone = t -> t < 10 ? 5000 : 0;
    // the first reading of import is that of second 10; the twentieth that of second 29
    assertClosed(new Set().importAbove(100, 20).run(100, gone, PrecedenceTest::house), 1, 30);
  }

  @Test
  void line_5_export_that_lasts_its_time_closes() {
    assertClosed(
        new Set().startAfter(30).run(100, PrecedenceTest::sun, PrecedenceTest::house), 30, 100);
  }

  @Test
  void line_6_otherwise_it_stays_as_it_is() {
    // export falls below the start threshold and import never reaches the stop threshold
    DoubleUnaryOperator less = t -> t < 10 ? 5000 : 2400;
    assertClosed(new Set().importAbove(300, 0).run(100, less, PrecedenceTest::house), 1, 100);
    assertClosed(new Set().importAbove(300, 0).run(100, t -> 600, PrecedenceTest::house), 0, 0);
    // a window is over: nothing opens it
    assertClosed(
        new Set().window(0, 20).run(100, PrecedenceTest::dark, PrecedenceTest::house), 0, 100);
  }

  @Test
  void a_threshold_is_crossed_strictly() {
    assertClosed(
        new Set().exportAbove(4500).run(50, PrecedenceTest::sun, PrecedenceTest::house), 0, 0);
    assertClosed(
        new Set().exportAbove(4499).run(50, PrecedenceTest::sun, PrecedenceTest::house), 1, 50);
    DoubleUnaryOperator gone = t -> t < 10 ? 5000 : 0;
    assertClosed(new Set().importAbove(2500, 0).run(50, gone, PrecedenceTest::house), 1, 50);
    assertClosed(new Set().importAbove(2499, 0).run(50, gone, PrecedenceTest::house), 1, 11);
  }

  @Test
  void a_time_of_nothing_acts_at_the_first_reading() {
    assertClosed(
        new Set().startAfter(0).run(50, t -> t < 7 ? 0 : 5000, PrecedenceTest::house), 8, 50);
  }

  @Test
  void one_reading_that_does_not_meet_the_condition_begins_its_time_anew() {
    assertClosed(
        new Set().startAfter(30).run(100, t -> t == 20 ? 0 : 5000, PrecedenceTest::house), 51, 100);
  }

  @Test
  void the_day_turns_over_at_midnight() {
    List<Boolean> closed =
        new Set().longest(100).run(86_400 + 300, PrecedenceTest::sun, PrecedenceTest::house);
    assertEquals(99, closed.subList(0, 100).stream().filter(on -> on).count());
    assertFalse(closed.get(86_399));
    assertEquals(100, closed.subList(86_400, closed.size()).stream().filter(on -> on).count());
  }

  @Test
  void a_window_past_midnight_goes_on_the_next_day_and_its_end_is_not_in_it() {
    List<Boolean> closed =
        new Set()
            .window(86_300, 100)
            .importAbove(100, 0)
            .run(86_400 + 300, PrecedenceTest::dark, PrecedenceTest::house);
    assertTrue(closed.get(99));
    assertFalse(closed.get(100));
    assertFalse(closed.get(86_299));
    assertTrue(closed.get(86_300));
    assertTrue(closed.get(86_499));
    assertFalse(closed.get(86_500));
  }

  @Test
  void the_thermostat_is_in_the_load_and_the_contact_stays_closed() {
    Water nearlyHot = new Water(10, 59.9, 60, 5, 0, 20, List.of(), 4186);
    List<Double> loads = new ArrayList<>();
    List<Boolean> closed = new ArrayList<>();
    new Set()
        .water(nearlyHot)
        .run(
            100,
            PrecedenceTest::sun,
            PrecedenceTest::house,
            (step, on, load, given, grid, level, temp) -> {
              closed.add(on);
              loads.add(load);
            });
    assertClosed(closed, 1, 100);
    assertEquals(LOAD, loads.get(1));
    assertEquals(0, loads.get(99));
  }
}
