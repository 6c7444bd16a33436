package org.coilwright.netlist;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.fail;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import org.coilwright.netlist.Netlist.Accepted;
import org.coilwright.netlist.Part.ContactForm;
import org.junit.jupiter.api.Test;

class NetlistReaderTest {
  static final Path FOLDER = Path.of("src/test/resources/netlists");

  static Reading read(String yaml) {
    return NetlistReader.read("test.yaml", yaml.getBytes(StandardCharsets.UTF_8));
  }

  static Netlist netlist(Reading reading) {
    if (reading instanceof Reading.Read read) {
      return read.netlist();
    }
    return fail(reading.toString());
  }

  private static Part part(Netlist netlist, String name) {
    return Objects.requireNonNull(netlist.parts().get(name));
  }

  private static Netlist small() throws IOException {
    Path file = FOLDER.resolve("good-small-relay.yaml");
    return netlist(NetlistReader.read("small.yaml", Files.readAllBytes(file)));
  }

  @Test
  void a_relay_takes_its_keys_from_its_type() throws IOException {
    Part.Relay relay = assertInstanceOf(Part.Relay.class, part(small(), "K1"));
    assertEquals("heater relay", relay.head().label().orElseThrow());
    assertEquals(660, relay.coil().resistance().orElseThrow().value().nominal());
    assertEquals(List.of("A1", "A2", "11", "14"), relay.pins());
    assertEquals("11-14", relay.contacts().get(0).name());
    assertEquals(ContactForm.NO, relay.contacts().get(0).form());
    assertEquals(
        16,
        Objects.requireNonNull(relay.contacts().get(0).ratings().byCategory().get("AC-1"))
            .value()
            .amount()
            .nominal());
  }

  @Test
  void pins_follow_the_kind_of_part() throws IOException {
    Netlist netlist = small();
    assertEquals(List.of("L", "N", "PE"), part(netlist, "X0").pins());
    assertEquals(List.of("1", "2", "N1", "N2"), part(netlist, "F1").pins());
    assertEquals(List.of("31", "32", "14", "13", "11", "12"), part(netlist, "U1").pins());
    assertEquals(List.of("1", "2", "3", "4"), part(netlist, "B2").pins());
    assertEquals(List.of("1", "2", "PE"), part(netlist, "E1").pins());
  }

  @Test
  void wires_know_where_they_stand() throws IOException {
    Netlist netlist = small();
    Wire wire = netlist.wires().get(5);
    assertEquals(new Terminal("U1", "13"), wire.from().value());
    assertEquals(new Terminal("K1", "A1"), wire.to().value());
    assertEquals("W1", wire.run().orElseThrow().value());
    String line = netlist.text().lines().get(wire.to().mark().line() - 1);
    assertEquals(
        "K1.A1", line.substring(wire.to().mark().column() - 1, wire.to().mark().endColumn() - 1));
    assertEquals("101", netlist.wires().get(9).number().orElseThrow().value());
  }

  @Test
  void the_rest_is_kept() throws IOException {
    Netlist netlist = small();
    assertEquals("Immersion heater, 3 kW", netlist.about().title().value());
    assertEquals(Site.Practice.IEC, netlist.site().practice().value());
    assertInstanceOf(Intent.And.class, Objects.requireNonNull(netlist.intent().get("E1")).value());
    Accepted accepted = netlist.accepted().get(0);
    assertEquals("drive.below-least-load", accepted.rule().value());
    assertEquals(64, netlist.text().sha256().length());
  }

  private static Netlist tub() throws IOException {
    Path file = FOLDER.resolve("good-three-phase-tub.yaml");
    FolderIncludes includes = new FolderIncludes("job/tub.yaml", file);
    return netlist(NetlistReader.read("job/tub.yaml", Files.readAllBytes(file), includes));
  }

  @Test
  void an_included_type_knows_its_own_file() throws IOException {
    Part.Relay contactor = assertInstanceOf(Part.Relay.class, part(tub(), "Q1"));
    assertEquals("job/types/contactors.yaml", contactor.coil().voltage().mark().file());
    assertEquals("job/tub.yaml", contactor.mounting().orElseThrow().mark().file());
    assertEquals(2, contactor.loss().orElseThrow().value().amount().nominal());
  }

  @Test
  void poles_stand_among_the_contacts_with_the_ratings_of_the_part() throws IOException {
    Part.Relay contactor = assertInstanceOf(Part.Relay.class, part(tub(), "Q1"));
    assertEquals(
        List.of("1-2", "3-4", "5-6"),
        contactor.contacts().stream().map(Part.ContactSpec::name).toList());
    for (Part.ContactSpec pole : contactor.contacts()) {
      assertEquals(true, pole.pole());
      assertEquals(contactor.ratings(), pole.ratings());
    }
  }

  @Test
  void a_contactors_auxiliary_contact_does_not_inherit_the_ratings_of_its_poles() {
    String yaml =
        """
        coilwright: 1
        circuit: {title: x}
        site: {practice: iec}
        parts:
          Q1:
            is: contactor
            coil: {pins: [A1, A2], voltage: 24 V DC}
            poles: [[1, 2]]
            contacts: [{pins: [13, 14], form: NO, mirror: true}]
            ratings: {AC-1: 25 A at 400 V}
        wires: []
        """;
    Part.Relay contactor = assertInstanceOf(Part.Relay.class, part(netlist(read(yaml)), "Q1"));
    assertEquals(1, contactor.contacts().get(0).ratings().byCategory().size());
    assertEquals(0, contactor.contacts().get(1).ratings().byCategory().size());
    assertEquals(true, contactor.contacts().get(1).mirror().orElseThrow().value());
  }

  @Test
  void a_changeover_contact_is_two_contacts_that_share_their_first_pin() throws IOException {
    Part.Relay relay = assertInstanceOf(Part.Relay.class, part(tub(), "K1"));
    assertEquals(
        List.of("11-12", "11-14", "21-22", "21-24"),
        relay.contacts().stream().map(Part.ContactSpec::name).toList());
    assertEquals(
        List.of(ContactForm.NC, ContactForm.NO, ContactForm.NC, ContactForm.NO),
        relay.contacts().stream().map(Part.ContactSpec::form).toList());
  }

  @Test
  void pins_that_look_like_numbers_or_truth_values_stay_text() throws IOException {
    Part.Controller controller = assertInstanceOf(Part.Controller.class, part(tub(), "U1"));
    assertEquals(List.of("L", "N", "31", "32", "33", "34", "010", "1_000"), controller.pins());
    Path file = FOLDER.resolve("good-quotes-and-blocks.yaml");
    Netlist quotes = netlist(NetlistReader.read("q.yaml", Files.readAllBytes(file)));
    assertEquals(List.of("NO", "on"), part(quotes, "U1").pins());
    assertEquals("A title that runs over two lines", quotes.about().title().value());
  }

  @Test
  void a_load_has_the_pins_that_its_wires_or_its_connection_name() throws IOException {
    Path file = FOLDER.resolve("good-split-phase-loads.yaml");
    Netlist netlist = netlist(NetlistReader.read("s.yaml", Files.readAllBytes(file)));
    assertEquals(List.of("L1", "L2", "N", "PE"), part(netlist, "X0").pins());
    assertEquals(List.of("1", "2", "PE"), part(netlist, "M1").pins());
    assertEquals(List.of("1", "2", "3", "N", "PE"), part(netlist, "M2").pins());
    assertEquals(List.of("1", "2", "3", "N", "PE"), part(netlist, "C1").pins());
    assertEquals(List.of("1", "2", "3", "PE"), part(netlist, "E2").pins());
    assertEquals(240, netlist.site().mains().orElseThrow().voltage().value().nominal());
  }

  @Test
  void settings_and_plant_are_kept() throws IOException {
    Switching switching = tub().switching().orElseThrow();
    assertEquals(3400, switching.start().orElseThrow().exportAbove().orElseThrow().value().low());
    assertEquals(
        List.of("13:00-14:00", "00:00-00:30"),
        switching.alwaysOn().stream().map(Written::value).toList());
    assertEquals(300, switching.water().orElseThrow().litres().orElseThrow().value().nominal());
    assertEquals(
        0.15,
        switching
            .plant()
            .orElseThrow()
            .battery()
            .orElseThrow()
            .floor()
            .orElseThrow()
            .value()
            .low());
  }

  @Test
  void runs_keep_what_wires_may_override() throws IOException {
    Netlist netlist = tub();
    Run run = Objects.requireNonNull(netlist.runs().get("W1"));
    assertEquals(7.62, run.length().orElseThrow().value().nominal());
    assertEquals(18, run.size().orElseThrow().value().awg().orElseThrow());
    assertEquals(List.of("W2"), run.sharesWith().stream().map(Written::value).toList());
    Wire wire = netlist.wires().get(8);
    assertEquals(0.4, wire.length().orElseThrow().value().nominal());
    assertEquals("brown", wire.colour().orElseThrow().value());
  }
}
