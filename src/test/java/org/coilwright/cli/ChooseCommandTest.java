// Over 250 lines: one command, one question after the other.
package org.coilwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** {@code coilwright choose} as a person at a prompt meets it. */
class ChooseCommandTest {
  private static Cli.Ran choose(String... args) {
    String[] all = new String[args.length + 1];
    all[0] = "choose";
    System.arraycopy(args, 0, all, 1, args.length);
    return Cli.run(all);
  }

  @Test
  void every_factor_stands_in_the_line_that_needs_it() {
    Cli.Ran ran =
        choose(
            "--power=9kW",
            "--voltage=400V",
            "--phases=3",
            "--connection=star",
            "--air=50C",
            "--mounting=side-by-side",
            "--starts-per-day=12",
            "--years=15");
    assertEquals(0, ran.code());
    String text = ran.out().replaceAll("\\s+", " ");
    assertTrue(text.contains("13.0 A at 400 V; 15.0 A at 440 V and +5 % power"), text);
    assertTrue(text.contains("15.0 A ÷ 0.90 (air at 50 °C) ÷ 0.80 (close-mounted) = 20.8 A"), text);
    assertTrue(text.contains("25 A AC-1 (margin 20 %), or 40 A (margin 92 %)"), text);
    assertTrue(text.contains("a gap on both sides: 20 A"), text);
    assertTrue(text.contains("confirm before relying on it"), text);
  }

  /** The preferred ratings that the published series gives for these elements. */
  @ParameterizedTest
  @CsvSource({
    "3kW, 230V, 1, 40C, 16",
    "3kW, 230V, 1, 50C, 20",
    "3kW, 230V, 1, 60C, 20",
    "4.5kW, 230V, 1, 40C, 25",
    "4.5kW, 230V, 1, 60C, 40",
    "9kW, 400V, 3, 40C, 16",
    "9kW, 400V, 3, 50C, 20",
    "12kW, 400V, 3, 40C, 25"
  })
  void the_smallest_rating_that_fits_is_chosen(
      String power, String volts, String phases, String air, String rating) {
    Cli.Ran ran = choose("--power", power, "--voltage", volts, "--phases", phases, "--air", air);
    assertEquals(0, ran.code());
    assertTrue(ran.out().contains("choose            " + rating + " A AC-1"), ran.out());
  }

  /** 4500 W at 240 V: 18.75 A, 23.44 A continuous, 25 A device, at most 30 A. */
  @Test
  void the_national_code_counts_a_continuous_load() {
    Cli.Ran ran = choose("--power=4.5kW", "--voltage=240V", "--phases=split", "--practice=nec");
    String text = ran.out().replaceAll("\\s+", " ");
    assertEquals(0, ran.code());
    assertTrue(text.contains("breaker 25 A (18.8 A × 1.25 = 23.4 A; at most 30 A"), text);
    assertTrue(text.contains("wire 10 AWG"), text);
    assertTrue(text.contains("poles 2"), text);
  }

  /** 6 kW in star: 8.7 A, 10.0 A at high mains; a 10 A breaker is left with 8.2 A at 60 °C. */
  @Test
  void a_breaker_in_warm_air_is_chosen_larger() {
    String text =
        words(
            choose(
                "--power=6kW", "--voltage=400V", "--connection=star", "--phases=3", "--air=60C"));
    assertTrue(text.contains("breaker 13 A"), text);
    assertTrue(text.contains("13 A × 0.816 (air at 60 °C) = 10.6 A left of it"), text);
    assertTrue(text.contains("outside IEC 60898-1 7.2"), text);
    String cool =
        words(
            choose(
                "--power=6kW", "--voltage=400V", "--connection=star", "--phases=3", "--air=30C"));
    assertTrue(cool.contains("breaker 10 A"), cool);
  }

  /** Line to neutral there is 120 V and 277 V; with one pole a leg of any other stays live. */
  @ParameterizedTest
  @CsvSource({
    "120V, 1", "277V, 1", "110V, 2", "208V, 2", "230V, 2", "240V, 2", "347V, 2", "480V, 2"
  })
  void under_the_national_code_both_lines_leave_the_load(String volts, int poles) {
    Cli.Ran ran = choose("--power=2kW", "--voltage", volts, "--phases=1", "--practice=nec");
    String text = ran.out().replaceAll("\\s+", " ");
    assertTrue(text.contains(" poles %d,".formatted(poles)), text);
  }

  /** 16 A would do for the breaker of 3.5 kW; at the highest voltage 17.6 A flow. */
  @ParameterizedTest
  @CsvSource({"30C, 3.5kW", "40C, 3.5kW", "30C, 3.2kW", "50C, 3kW"})
  void the_wire_carries_the_worst_current_as_well(String air, String power) {
    String json = choose("--power", power, "--wire-air", air, "--as=json").out();
    double worst = figure(json, "current");
    String text = words(choose("--power", power, "--wire-air", air));
    java.util.regex.Matcher may =
        java.util.regex.Pattern.compile("may carry (?:[^;]* = )?([0-9.]+) A").matcher(text);
    assertTrue(may.find(), text);
    assertTrue(Double.parseDouble(may.group(1)) >= worst - 0.05, text);
  }

  private static double figure(String json, String key) {
    String line = json.substring(json.indexOf("\"key\": \"" + key + "\""));
    String value = line.substring(line.indexOf("\"value\": ") + 9);
    return Double.parseDouble(value.substring(0, value.indexOf(',')).trim());
  }

  /** 6 kA through a 10 A breaker: 35 000 A²s, and 1.5 mm² stands 29 756 A²s. */
  @Test
  void a_wire_that_does_not_stand_the_short_circuit_is_not_proposed() {
    String[] asked = {"--power=2kW", "--method=C", "--wire-air=30C", "--air=30C"};
    assertTrue(words(choose(asked)).contains("wire 1.5 mm²"), words(choose(asked)));
    String[] more = java.util.Arrays.copyOf(asked, asked.length + 1);
    more[asked.length] = "--fault-current=6kA";
    Cli.Ran ran = choose(more);
    assertEquals(0, ran.code());
    assertTrue(words(ran).contains("wire 2.5 mm²"), words(ran));
    assertTrue(
        words(ran).contains("a size thinner, it does not stand a short-circuit"), words(ran));
  }

  /** No table gives what a breaker above 32 A lets through. */
  @Test
  void without_let_through_figures_the_short_circuit_is_open() {
    Cli.Ran ran = choose("--power=24kW", "--phases=3", "--connection=star", "--fault-current=10kA");
    assertEquals(0, ran.code(), ran.out());
    assertTrue(words(ran).contains("short-circuit open: without limiting"), words(ran));
  }

  /** The series is for 440 V, and at 4500 m for 0.7 of it: 308 V. */
  @ParameterizedTest
  @CsvSource({
    "440V, 500m, 0",
    "441V, 500m, 2",
    "1000V, 500m, 2",
    "400V, 3000m, 0",
    "400V, 4500m, 2",
    "308V, 4500m, 0"
  })
  void nothing_is_chosen_beyond_the_voltage_of_the_series(String volts, String height, int code) {
    Cli.Ran ran = choose("--power=3kW", "--phases=3", "--voltage", volts, "--altitude", height);
    assertEquals(code, ran.code(), ran.out());
    assertEquals(code == 2, words(ran).contains("nothing in this series fits: the load has"));
  }

  @Test
  void nothing_is_chosen_beyond_the_series() {
    Cli.Ran ran = choose("--power=80kW", "--phases=3", "--connection=delta");
    assertEquals(2, ran.code());
    String text = ran.out().replaceAll("\\s+", " ");
    assertTrue(text.contains("nothing in this series fits; the nearest is 100 A"), text);
    assertTrue(text.contains("star in place of delta, a third of the power: 63 A"), text);
  }

  @Test
  void air_beyond_the_table_is_not_guessed_at() {
    Cli.Ran ran = choose("--power=3kW", "--air=90C");
    assertEquals(2, ran.code());
    assertTrue(ran.out().contains("could not be worked out for air at 90 °C"), ran.out());
    assertFalse(ran.out().contains("  choose "), ran.out());
  }

  @Test
  void a_table_shows_where_the_next_rating_begins_and_where_it_ends() {
    Cli.Ran ran = choose("--power=3kW", "--table");
    assertEquals(0, ran.code());
    assertTrue(ran.out().contains("45 °C    15.9 A    16 A"), ran.out());
    assertTrue(ran.out().contains("50 °C    16.7 A    20 A"), ran.out());
    assertTrue(ran.out().contains("75 °C    –         outside the table"), ran.out());
  }

  @Test
  void a_contactor_of_a_netlist_brings_its_own_load_and_air() {
    Cli.Ran ran = choose("wiring-examples/guest-house-cylinder.yaml", "--part", "Q1");
    assertEquals(0, ran.code());
    assertTrue(ran.out().startsWith("Q1 for E1, three lines, in 45 °C air, spaced"), ran.out());
    assertTrue(ran.out().contains("15.0 A at 440 V and +5 % power"), ran.out());
  }

  @Test
  void a_contactor_of_a_netlist_brings_the_run_that_its_load_is_wired_with() {
    Cli.Ran ran = choose("wiring-examples/guest-house-cylinder.yaml", "--part", "Q1");
    assertTrue(ran.out().lines().findFirst().orElse("").endsWith("wired as W2"), ran.out());
    assertTrue(ran.out().contains("over 11.3 m"), ran.out());
    assertFalse(ran.out().contains("over 8 m"), ran.out());
  }

  @Test
  void programs_get_the_figures() {
    Cli.Ran ran = choose("--power=3kW", "--as=json");
    assertEquals(0, ran.code());
    assertTrue(ran.out().contains("\"value\": 15.0652174"), ran.out());
    assertTrue(ran.out().contains("\"fits\": true"), ran.out());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "--power=0kW|must stay above zero",
        "--power=3kW --phases=5|--phases takes 1, 3 or split, not 5",
        "--power=3kA|--power 3kA",
        "--power=3kW --connection=delta|does not go with --phases 1",
        "--power=3kW --mounting=upside-down|--mounting takes side-by-side or spaced",
        "--voltage=230V|choose needs --power",
        "--power=9kW --phases=3 --practice=nec|needs --voltage: 208V",
        "--power=3kW --starts-per-day=0|must stay above zero",
        "--power=3kW --years=0|must stay above zero",
        "--power=3kW --length=0m|must stay above zero",
        "--power=3kW --life=plenty|--life",
        "--power=3kW --output=plenty|--output",
        "--power=3kW --insulation=paper|--insulation takes pvc-60",
        "wiring-examples/guest-house-cylinder.yaml|Say which relay or contactor",
        "wiring-examples/guest-house-cylinder.yaml --part=Q7|Did you mean Q1?"
      })
  void what_cannot_be_used_is_said(String typed, String said) {
    Cli.Ran ran = choose(typed.split(" ", -1));
    assertEquals(2, ran.code());
    assertEquals("", ran.out());
    assertTrue(ran.err().contains(said), ran.err());
    assertFalse(ran.err().contains("\tat "), ran.err());
  }

  private static String words(Cli.Ran ran) {
    return ran.out().replaceAll("\\s+", " ");
  }

  @Test
  void the_loop_of_an_earth_fault_is_added_up_and_an_assumed_one_is_said_to_be() {
    String given = words(choose("--power=3kW", "--length=30m", "--loop-impedance=0.35ohm"));
    assertTrue(
        given.contains(
            "0.350 Ω of the mains + 0.532 Ω of line and protective conductor at 70 °C = 0.882 Ω"),
        given);
    assertTrue(
        given.contains("opens in 400 ms in a TN system up to 2.73 Ω (0.950 × 230 V ÷ (5 × 16 A))"),
        given);
    String assumed = words(choose("--power=3kW", "--length=30m"));
    assertTrue(assumed.contains("0.800 Ω of the mains assumed, give --loop-impedance"), assumed);
    String poor = words(choose("--power=3kW", "--length=30m", "--loop-impedance=9ohm"));
    assertTrue(poor.contains("a residual-current device has to clear it"), poor);
    String nec = words(choose("--power=4.5kW", "--phases=split", "--practice=nec"));
    assertTrue(nec.contains("practice nec sets no disconnection time"), nec);
  }

  @Test
  void the_given_output_drives_the_coil_or_an_interposing_relay_does() {
    String low = words(choose("--power=3kW", "--output=0.5 A at 12 V DC"));
    assertTrue(low.contains("put an interposing relay between. Its coil for 12 V takes"), low);
    assertTrue(low.contains("reinforced insulation between the two"), low);
    String strong = words(choose("--power=3kW", "--output=AC-15: 3 A at 230 V"));
    assertTrue(strong.contains("can drive it: it makes 30 A"), strong);
    String weak = words(choose("--power=3kW", "--output=0.1 A at 250 V"));
    assertTrue(weak.contains("is too weak: it makes 100 mA"), weak);
    assertFalse(weak.contains("reinforced"), weak);
  }

  @Test
  void the_output_that_makes_just_the_pull_in_current_drives_the_coil() {
    String enough = words(choose("--power=3kW", "--output=AC-15: 0.03 A at 230 V"));
    assertTrue(enough.contains("can drive it: it makes 300 mA"), enough);
    String beyond = words(choose("--power=3kW", "--output=AC-15: 0.0299 A at 230 V"));
    assertTrue(beyond.contains("is too weak"), beyond);
  }

  @Test
  void every_way_to_a_smaller_contactor_is_named() {
    String text =
        words(
            choose(
                "--power=9kW",
                "--phases=3",
                "--connection=delta",
                "--air=50C",
                "--mounting=side-by-side"));
    assertTrue(
        text.contains(
            "a gap on both sides: 20 A; air at 40 °C: 20 A; one rated for air at 50 °C: 20 A; a gap"
                + " and air at 40 °C together: 16 A; star in place of delta, a third of the power:"
                + " 16 A"),
        text);
  }

  @Test
  void a_life_from_the_data_sheet_is_not_an_assumed_one() {
    Cli.Ran given =
        choose("--power=3kW", "--starts-per-day=100", "--life=30000 at 20 A", "--years=2");
    assertEquals(2, given.code());
    assertTrue(words(given).contains("1.3 years at 100 starts a day"), given.out());
    assertFalse(words(given).contains("assumed: give --life"), given.out());
    Cli.Ran assumed = choose("--power=3kW", "--starts-per-day=12");
    assertTrue(words(assumed).contains("the first figure is assumed: give --life"), assumed.out());
    assertTrue(words(assumed).contains("asked, if it lasts the 75 000 cycles"), assumed.out());
  }

  /** Half of 150 000 operations, over the current; 50 times a day on 200 days are 10 000 a year. */
  @Test
  void the_assumed_life_counts_closing_and_opening_as_one_cycle() {
    String text = words(choose("--power=3.68kW", "--starts-per-day=27.39726", "--years=9"));
    assertTrue(text.contains("9.4 years at"), text);
    assertTrue(text.contains("75 000 cycles at 20 A, so 94 000 at 16 A"), text);
  }

  @Test
  void better_insulation_carries_more_once_its_clamps_are_out_of_the_way() {
    String warm = words(choose("--power=3kW", "--wire-air=55C", "--insulation=xlpe-90"));
    assertTrue(warm.contains("1.5 mm² copper, XLPE 90 °C"), warm);
    String plain = words(choose("--power=3kW", "--wire-air=55C"));
    assertTrue(plain.contains("4 mm² copper, PVC 70 °C taken"), plain);
    Cli.Ran none = choose("--power=3kW", "--insulation=rubber-60");
    assertEquals(2, none.code());
    assertTrue(words(none).contains("No table read here gives its current"), none.out());
  }

  @ParameterizedTest
  @CsvSource({"11520W, false", "11530W, true"})
  void a_large_element_has_to_be_divided_under_the_national_code(String power, boolean divided) {
    String text = words(choose("--power", power, "--phases=split", "--practice=nec"));
    assertEquals(divided, text.contains("have to be divided"), text);
  }

  @Test
  void a_contactor_of_a_netlist_is_driven_by_what_is_wired_to_its_coil() {
    String text = words(choose("wiring-examples/cabin-water-heater.yaml", "--part", "Q1"));
    assertTrue(
        text.contains(
            "120 V AC, 6 VA holding (50 mA), 35 VA to pull in (292 mA); K1.11-14, AC-15 3 A at"
                + " 120 V, can drive it: it makes 30 A"),
        text);
  }

  @Test
  void every_contact_in_the_way_of_the_coil_is_judged_and_the_weakest_leads() {
    String text = words(choose("wiring-examples/guest-house-cylinder.yaml", "--part", "Q1"));
    assertTrue(text.contains("; the weakest of the 2 contacts in its way: "), text);
    assertTrue(text.contains("K1.11-14, AC-15 1.5 A at 250 V, can drive it"), text);
    assertTrue(text.contains("B1.1-2, AC-15 1.5 A at 250 V, can drive it"), text);
  }

  /** The relay's contact is not beside the coil: the thermostat stands between. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "AC-15: 0.01 A at 250 V|K1.11-14, AC-15 10 mA at 250 V, is too weak",
        "DC-13: 0.3 A at 30 V|K1.11-14, DC-13 300 mA at 30 V, is not for 230 V AC",
        "AC-15: 3 A at 24 V|K1.11-14, AC-15 3 A at 24 V, is not for 230 V AC"
      })
  void a_contact_further_from_the_coil_that_cannot_drive_it_is_said(String rating, String said)
      throws IOException {
    String text = words(guestHouse("AC-1: 6 A at 250 V, AC-15: 1.5 A at 250 V", rating));
    int coil = text.indexOf(" coil 230 V AC");
    assertTrue(text.indexOf(said) > coil, text);
    assertTrue(text.indexOf(said) < text.indexOf("B1.1-2", coil), text);
    assertTrue(text.contains("put an interposing relay between"), text);
  }

  @Test
  void a_contact_without_a_rating_leaves_the_drive_of_the_coil_open() throws IOException {
    String text =
        words(guestHouse("ratings: {AC-1: 6 A at 250 V, AC-15: 1.5 A at 250 V}, least", "least"));
    assertTrue(text.contains("(130 mA); whether K1.11-14 can drive it is open"), text);
  }

  @Test
  void the_way_of_a_load_is_added_up_from_the_mains_and_not_at_the_contactor_alone()
      throws IOException {
    Cli.Ran near = choose("wiring-examples/guest-house-cylinder.yaml", "--part", "Q1");
    assertTrue(near.out().contains("over 11.3 m"), near.out());
    // the cut-out beside the contactor, and a long run behind it: nothing but short wires on Q1
    String text = Files.readString(Path.of("wiring-examples/guest-house-cylinder.yaml"));
    text =
        text.replaceAll(
                "from: Q1\\.([246]), to: F3\\.([135]), run: W2", "from: Q1.$1, to: F3.$2, run: W3")
            .replaceAll(
                "to: E1\\.([123]), length: 0.3 m, size: 2.5 mm²",
                "to: E1.$1, length: 60 m, size: 2.5 mm²");
    Path far = folder.resolve("far.yaml");
    Files.writeString(far, text);
    Cli.Ran ran = choose(far.toString(), "--part", "Q1");
    assertTrue(ran.out().contains("over 64 m"), ran.out());
  }

  @Test
  void a_coil_on_direct_voltage_is_driven_by_the_output_of_the_file() throws IOException {
    String text =
        """
        coilwright: 1
        circuit: {title: Dairy hot water}
        site:
          mains: {phases: 1, voltage: 230 V ± 10 %, frequency: 50 Hz, earthing: TN-S, fault-current: 1.2 kA, loop-impedance: 0.6 Ω}
          enclosure-air: 5..35 °C
          altitude: 250 m
          practice: iec
        parts:
          G0: {is: mains}
          F1: {is: breaker, curve: B, rating: 16 A, poles: 1+N}
          U1:
            is: controller
            aux-supply: {plus: 1, minus: 2, voltage: 24 V DC ± 5 %, limit: 1 A, isolation: SELV, ripple: 2 %}
            outputs:
              heat: {pins: [3, 4], form: NO, ratings: {DC-13: 0.5 A at 30 V}, least-load: 1 mA at 5 V}
          Q1:
            is: contactor
            coil: {pins: [A1, A2], voltage: 24 V DC, power: 2.4 W}
            poles: [[1, 2]]
          E1: {is: heater, power: 3 kW, voltage: 230 V, connection: single, kind: metal-sheathed}
        runs:
          W1: {length: 3 m, size: 0.75 mm², insulation: 300 V, installed: B2}
          W2: {length: 5 m, size: 2.5 mm², insulation: 450 V, installed: B2}
        wires:
          - {from: G0.L, to: F1.1, run: W2}
          - {from: G0.N, to: F1.N1, run: W2}
          - {from: F1.2, to: Q1.1, run: W2}
          - {from: Q1.2, to: E1.1, run: W2}
          - {from: E1.2, to: F1.N2, run: W2}
          - {from: G0.PE, to: E1.PE, run: W2}
          - {from: U1.1, to: U1.3, run: W1}
          - {from: U1.4, to: Q1.A1, run: W1}
          - {from: Q1.A2, to: U1.2, run: W1}
        intent:
          E1: U1.heat
        """;
    Path file = folder.resolve("direct.yaml");
    Files.writeString(file, text);
    String said = words(choose(file.toString(), "--part", "Q1"));
    assertTrue(said.contains("24 V DC, 2.40 W (100 mA); U1.heat, DC-13 500 mA at 30 V,"), said);
    assertTrue(said.contains("can drive it"), said);
    Files.writeString(file, text.replace("DC-13: 0.5 A at 30 V", "AC-15: 0.5 A at 230 V"));
    said = words(choose(file.toString(), "--part", "Q1"));
    assertTrue(said.contains("is not for 24 V DC: put an interposing relay between"), said);
    Files.writeString(file, text.replace(", power: 2.4 W", ""));
    said = words(choose(file.toString(), "--part", "Q1"));
    assertTrue(said.contains("what it draws is open"), said);
  }

  @Test
  void a_box_whose_air_is_not_known_is_not_taken_for_the_room() throws IOException {
    String inside = "  enclosure-air: 5..45 °C\n";
    String room = "  ambient: 5..30 °C\n";
    String box =
        "  enclosure: {width: 400 mm, height: 500 mm, depth: 200 mm, mounting: wall, vents:"
            + " none}\n";
    Cli.Ran open = guestHouse(inside + box, room + box);
    assertEquals(2, open.code());
    assertEquals("", open.out());
    assertTrue(open.err().contains("could not be worked out: the air in the box"), open.err());
    Cli.Ran typed = guestHouse(inside + box, room + box, "--air=55C");
    assertEquals(0, typed.code());
    assertTrue(typed.out().startsWith("Q1 for E1, three lines, in 55 °C air"), typed.out());
    Cli.Ran none = guestHouse(inside + box, room);
    assertTrue(none.out().startsWith("Q1 for E1, three lines, in 30 °C air"), none.out());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "--air=60C",
        "--mounting=side-by-side",
        "--practice=nec",
        "--voltage=230V",
        "--power=3kW",
        "--phases=3",
        "--connection=star",
        "--kind=ptc",
        "--fault-current=1kA",
        "--rated-air=40C",
        "--altitude=100m",
        "--length=20m",
        "--method=C",
        "--loop-impedance=1ohm",
        "--life=1000 at 20 A",
        "--output=AC-15: 3 A at 230 V"
      })
  void what_the_netlist_gives_cannot_be_typed_as_well(String option) {
    Cli.Ran ran = choose("wiring-examples/guest-house-cylinder.yaml", "--part", "Q1", option);
    assertEquals(2, ran.code());
    assertEquals("", ran.out());
    String name = option.substring(0, option.indexOf('='));
    assertTrue(ran.err().contains("already gives what " + name + " says"), ran.err());
  }

  @Test
  void what_the_netlist_leaves_open_is_typed() throws IOException {
    Cli.Ran spaced = guestHouse("    mounting: spaced\n", "", "--mounting=side-by-side");
    assertEquals(0, spaced.code());
    assertTrue(spaced.out().contains("close-mounted"), spaced.out());
  }

  @Test
  void a_star_with_its_neutral_has_as_many_poles_from_a_file_as_typed() throws IOException {
    String said = "poles 4, so that nothing stays on the load; 3 take every line off it";
    String typed = words(choose("--power=9kW", "--phases=3", "--connection=star-with-neutral"));
    assertTrue(typed.contains(said), typed);
    String file = words(guestHouse("connection: star\n", "connection: star-with-neutral\n"));
    assertTrue(file.contains(said), file);
  }

  @Test
  void a_rating_for_warmer_air_than_usual_is_said_with_what_a_usual_one_would_need() {
    String text = words(choose("wiring-examples/guest-house-cylinder.yaml", "--part", "Q1"));
    assertTrue(
        text.contains(
            "this is for one whose rating holds in air up to 60 °C; one whose rating holds to 40"
                + " °C: 16 A"),
        text);
    String hot = words(choose("--power=9kW", "--phases=3", "--air=60C", "--rated-air=60C"));
    assertTrue(hot.contains("one whose rating holds to 40 °C: 20 A"), hot);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "AC-1: 25 A at 400 V, AC-3: 9|Q1 itself is large enough by its ratings in the file. Q1"
            + " carries 15 A",
        "AC-1: 14 A at 400 V, AC-3: 9|Q1 itself does not fit: ",
        "AC-1: 25 A at 230 V, AC-3: 9|Q1 itself does not fit: "
      })
  void whether_the_contactor_in_the_file_fits_is_said(String ratings, String said)
      throws IOException {
    String text = words(guestHouse("AC-1: 25 A at 400 V, AC-3: 9", ratings));
    assertTrue(text.contains(said), text);
  }

  private @TempDir Path folder = Path.of("");

  /** The guest house with one passage changed. */
  private Cli.Ran guestHouse(String was, String is, String... more) throws IOException {
    String text = Files.readString(Path.of("wiring-examples/guest-house-cylinder.yaml"));
    assertTrue(text.contains(was), was);
    Path changed = folder.resolve("changed.yaml");
    Files.writeString(changed, text.replace(was, is));
    List<String> all = new ArrayList<>(List.of(changed.toString(), "--part", "Q1"));
    all.addAll(List.of(more));
    return choose(all.toArray(String[]::new));
  }

  @Test
  void clamps_listed_for_more_let_a_gauge_carry_more() {
    String[] asked = {
      "--power=4.5kW", "--phases=split", "--practice=nec", "--insulation=pvc-90", "--clamps=75C"
    };
    String text = words(choose(asked));
    assertTrue(text.contains("10 AWG copper, PVC 90 °C, method B2: may carry 40 A × 0.91"), text);
    assertFalse(text.contains("60 °C column"), text);
  }

  @Test
  void volts_may_come_first_and_air_may_be_in_fahrenheit() {
    Cli.Ran ran = Cli.run("choose", "--power", "3kW", "--output", "12 V DC 100 mA", "--air", "95F");
    assertEquals(0, ran.code(), ran.err());
    assertTrue(ran.out().contains("in 35 °C air"), ran.out());
    assertTrue(ran.out().contains("100 mA at 12 V"), ran.out());
  }
}
