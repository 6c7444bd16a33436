package org.coilwright.behaviour;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.coilwright.behaviour.Battery.Settling;
import org.junit.jupiter.api.Test;

/** The closed forms and the rehearsal say the same, over random settings. */
class ForecastTest {
  private static final int CASES = 400;
  private static final int STEP_MILLIS = 100;

  /** Where the two may differ: a threshold is crossed between two rows. */
  private static final double TWO_ROWS = 0.2;

  private static Settings settings(
      double export, double confirm, double importAbove, double stopAfter, double shortest) {
    return new Settings(
        OptionalDouble.of(export),
        confirm,
        OptionalDouble.of(importAbove),
        stopAfter,
        OptionalDouble.empty(),
        shortest,
        OptionalDouble.empty(),
        List.of());
  }

  @Test
  void a_false_start_is_foretold_where_the_rehearsal_shows_one() {
    Random random = new Random(41);
    int falseStarts = 0;
    int compared = 0;
    for (int i = 0; i < CASES; i++) {
      double base = 200 + random.nextInt(800);
      double step = 1000 + random.nextInt(9000);
      double settles = 2 + random.nextInt(12);
      double export = 300 + random.nextInt(6000);
      double confirm = random.nextInt(140) / 10.0;
      double discharge = 1000 + random.nextInt(9000);
      double charge = 500 + random.nextInt(6000);
      boolean starts = false;
      for (Settling settling : Settling.values()) {
        Battery battery = new Battery(1e6, discharge, charge, settles, settling, 0.1, 0.5);
        // the sun that lets the battery go all the way from giving to taking
        double sun = Math.max(0, Math.min(step + base - discharge, base + charge));
        Columns columns = Columns.of(STEP_MILLIS, 200, t -> sun, t -> t < 100 ? base + step : base);
        Plant plant = new Plant(3000, Optional.of(battery), Optional.empty());
        Tally tally = Rehearsal.run(columns, plant, settings(export, confirm, 1e9, 0, 1), null);
        starts |= !tally.falseStarts().isEmpty();
      }
      Battery battery = new Battery(1e6, discharge, charge, settles, Settling.RAMP, 0.1, 0.5);
      double tooMuch = Forecast.overshootWatts(step, battery);
      double lasts = Forecast.secondsAbove(tooMuch, export, settles);
      if (Math.abs(lasts - confirm) > TWO_ROWS && !(lasts > 0 && lasts < TWO_ROWS)) {
        assertEquals(lasts > confirm, starts, "case %d: %s s, %s s".formatted(i, lasts, confirm));
        falseStarts += starts ? 1 : 0;
        compared++;
      }
    }
    assertTrue(falseStarts > CASES / 10 && compared - falseStarts > CASES / 10);
  }

  @Test
  void a_contact_that_opens_by_itself_is_foretold_where_the_rehearsal_shows_one() {
    Random random = new Random(42);
    int opened = 0;
    int compared = 0;
    for (int i = 0; i < CASES; i++) {
      double load = 1000 + random.nextInt(8000);
      double export = 500 + random.nextInt(7000);
      double importAbove = 100 + random.nextInt(1000);
      double stopAfter = random.nextInt(10);
      double shortest = random.nextInt(3) == 0 ? 0 : random.nextInt(12);
      double settles = random.nextInt(12);
      double discharge = random.nextInt(5000);
      boolean without = random.nextInt(3) == 0;
      Settings settings =
          new Settings(
              OptionalDouble.of(export),
              1,
              OptionalDouble.of(importAbove),
              stopAfter,
              OptionalDouble.of(0.2),
              shortest,
              OptionalDouble.empty(),
              List.of());
      boolean opens = false;
      for (Settling settling : Settling.values()) {
        Battery battery = new Battery(1e7, discharge, 0, settles, settling, 0.1, 1);
        Plant plant =
            new Plant(load, without ? Optional.empty() : Optional.of(battery), Optional.empty());
        Columns columns = Columns.of(STEP_MILLIS, 60, t -> export + 500.5, t -> 500);
        Tally tally = Rehearsal.run(columns, plant, settings, null);
        opens |= tally.runs().stream().anyMatch(r -> r.endStep() < columns.rows());
      }
      Plant plant =
          new Plant(
              load,
              without
                  ? Optional.empty()
                  : Optional.of(new Battery(1e7, discharge, 0, settles, Settling.RAMP, 0.1, 1)),
              Optional.empty());
      double waits = Math.max(stopAfter, shortest);
      boolean close =
          Math.abs(Forecast.passingImportSeconds(settings, plant) - waits) <= TWO_ROWS
              || Math.abs(Forecast.lastingImport(settings, plant) - importAbove) <= 1;
      if (!close) {
        assertEquals(
            Forecast.opensByItself(settings, plant), opens, "case " + i + settings + plant);
        opened += opens ? 1 : 0;
        compared++;
      }
    }
    assertTrue(opened > CASES / 10 && compared - opened > CASES / 10, opened + "/" + compared);
  }

  @Test
  void what_one_start_takes_from_the_battery_is_foretold() {
    Random random = new Random(43);
    for (int i = 0; i < CASES; i++) {
      double load = 1000 + random.nextInt(8000);
      double discharge = 500 + random.nextInt(9000);
      double shortest = 60 + random.nextInt(1200);
      Battery battery = new Battery(1e5, discharge, 0, 0, Settling.RAMP, 0.1, 1);
      Plant plant = new Plant(load, Optional.of(battery), Optional.empty());
      // the sun is gone in the row in which the contact closes
      Columns columns = Columns.of(1000, 1500, t -> t < 2 ? 20_000 : 0, t -> 0);
      Settings settings =
          new Settings(
              OptionalDouble.of(9000),
              2,
              OptionalDouble.empty(),
              0,
              OptionalDouble.of(0.999999),
              shortest,
              OptionalDouble.empty(),
              List.of());
      Tally tally = Rehearsal.run(columns, plant, settings, null);
      double taken = tally.runs().get(0).batteryWh();
      assertEquals(Forecast.drainWh(battery, load, shortest), taken, 1e-6 * taken);
    }
  }

  @Test
  void the_time_to_heat_is_foretold() {
    Random random = new Random(44);
    for (int i = 0; i < 40; i++) {
      double load = 1000 + random.nextInt(8000);
      Water water = new Water(50 + random.nextInt(400), 10, 60, 5, 0, 20, List.of(), 4186);
      double seconds = Forecast.heatingSeconds(water, load);
      Plant plant = new Plant(load, Optional.empty(), Optional.of(water));
      Columns columns = Columns.of(1000, seconds + 100, t -> 20_000, t -> 0);
      Tally tally = Rehearsal.run(columns, plant, settings(9000, 0, 1e9, 0, 0), null);
      double took = tally.targetStep().orElseThrow() - tally.runs().get(0).startStep() + 1;
      assertEquals(seconds, took, 1.0);
      assertEquals(Forecast.heatingWh(water), load * seconds / 3600, 1e-6);
    }
  }

  @Test
  void battery_or_grid_gives_exactly_where_the_start_threshold_is_below_the_load() {
    Random random = new Random(45);
    int below = 0;
    int compared = 0;
    for (int i = 0; i < CASES; i++) {
      double load = 1000 + random.nextInt(8000);
      double export = Math.rint(load * (0.5 + random.nextDouble()));
      double base = 100 + random.nextInt(900);
      boolean without = random.nextInt(3) == 0;
      // full, so that what the house leaves is exported
      Battery battery = new Battery(1e5, 9000, 5000, 0, Settling.RAMP, 0.1, 1);
      Plant plant =
          new Plant(load, without ? Optional.empty() : Optional.of(battery), Optional.empty());
      // a sun that rises by 1 W a second
      Columns columns = Columns.of(1000, 16_000, t -> base + t, t -> base);
      Tally tally = Rehearsal.run(columns, plant, settings(export, 0, 1e9, 0, 0), null);
      Run run = tally.runs().get(0);
      // one row passes between the reading and the contact
      if (Math.abs(load - export) > 3) {
        assertEquals(export < load, run.foreignWh() > 1e-3, "case " + i);
        // the shortfall shrinks by 1 W a second until the sun carries the load
        double short0 = Math.max(0, load - export);
        double mean = short0 * short0 / 2 / 3600;
        assertEquals(mean, run.foreignWh(), 3 * short0 / 3600 + 1e-3, "case " + i);
        below += export < load ? 1 : 0;
        compared++;
      }
    }
    assertTrue(below > CASES / 10 && compared - below > CASES / 10);
  }

  @Test
  void what_a_window_takes_without_sun_is_foretold() {
    Random random = new Random(46);
    int limited = 0;
    int shared = 0;
    for (int i = 0; i < 60; i++) {
      double load = 1000 + random.nextInt(8000);
      int from = random.nextInt(3600);
      int lasts = 600 + random.nextInt(3 * 3600);
      double longest = 600 + random.nextInt(3 * 3600);
      Battery battery =
          new Battery(
              2000 + random.nextInt(10_000),
              500 + random.nextInt(9000),
              0,
              0,
              Settling.RAMP,
              0.1,
              1);
      Plant plant = new Plant(load, Optional.of(battery), Optional.empty());
      Settings settings =
          new Settings(
              OptionalDouble.of(9000),
              0,
              OptionalDouble.empty(),
              0,
              OptionalDouble.empty(),
              0,
              OptionalDouble.of(longest),
              List.of(new Settings.Window(from, from + lasts)));
      // the day ends with the window: what goes on after it is no matter of the window
      Columns columns = Columns.of(1000, from + lasts, t -> 0, t -> 0);
      Run run = Rehearsal.run(columns, plant, settings, null).runs().get(0);
      double seconds = Math.min(lasts, longest);
      double all = Forecast.wattHours(load, seconds);
      double fromBattery =
          Math.min(Forecast.drainWh(battery, load, seconds), Forecast.reserveWh(battery, 1));
      assertTrue(run.byWindow());
      assertEquals(all, run.wattHours(), 1e-6 * all, "case " + i);
      assertEquals(fromBattery, run.batteryWh(), 1e-6 * all, "case " + i);
      limited += longest < lasts ? 1 : 0;
      shared += run.gridWh() > 1 && run.batteryWh() > 1 ? 1 : 0;
    }
    assertTrue(limited > 6 && limited < 54 && shared > 6, limited + ", " + shared);
  }
}
