package org.coilwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The figures of {@code choose} as a program gets them, each beside one worked out by hand. */
class ChooseFiguresTest {
  private static final String GUEST_HOUSE = "wiring-examples/guest-house-cylinder.yaml";

  private @TempDir Path folder = Path.of("");

  /** The value of each line that has one. */
  private record Figures(Map<String, Double> values) {
    double get(String key) {
      return Objects.requireNonNull(values.get(key), key);
    }
  }

  private static Figures figures(String... args) throws IOException {
    List<String> all = new ArrayList<>(List.of("choose"));
    all.addAll(List.of(args));
    all.add("--as=json");
    Cli.Ran ran = Cli.run(all.toArray(String[]::new));
    Map<String, Double> values = new TreeMap<>();
    try (JsonParser json = new JsonFactory().createParser(ran.out())) {
      String key = "";
      while (json.nextToken() != null) {
        boolean behind = json.currentToken().isScalarValue();
        if (behind && "key".equals(json.currentName())) {
          key = json.getText();
        } else if (behind && "value".equals(json.currentName())) {
          values.put(key, json.getDoubleValue());
        }
      }
    }
    return new Figures(values);
  }

  private Path changed(String was, String is) throws IOException {
    String text = Files.readString(Path.of(GUEST_HOUSE));
    assertTrue(text.contains(was), was);
    Path file = folder.resolve("changed.yaml");
    Files.writeString(file, text.replace(was, is));
    return file;
  }

  /** 2.5 mm² at 70 °C: 7.41 mΩ/m × (1 + 0.00393 × 50) = 8.87 mΩ/m (IEC 60228, solid). */
  @ParameterizedTest
  @CsvSource({"10m, 10", "30m, 30", "45m, 45"})
  void the_voltage_drop_is_current_times_twice_the_length(String length, double metres)
      throws IOException {
    Figures is = figures("--power=3kW", "--length", length);
    assertEquals(2.5, is.get("wire"));
    double amps = 3000 / 230.0;
    assertEquals(amps * 8.87e-3 * metres * 2, is.get("drop"), 0.01 * is.get("drop"));
  }

  /** Three lines: √3 times, and the current of each. */
  @Test
  void the_voltage_drop_on_three_lines_is_root_three_times() throws IOException {
    Figures is = figures("--power=9kW", "--phases=3", "--length=20m");
    assertEquals(2.5, is.get("wire"));
    double amps = 9000 / 400.0 / Math.sqrt(3);
    assertEquals(amps * 8.87e-3 * 20 * Math.sqrt(3), is.get("drop"), 0.01 * is.get("drop"));
  }

  /** At most 5 % of 230 V: 11.5 V over 2.5 mm² at 13.04 A are 49.7 m; then 4 mm². */
  @ParameterizedTest
  @CsvSource({"49.5m, 2.5", "50m, 4"})
  void a_longer_wire_is_thicker(String length, double size) throws IOException {
    assertEquals(size, figures("--power=3kW", "--length", length).get("wire"));
  }

  /** Line 8.87 mΩ/m and a protective conductor of the same size, one way each. */
  @Test
  void the_loop_of_an_earth_fault_is_that_of_the_mains_and_both_conductors() throws IOException {
    double loop =
        figures("--power=3kW", "--length=30m", "--loop-impedance=0.35ohm").get("earth-fault");
    assertEquals(0.35 + 2 * 30 * 8.87e-3, loop, 0.002);
    double shorter =
        figures("--power=3kW", "--length=10m", "--loop-impedance=0.35ohm").get("earth-fault");
    assertEquals(2 * 20 * 8.87e-3, loop - shorter, 0.002);
  }

  /** 0.1 s of 1 kA: 1 000 000 × 0.1. */
  @Test
  void what_a_short_circuit_lets_through_is_its_square_times_a_tenth_of_a_second()
      throws IOException {
    assertEquals(
        500 * 500 * 0.1, figures("--power=3kW", "--fault-current=500A").get("short-circuit"), 1e-6);
  }

  /** 3 kW at 230 V; at +10 % and +5 %: × 1.155. */
  @Test
  void the_current_is_that_at_the_highest_voltage_and_power() throws IOException {
    assertEquals(3000 / 230.0 * 1.1 * 1.05, figures("--power=3kW").get("current"), 1e-6);
    assertEquals(3000 / 230.0 * 1.1 * 1.02, figures("--power=3kW ± 2 %").get("current"), 1e-6);
    assertEquals(
        9000 / 400.0 / Math.sqrt(3) * 1.1 * 1.05,
        figures("--power=9kW", "--phases=3").get("current"),
        1e-6);
  }

  /** What a file says is not rounded to the three figures that are printed of it. */
  @Test
  void no_figure_of_a_file_is_rounded_on_its_way() throws IOException {
    double is = figures(GUEST_HOUSE, "--part=Q1").get("earth-fault");
    String file = changed("loop-impedance: 0.35 Ω", "loop-impedance: 2.0749 Ω").toString();
    assertEquals(2.0749 - 0.35, figures(file, "--part=Q1").get("earth-fault") - is, 1e-6);
    String fault = changed("fault-current: 3 kA", "fault-current: 123.456 A").toString();
    assertEquals(123.456 * 123.456 * 0.1, figures(fault, "--part=Q1").get("short-circuit"), 1e-4);
  }

  /** The same load, place and wire are answered alike, typed or from a file. */
  @Test
  void a_file_and_what_is_typed_give_the_same_figures() throws IOException {
    Figures file = figures(GUEST_HOUSE, "--part=Q1");
    Figures typed =
        figures(
            "--power=9kW",
            "--voltage=400V ± 10 %",
            "--phases=3",
            "--air=45C",
            "--rated-air=60C",
            "--altitude=640m",
            "--length=11.3m",
            "--fault-current=3kA",
            "--loop-impedance=0.35ohm");
    typed
        .values()
        .forEach((key, value) -> assertEquals(value, file.get(key), 1e-6 + 1e-6 * value, key));
  }

  /** The air in the box was computed, not written: what is typed is taken in its place. */
  @Test
  void a_computed_air_does_not_look_as_if_it_had_been_written() throws IOException {
    String file = "src/test/resources/rules/enclosure.too-warm/good-small-box.yaml";
    Cli.Ran computed = Cli.run("choose", file, "--part=Q1");
    assertEquals(0, computed.code(), computed.err());
    assertFalse(computed.out().contains("in 62 °C air"), computed.out());
    Cli.Ran typed = Cli.run("choose", file, "--part=Q1", "--air=62C");
    assertEquals("", typed.err());
    assertTrue(typed.out().contains("in 62 °C air"), typed.out());
    assertTrue(typed.out().replaceAll("\\s+", " ").contains("air at 62 °C"), typed.out());
  }

  /** Whether the contactor of the file fits is judged in the air that was typed, too. */
  @Test
  void the_contactor_of_the_file_is_judged_in_the_air_that_was_typed() throws IOException {
    String file = changed("  enclosure-air: 5..45 °C\n", "  ambient: 5..30 °C\n").toString();
    String cool = Cli.run("choose", file, "--part=Q1", "--air=60C").out().replaceAll("\\s+", " ");
    String warm = Cli.run("choose", file, "--part=Q1", "--air=75C").out().replaceAll("\\s+", " ");
    assertTrue(cool.contains("Q1 itself is large enough"), cool);
    assertTrue(warm.contains("Q1 itself"), warm);
    assertTrue(warm.contains("air at 75 °C"), warm.substring(warm.indexOf("Q1 itself")));
  }
}
