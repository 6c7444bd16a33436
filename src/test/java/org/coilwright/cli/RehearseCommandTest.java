package org.coilwright.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import org.coilwright.cli.Cli.Ran;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RehearseCommandTest {
  private static final String TUB = "wiring-examples/wash-room-tub.yaml";

  @TempDir Path folder;

  private String hasty() throws IOException {
    String tub = Files.readString(Path.of(TUB));
    String hasty = tub.replace("{export-above: 2 kW, for: 60 s}", "{export-above: 1 kW, for: 0 s}");
    assertFalse(hasty.equals(tub), "the example no longer has the line that is replaced");
    Path file = folder.resolve("hasty.yaml");
    Files.writeString(file, hasty);
    return file.toString();
  }

  private String day(String... lines) throws IOException {
    Path file = folder.resolve("day.csv");
    Files.writeString(file, String.join("\n", lines) + "\n");
    return file.toString();
  }

  /** A sunny hour in which nothing else runs, a minute a row. */
  private String sunnyHour() throws IOException {
    String[] lines = new String[61];
    lines[0] = "time,pv kW,house W";
    for (int i = 0; i < 60; i++) {
      lines[i + 1] = (43_200 + i * 60) + ",5.5,350";
    }
    return day(lines);
  }

  @Test
  void settings_of_an_example_show_no_false_start_and_end_with_0() {
    Ran ran = Cli.run("rehearse", TUB);
    assertEquals(0, ran.code(), ran.err());
    assertTrue(ran.out().contains("No false start in what was rehearsed."), ran.out());
    assertTrue(ran.out().contains(RehearsalText.DEFINITION.substring(0, 40)), ran.out());
    assertEquals("", ran.err());
  }

  @Test
  void hasty_settings_show_false_starts_with_energy_and_source_and_end_with_1() throws IOException {
    Ran ran = Cli.run("rehearse", hasty());
    assertEquals(1, ran.code(), ran.err());
    assertTrue(ran.out().contains("evening step, 21:25:01: false start, on for"), ran.out());
    assertTrue(ran.out().contains("from the battery"), ran.out());
  }

  @Test
  void how_a_battery_settles_decides_over_a_false_start() throws IOException {
    // 4.5 kW too much stays above 1 kW for 4.7 s in a straight line, for 3.0 s exponentially
    String text =
        Files.readString(Path.of(hasty()))
            .replace("{export-above: 1 kW, for: 0 s}", "{export-above: 1 kW, for: 4 s}");
    Path file = folder.resolve("settles.yaml");
    Files.writeString(file, text);
    assertEquals(1, Cli.run("rehearse", file.toString()).code());
    Files.writeString(file, text.replace("floor: 15 %}", "floor: 15 %, settles: linear}"));
    assertEquals(1, Cli.run("rehearse", file.toString()).code());
    Files.writeString(file, text.replace("floor: 15 %}", "floor: 15 %, settles: first-order}"));
    Ran exponentially = Cli.run("rehearse", file.toString());
    assertEquals(0, exponentially.code(), exponentially.out() + exponentially.err());
  }

  @Test
  void a_measured_day_is_run_instead_of_the_built_in_ones() throws IOException {
    Ran ran = Cli.run("rehearse", TUB, "--day", sunnyHour());
    assertEquals(0, ran.code(), ran.err());
    assertTrue(ran.out().contains("day.csv"), ran.out());
    assertFalse(ran.out().contains("clear day"), ran.out());
  }

  @Test
  void lines_that_cannot_be_used_are_told_with_their_numbers() throws IOException {
    String csv = day("time,pv W,house W", "0,0,300", "60,0,300", "180,0,x");
    Ran ran = Cli.run("rehearse", TUB, "--day", csv);
    assertEquals(2, ran.code());
    assertEquals("", ran.out());
    assertTrue(ran.err().contains(csv + ", line 4"), ran.err());
    assertTrue(ran.err().contains("house is no number: \"x\""), ran.err());
    assertTrue(ran.err().contains("was not used: 1 problem in reading it."), ran.err());
  }

  @Test
  void a_day_that_is_not_there_is_told() {
    Ran ran = Cli.run("rehearse", TUB, "--day", folder.resolve("none.csv").toString());
    assertEquals(2, ran.code());
    assertTrue(ran.err().contains("cannot be read"), ran.err());
  }

  @Test
  void a_netlist_without_settings_is_told_what_it_wants() {
    Ran ran = Cli.run("rehearse", "wiring-examples/attic-mistakes.yaml");
    assertEquals(2, ran.code());
    assertTrue(ran.err().contains("cannot be rehearsed for want of switching."), ran.err());
  }

  @Test
  void json_holds_the_same_numbers() throws IOException {
    Ran ran = Cli.run("rehearse", "--as", "json", hasty());
    assertEquals(1, ran.code(), ran.err());
    JsonNode json = new ObjectMapper().readTree(ran.out());
    assertEquals(1, json.get("coilwright").asInt());
    assertEquals(7, json.get("situations").size());
    JsonNode evening = json.get("situations").get(2);
    assertEquals("evening step", evening.get("name").asText());
    JsonNode start = evening.get("falseStarts").get(0);
    assertEquals("21:25:01", start.get("at").asText());
    assertTrue(start.get("battery").asDouble() > 100);
    assertEquals(0, start.get("sun").asDouble());
    assertEquals("K1", json.get("contacts").get(0).get("part").asText());
  }

  @Test
  void a_plot_is_a_well_formed_picture_and_the_same_each_time() throws Exception {
    String netlist = hasty();
    Path svg = folder.resolve("a.svg");
    Path again = folder.resolve("b.svg");
    Path png = folder.resolve("a.PNG");
    Ran ran = Cli.run("rehearse", netlist, "--plot", svg.toString());
    assertEquals("Wrote " + svg + ".", ran.err().strip());
    Cli.run("rehearse", netlist, "--plot", again.toString());
    Cli.run("rehearse", netlist, "--plot", png.toString());
    assertArrayEquals(Files.readAllBytes(svg), Files.readAllBytes(again));
    String text = Files.readString(svg, StandardCharsets.UTF_8);
    for (String said : new String[] {"power, kW", "water, °C", "battery level, %", "false start"}) {
      assertTrue(text.contains(">" + said + "<"), said);
    }
    DocumentBuilderFactory.newInstance()
        .newDocumentBuilder()
        .parse(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)));
    var image = ImageIO.read(png.toFile());
    assertEquals(1520, image.getWidth());
    boolean[] seen = new boolean[2];
    for (int x = 0; x < image.getWidth(); x++) {
      int grey = image.getRaster().getSample(x, 300, 0);
      seen[0] |= grey > 250;
      seen[1] |= grey < 120;
    }
    assertTrue(seen[0] && seen[1], "paper and ink");
    try (Stream<Path> files = Files.list(folder)) {
      assertEquals(4, files.count(), "nothing is left beside the pictures");
    }
  }

  @Test
  void a_plot_of_another_kind_is_refused_before_anything_is_run() {
    Ran ran = Cli.run("rehearse", TUB, "--plot", "day.pdf");
    assertEquals(2, ran.code());
    assertEquals("", ran.out());
    assertTrue(ran.err().contains(".svg or .png"), ran.err());
  }

  @Test
  void other_settings_are_tried_shown_and_drawn() throws IOException {
    String netlist = hasty();
    Path svg = folder.resolve("tried.svg");
    Ran ran = Cli.run("rehearse", netlist, "--improve", "--plot", svg.toString());
    assertEquals(1, ran.code(), ran.err());
    assertTrue(
        ran.out().contains("Shortest confirm time without a false start at 1 kW as set now: 5 s"),
        ran.out());
    assertTrue(ran.out().contains("keeps battery and grid out"), ran.out());
    assertTrue(ran.out().lines().allMatch(l -> l.length() <= 80), ran.out());
    assertTrue(Files.readString(svg).contains(">confirm time, s<"));
    Ran json = Cli.run("rehearse", netlist, "--improve", "--as", "json");
    JsonNode tried = new ObjectMapper().readTree(json.out()).get("improve");
    assertEquals(5, tried.get("shortestConfirmAsSet").asInt());
  }

  @Test
  void a_contactor_that_the_thermostat_moves_as_well_is_not_said_to_last_so_long()
      throws IOException {
    String house = "wiring-examples/guest-house-cylinder.yaml";
    Ran ran = Cli.run("rehearse", house);
    assertTrue(ran.out().contains("at most 411 years"), ran.out());
    assertTrue(
        ran.out().contains("Q1: without what the thermostat switches, which also moves it."),
        ran.out());
    assertFalse(Cli.run("rehearse", TUB).out().contains("without what the thermostat"));
    JsonNode contacts =
        new ObjectMapper()
            .readTree(Cli.run("rehearse", house, "--as", "json").out())
            .get("contacts");
    assertEquals("K1", contacts.get(0).get("part").asText());
    assertFalse(contacts.get(0).get("alsoSwitchedByThermostat").asBoolean());
    assertEquals("Q1", contacts.get(1).get("part").asText());
    assertTrue(contacts.get(1).get("alsoSwitchedByThermostat").asBoolean());
  }

  @Test
  void starts_a_day_are_not_made_up_from_three_hours() throws IOException {
    JsonNode situations =
        new ObjectMapper()
            .readTree(Cli.run("rehearse", "--as", "json", hasty()).out())
            .get("situations");
    for (JsonNode situation : situations) {
      boolean whole = situation.get("seconds").asDouble() >= 86_400;
      assertEquals(whole, situation.get("startsPerDay").isNumber(), situation.toString());
    }
  }

  @Test
  void what_was_assumed_has_its_unit() throws IOException {
    JsonNode assumed =
        new ObjectMapper().readTree(Cli.run("rehearse", "--as", "json", TUB).out()).get("assumed");
    assertEquals(5, assumed.size());
    assertEquals(4186, assumed.get(0).get("value").asDouble());
    assertEquals("J/(kg K)", assumed.get(0).get("unit").asText());
    // a share of the vessel, 0 to 1
    assertEquals("", assumed.get(4).get("unit").asText());
  }

  @Test
  void a_window_may_end_with_the_day() throws IOException {
    String tub = Files.readString(Path.of(TUB));
    for (String window :
        new String[] {"00:00-24:00", "22:30-24:00", "24:00-01:00", "23:00-24:01"}) {
      String text =
          tub.replace(
              "longest-per-day: 6 h", "longest-per-day: 6 h\n  always-on: [\"" + window + "\"]");
      assertFalse(text.equals(tub), "the example no longer has the line that is replaced");
      Path file = Files.writeString(folder.resolve("window.yaml"), text);
      Ran ran = Cli.run("rehearse", file.toString());
      boolean isOne = window.endsWith("-24:00");
      assertEquals(isOne ? 0 : 2, ran.code(), window + ran.err());
      assertEquals(!isOne, ran.err().contains("is not a time window"), window);
    }
  }
}
