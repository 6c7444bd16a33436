package org.coilwright.behaviour;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.coilwright.behaviour.Battery.Settling;
import org.coilwright.behaviour.Settings.Window;
import org.junit.jupiter.api.Test;

class RehearsalTest {
  private static final double HEAT_CAPACITY = 4186;

  private static Settings start(double exportAbove, double after) {
    return new Settings(
        OptionalDouble.of(exportAbove),
        after,
        OptionalDouble.of(300),
        20,
        OptionalDouble.empty(),
        600,
        OptionalDouble.empty(),
        List.of());
  }

  /** The evening of the field story: 11 kW from the battery, then the house is back at 500 W. */
  private static Tally evening(Settling settling, double confirm) {
    Columns evening = Columns.of(1000, 1800, t -> 0, t -> t < 600 ? 11_000 : 500);
    Battery battery = new Battery(20_000, 12_000, 12_000, 5, settling, 0.1, 0.7);
    Plant plant = new Plant(3000, Optional.of(battery), Optional.empty());
    return Rehearsal.run(evening, plant, start(1000, confirm), null);
  }

  // Common practice, no source: 11 kW down to 500 W takes about 5 s.
  @Test
  void a_battery_that_settles_in_5_s_starts_the_contact_falsely_without_a_confirm_time() {
    for (Settling settling : Settling.values()) {
      Tally tally = evening(settling, 0);
      assertEquals(1, tally.falseStarts().size(), settling.name());
      assertTrue(tally.falseStarts().get(0).batteryWh() > 0, "its energy comes out of the battery");
      assertEquals(0, tally.falseStarts().get(0).pvWh());
    }
  }

  @Test
  void a_confirm_time_of_30_s_lets_no_false_start_through() {
    for (Settling settling : Settling.values()) {
      assertEquals(0, evening(settling, 30).runs().size(), settling.name());
    }
  }

  @Test
  void the_water_is_hot_after_m_c_delta_t_over_p() {
    Water water = new Water(300, 12, 60, 5, 0, 20, List.of(), HEAT_CAPACITY);
    Plant plant = new Plant(3000, Optional.empty(), Optional.of(water));
    Columns bright = Columns.of(1000, 86_400, t -> 8000, t -> 500);
    Tally tally = Rehearsal.run(bright, plant, start(3500, 60), null);
    double seconds = 300 * HEAT_CAPACITY * 48 / 3000;
    assertEquals(
        seconds,
        (double) (tally.targetStep().orElseThrow() - tally.runs().get(0).startStep()),
        1.0);
  }

  @Test
  void what_is_exported_after_a_step_is_the_area_of_the_ramp() {
    // step of 10.5 kW worked off in a straight line in 5 s: half of 10.5 kW for 5 s
    double halfRow = 10_500 * 0.010 / 2 / 3600;
    assertEquals(10_500 * 5 / 2.0 / 3600, exported(Settling.RAMP, 5, 10), 1.01 * halfRow);
  }

  @Test
  void what_is_exported_after_a_step_is_the_area_of_the_exponential() {
    // time constant a third of 6 s
    assertEquals(10_500 * 2 / 3600.0, exported(Settling.FIRST_ORDER, 6, 10), 0.02);
  }

  private static double exported(Settling settling, double settles, int stepMillis) {
    Columns evening = Columns.of(stepMillis, 120, t -> 0, t -> t < 60 ? 11_000 : 500);
    Battery battery = new Battery(20_000, 12_000, 12_000, settles, settling, 0, 0.7);
    Plant plant = new Plant(1, Optional.of(battery), Optional.empty());
    Settings never = start(1e9, 0);
    Tally tally = Rehearsal.run(evening, plant, never, null);
    return tally.exportWh();
  }

  @Test
  void the_books_close_in_every_row() {
    Random random = new Random(7);
    Columns day = randomDay(random, 10_000);
    Battery battery = new Battery(6000, 4000, 3000, 30, Settling.RAMP, 0.1, 0.5);
    Water water = new Water(200, 20, 55, 5, 2, 18, List.of(), HEAT_CAPACITY);
    Plant plant = new Plant(2500, Optional.of(battery), Optional.of(water));
    double[] level = {0.5};
    double[] celsius = {20};
    Rehearsal.run(
        day,
        plant,
        start(1500, 60),
        (step, closed, load, given, grid, levelNow, celsiusNow) -> {
          int k = (int) step;
          double in = day.pv(k) + Math.max(0, given) + Math.max(0, grid);
          double out = day.other(k) + load + Math.max(0, -given) + Math.max(0, -grid);
          assertEquals(in, out, 1e-9 * Math.max(1, in));
          double hours = day.stepMillis() / 3.6e6;
          assertEquals((level[0] - levelNow) * 6000, given * hours, 1e-9 * 6000);
          double joules = (load - 2 * (celsius[0] - 18)) * hours * 3600;
          assertEquals(joules, (celsiusNow - celsius[0]) * 200 * HEAT_CAPACITY, 1e-3);
          level[0] = levelNow;
          celsius[0] = celsiusNow;
        });
  }

  @Test
  void the_sums_of_a_tally_close() {
    Columns day = randomDay(new Random(8), 10_000);
    Battery battery = new Battery(6000, 4000, 3000, 30, Settling.FIRST_ORDER, 0.1, 0.5);
    Plant plant = new Plant(2500, Optional.of(battery), Optional.empty());
    Tally t = Rehearsal.run(day, plant, start(1500, 60), null);
    double in = t.pvWh() + t.importWh() + t.dischargeWh();
    double out = t.otherWh() + t.loadWh() + t.exportWh() + t.chargeWh();
    assertEquals(in, out, 1e-9 * in);
    assertEquals((0.5 - t.endFraction()) * 6000, t.dischargeWh() - t.chargeWh(), 1e-6);
    double byRuns = t.runs().stream().mapToDouble(Run::wattHours).sum();
    assertEquals(t.loadWh(), byRuns, 1e-9 * byRuns);
    assertTrue(t.runs().size() > 1);
  }

  @Test
  void ten_thousand_random_days_agree_with_a_second_opinion() {
    Random random = new Random(20_261);
    int starts = 0;
    int falseStarts = 0;
    for (int n = 0; n < 10_000; n++) {
      int[] steps = {120_000, 300_000, 600_000, 30_000};
      Columns day = randomDay(random, steps[n % 40 == 0 ? 3 : random.nextInt(3)]);
      Plant plant = randomPlant(random);
      Settings settings = randomSettings(random);
      List<Boolean> closed = new ArrayList<>();
      List<Double> grid = new ArrayList<>();
      List<Double> level = new ArrayList<>();
      Tally tally =
          Rehearsal.run(
              day,
              plant,
              settings,
              (k, on, load, given, g, lvl, temp) -> {
                closed.add(on);
                grid.add(g);
                level.add(lvl);
              });
      PlainSecondOpinion second = new PlainSecondOpinion(day, plant, settings);
      String which = "day " + n + " " + settings + plant;
      assertEquals(second.closed, closed, which);
      assertEquals(second.starts, tally.runs().stream().map(Run::startStep).toList(), which);
      assertEquals(
          second.falseStarts, tally.falseStarts().stream().map(Run::startStep).toList(), which);
      for (int k = 0; k < closed.size(); k++) {
        assertEquals(second.grid.get(k), grid.get(k), 1e-5, which);
        assertEquals(second.level.get(k), level.get(k), 1e-9, which);
      }
      starts += tally.runs().size();
      falseStarts += tally.falseStarts().size();
    }
    assertTrue(starts > 10_000, "the days must exercise the contact: " + starts);
    assertTrue(falseStarts > 100, "and false starts too: " + falseStarts);
  }

  @Test
  void a_window_may_pass_midnight() {
    assertTrue(new Window(82_800, 3600).holds(0));
    assertTrue(new Window(82_800, 3600).holds(82_800));
    assertFalse(new Window(82_800, 3600).holds(3600));
    assertFalse(new Window(46_800, 50_400).holds(50_400));
  }

  private static Columns randomDay(Random random, int stepMillis) {
    int rows = 86_400_000 / stepMillis * (1 + random.nextInt(2));
    float[] pv = new float[rows];
    float[] other = new float[rows];
    double peak = random.nextInt(12_000);
    double house = 300;
    for (int k = 0; k < rows; k++) {
      double hour = k * (stepMillis / 3.6e6) % 24;
      double sun = Math.max(0, Math.sin((hour - 6) / 12 * Math.PI));
      pv[k] = Math.round(peak * sun * (random.nextInt(4) == 0 ? 0.4 : 1));
      if (random.nextInt(30) == 0) {
        house = random.nextInt(3) == 0 ? 8000 : 200 + random.nextInt(800);
      }
      // never a round figure: rounding must not decide whether a threshold is crossed
      other[k] = (float) (house + random.nextDouble());
    }
    return Columns.of(stepMillis, pv, other);
  }

  private static Plant randomPlant(Random random) {
    Battery battery =
        new Battery(
            1000 + random.nextInt(9000),
            random.nextInt(9000),
            random.nextInt(9000),
            random.nextInt(900),
            Settling.RAMP,
            random.nextInt(30) / 100.0,
            random.nextInt(101) / 100.0);
    return new Plant(500 + random.nextInt(6000), Optional.of(battery), Optional.empty());
  }

  private static Settings randomSettings(Random random) {
    List<Window> windows = new ArrayList<>();
    for (int i = random.nextInt(3); i > 0; i--) {
      windows.add(new Window(random.nextInt(86_400), random.nextInt(86_401)));
    }
    return new Settings(
        OptionalDouble.of(200 + random.nextInt(3000)),
        random.nextInt(3) * 120,
        OptionalDouble.of(100 + random.nextInt(800)),
        random.nextInt(3) * 90,
        random.nextBoolean()
            ? OptionalDouble.of(random.nextInt(60) / 100.0 + 0.005)
            : OptionalDouble.empty(),
        random.nextInt(4) * 450,
        random.nextBoolean()
            ? OptionalDouble.of(3600 * (1 + random.nextInt(6)))
            : OptionalDouble.empty(),
        windows);
  }
}
