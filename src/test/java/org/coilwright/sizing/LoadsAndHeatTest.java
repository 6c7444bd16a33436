package org.coilwright.sizing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import org.coilwright.circuit.Bench;
import org.coilwright.circuit.Circuit;
import org.coilwright.netlist.NetlistReader;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Reading;
import org.coilwright.netlist.Site;
import org.coilwright.solve.Study;
import org.coilwright.table.Tables;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Currents of loads and the heat of a box, each worked out by hand beside it. */
class LoadsAndHeatTest {
  private static final Tables TABLES = Tables.load();

  private static final String THREE = "{phases: 3, voltage: 400 V ± 10 %, frequency: 50 Hz}";

  /** A contactor before a heater on three lines; its coil is fed or not. */
  private static String body(String connection, String coilTo, String more) {
    return """
    parts:
      G0: {is: mains}
      F1: {is: breaker, curve: B, rating: 16 A, poles: 3}
      Q1:
        is: contactor
        coil: {pins: [A1, A2], voltage: 230 V AC, hold: 5 VA, hold-power: 2 W}
        poles: [[1, 2], [3, 4], [5, 6]]
        ratings: {AC-1: 20 A at 400 V}
        %s
      E1: {is: heater, power: 9 kW, voltage: 400 V, connection: %s}
    wires:
      - G0.L1 to F1.1
      - G0.L2 to F1.3
      - G0.L3 to F1.5
      - F1.2 to Q1.1
      - F1.4 to Q1.3
      - F1.6 to Q1.5
      - Q1.2 to E1.1
      - Q1.4 to E1.2
      - Q1.6 to E1.3
      - G0.PE to E1.PE
      - F1.2 to Q1.A1
      - Q1.A2 to %s
    """
        .formatted(more, connection, coilTo);
  }

  private static LoadCurrent current(String body) {
    Study study = Study.of(Bench.circuit(THREE, body), TABLES);
    PowerSide side = PowerSide.of(study, TABLES);
    Part heater = Objects.requireNonNull(study.circuit().netlist().parts().get("E1"));
    return side.current(heater).orElseThrow();
  }

  /** 9 kW ÷ (√3 × 400 V), joined either way, on or never turned on. */
  @ParameterizedTest
  @CsvSource({"star, G0.N", "delta, G0.N", "star, F1.2", "delta, F1.2"})
  void each_pin_carries_the_power_over_root_three_times_the_voltage(
      String connection, String coil) {
    LoadCurrent is = current(body(connection, coil, "loss: 6 W"));
    double line = 9000 / (Math.sqrt(3) * 400);
    assertEquals(line, is.nominal(), 0.002 * line);
    for (String pin : new String[] {"1", "2", "3"}) {
      assertEquals(line, Objects.requireNonNull(is.amps().get(pin)), 0.002 * line, pin);
    }
    assertEquals(1.1 * 1.05, is.worstFactor(), 1e-9);
    assertEquals(is.nominal() * 1.1 * 1.05, is.worst(), 1e-9);
  }

  private static LoadCurrent made(double volts, double high, double factor) {
    LoadCurrent any = current(body("star", "G0.N", "loss: 6 W"));
    return new LoadCurrent(
        any.load(),
        Map.of("1", 10.0, "2", 8.0),
        2000,
        volts,
        high,
        factor,
        any.power(),
        any.band(),
        50);
  }

  /** Behind lines that lose up to a fifth; what loses more is no line. */
  @ParameterizedTest
  @CsvSource({"230, 10", "200, 8.695652", "184, 8", "183, 10", "240, 10", "0, 10", "-5, 10"})
  void less_voltage_takes_less_current_as_far_as_a_line_may_lose(double gets, double amps) {
    assertEquals(amps, made(230, 253, 1.05).nominalAt(gets), 1e-6);
  }

  @Test
  void worst_is_the_highest_voltage_and_power() {
    assertEquals(1.1 * 1.05, made(230, 253, 1.05).worstFactor(), 1e-12);
    assertEquals(1.05, made(0, 253, 1.05).worstFactor(), 1e-12);
    assertEquals(10 * 1.1 * 1.05, made(230, 253, 1.05).worst(), 1e-9);
    assertEquals("at 253 V and +5 % power", made(230, 253, 1.05).worstWords());
    assertEquals("at 253 V", made(230, 253, 1).worstWords());
  }

  private static final String BOX =
      "enclosure: {width: 300 mm, height: 400 mm, depth: 150 mm, mounting: wall, vents: none}";

  private static BoxHeat heat(String more) {
    String text =
        """
        coilwright: 1
        circuit: {title: on the bench}
        site: {mains: %s, ambient: 0..25 °C, %s, practice: iec}
        %s
        """
            .formatted(THREE, BOX, body("star", "G0.N", more));
    Reading.Read read =
        (Reading.Read)
            NetlistReader.read("box.yaml", text.getBytes(java.nio.charset.StandardCharsets.UTF_8));
    Study study = Study.of(Circuit.of(read.netlist()), TABLES);
    return BoxHeat.of(PowerSide.of(study, TABLES), 25, TABLES).known().orElseThrow();
  }

  /** Coil 2 W; three poles at 15 A of 20 A; and the breaker's three of 16 A, alike in both. */
  @Test
  void what_poles_lose_is_theirs_in_all_or_of_each_and_goes_with_the_square() {
    double share = Math.pow(current(body("star", "G0.N", "loss: 6 W")).worst() / 20, 2);
    double all = heat("loss: 6 W").watts();
    double each = heat("loss: 6 W per pole").watts();
    double none = heat("loss: 0.0006 W").watts();
    assertEquals(6 * share, all - none, 0.002);
    assertEquals(18 * share, each - none, 0.005);
    assertEquals(2.0, OptionalDouble.of(none).getAsDouble() - breaker(), 0.01);
  }

  private static double breaker() {
    double loss = TABLES.figure("sizing.breaker-pole-loss").value();
    double worst = current(body("star", "G0.N", "loss: 6 W")).worst();
    return 3 * loss * Math.pow(worst / 16, 2);
  }

  @Test
  void the_box_is_as_much_warmer_than_its_room_as_its_rise() {
    BoxHeat heat = heat("loss: 6 W");
    assertEquals(25 + heat.rise(), heat.inside(), 1e-9);
    double k = TABLES.lookup("enclosure-small", Map.of(), heat.area(), "k").orElseThrow().value();
    double c = TABLES.lookup("enclosure-top", Map.of(), 400 / 300.0, "c").orElseThrow().value();
    double exponent = TABLES.figure("sizing.enclosure-exponent").value();
    assertEquals(c * k * Math.pow(heat.watts(), exponent), heat.rise(), 1e-9);
    assertTrue(heat.words().contains("K above 25 °C"), heat.words());
  }

  /** Let into a wall only its front is free, and its top counts half. */
  @Test
  void a_box_let_into_a_wall_gives_off_little_at_its_sides() {
    double w = 0.3;
    double h = 0.4;
    double d = 0.15;
    assertEquals(
        0.7 * w * d + (0.9 + 0.5) * w * h + 2 * 0.5 * d * h,
        BoxHeat.area(Site.BoxMounting.RECESSED, w, h, d, TABLES),
        1e-9);
  }

  @Test
  void a_series_gives_the_next_figure_and_the_figure_itself() {
    assertEquals(16, Series.breakerAtLeast(16, TABLES).orElseThrow().value());
    assertEquals(20, Series.breakerAtLeast(16.001, TABLES).orElseThrow().value());
    assertEquals(16, Series.breakerAtLeast(16 + 1e-9, TABLES).orElseThrow().value());
    assertEquals(16, Series.breakerUpTo(16, TABLES).orElseThrow().value());
    assertEquals(16, Series.breakerUpTo(19.99, TABLES).orElseThrow().value());
    assertEquals(2.5, Series.wireOf(2.5, TABLES).orElseThrow());
    assertEquals(4, Series.wireOf(2.51, TABLES).orElseThrow());
    assertEquals(20, Series.contactorAtLeast(17, TABLES).orElseThrow().value());
    assertEquals(25, Series.atLeast(21, TABLES).orElseThrow().value());
    assertTrue(Series.breakerAtLeast(10_000, TABLES).isEmpty());
    assertTrue(Series.breakerUpTo(0.01, TABLES).isEmpty());
  }
}
