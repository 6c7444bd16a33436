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
    assertEquals(List.of("5", "8", "9", "10", "11", "12"), part(netlist, "U1").pins());
    assertEquals(List.of("1", "2", "3", "4"), part(netlist, "B2").pins());
    assertEquals(List.of("1", "2", "PE"), part(netlist, "E1").pins());
  }

  @Test
  void wires_know_where_they_stand() throws IOException {
    Netlist netlist = small();
    Wire wire = netlist.wires().get(5);
    assertEquals(new Terminal("U1", "10"), wire.from().value());
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
}
