package org.coilwright.sizing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import java.util.OptionalDouble;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Site.Practice;
import org.coilwright.sizing.ConductorHeating.Answer;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Currents of a limited source against PVC copper wires, k 115, worked out by hand. */
class ConductorHeatingTest {
  private static final double NONE = -1;
  private final Tables tables = Tables.load();
  private final ConductorHeating heating = new ConductorHeating(Practice.IEC, tables);
  private final Cited<Double> k =
      tables
          .lookup(
              "adiabatic-k",
              Map.of("material", "copper", "use", "live", "insulation", "pvc-70"),
              "k")
          .orElseThrow();

  private Answer judge(Part device, double amps, double mm2, double carries, double lasts) {
    return judge(device, amps, amps, mm2, carries, lasts);
  }

  private Answer judge(
      Part device, double least, double most, double mm2, double carries, double lasts) {
    return heating.judge(
        new ConductorHeating.Conductor(
            device,
            least,
            most,
            carries == NONE ? OptionalDouble.empty() : OptionalDouble.of(carries),
            k,
            mm2,
            lasts == NONE ? OptionalDouble.empty() : OptionalDouble.of(lasts)));
  }

  @ParameterizedTest
  @CsvSource({
    "B, 6, 24, 1.5, 25920",
    "B, 6, 30, 1.5, 90",
    "B, 10, 30, 2.5, 40500",
    "B, 16, 50, 4, 112500",
    "B, 16, 80, 1.5, 640"
  })
  void stands_what_the_device_lets_through(
      String curve, int rating, double amps, double mm2, double through) {
    Answer.Stands stands =
        assertInstanceOf(
            Answer.Stands.class,
            judge(OpeningTimesTest.breaker(curve, rating), amps, mm2, NONE, NONE));
    assertEquals(through, stands.value(), 1e-6);
    assertEquals(115 * 115 * mm2 * mm2, stands.limit(), 1e-6);
  }

  @ParameterizedTest
  @CsvSource({
    "B, 10, 30, 1.5, 40500",
    "B, 16, 50, 2.5, 112500",
    "B, 16, 75, 2.5, 253125",
    "C, 16, 100, 2.5, 150000"
  })
  void beyond_that_nothing_is_proven(
      String curve, int rating, double amps, double mm2, double through) {
    Answer.Open open =
        assertInstanceOf(
            Answer.Open.class,
            judge(OpeningTimesTest.breaker(curve, rating), amps, mm2, NONE, NONE));
    assertEquals(through, open.through().orElseThrow(), 1e-6);
  }

  @Test
  void a_source_that_ends_it_by_itself_is_counted() {
    for (double mm2 : new double[] {1.5, 2.5}) {
      Answer.Stands stands =
          assertInstanceOf(
              Answer.Stands.class, judge(OpeningTimesTest.breaker("B", 16), 75, mm2, NONE, 5));
      assertEquals(28125, stands.value(), 1e-6);
    }
  }

  @Test
  void a_source_that_gives_no_more_than_the_wire_carries_protects_it() {
    for (Part any :
        new Part[] {OpeningTimesTest.breaker("B", 16), OpeningTimesTest.device("is: fuse")}) {
      Answer.Stands stands = assertInstanceOf(Answer.Stands.class, judge(any, 30, 2.5, 32, NONE));
      assertTrue(stands.words().contains("436"), stands.words());
    }
    assertInstanceOf(
        Answer.Open.class, judge(OpeningTimesTest.device("is: fuse"), 30, 2.5, 29.9, NONE));
  }

  @Test
  void a_current_that_may_never_open_the_device_is_settled_by_the_wire_alone() {
    Part b16 = OpeningTimesTest.breaker("B", 16);
    assertInstanceOf(Answer.Open.class, judge(b16, 22, 1.5, 17.5, NONE));
    assertInstanceOf(Answer.Stands.class, judge(b16, 22, 2.5, 24, NONE));
    Answer.Stands late = assertInstanceOf(Answer.Stands.class, judge(b16, 24, 2.5, 17.5, NONE));
    assertTrue(late.words().contains("433.1"), late.words());
  }

  @Test
  void a_gg_fuse_takes_five_seconds() {
    Answer.Stands stands =
        assertInstanceOf(
            Answer.Stands.class,
            judge(OpeningTimesTest.fuse(16, ", family: gG"), 75, 1.5, NONE, NONE));
    assertEquals(28125, stands.value(), 1e-6);
  }

  @Test
  void a_range_of_currents_is_as_bad_as_its_worst() {
    Part b16 = OpeningTimesTest.breaker("B", 16);
    assertInstanceOf(Answer.Stands.class, judge(b16, 80, 900, 2.5, NONE, NONE));
    assertInstanceOf(Answer.Stands.class, judge(b16, 80, 3000, 2.5, NONE, NONE), "by its class");
    Answer.Open open = assertInstanceOf(Answer.Open.class, judge(b16, 79, 900, 2.5, NONE, NONE));
    assertEquals(80 * 80 * 45, open.through().orElseThrow(), 1e-6);
    assertInstanceOf(Answer.Burns.class, judge(b16, 80, 6000, 0.75, NONE, NONE));
  }
}
