package org.coilwright.netlist;

import java.util.List;
import java.util.Set;
import org.coilwright.netlist.Part.Connection;
import org.coilwright.netlist.Part.Head;
import org.coilwright.netlist.Part.Vessel;
import org.coilwright.netlist.Value.Section;

/** Heaters and other loads. */
final class LoadBuilder {
  private LoadBuilder() {}

  static Part heater(Head head, Section section) {
    Written<Connection> connection = section.mustChoice("connection", Connection.class);
    return new Part.Heater(
        head,
        loadPins(connection.value()),
        section.quantity("power"),
        section.quantity("voltage"),
        connection,
        section
            .section("vessel")
            .map(
                v ->
                    new Vessel(
                        v.mark(),
                        v.quantity("litres"),
                        v.flag("closed"),
                        v.quantity("relief"),
                        v.flag("open-vent"),
                        v.text("cistern"))),
        section.text("kind"));
  }

  static Part load(Head head, Section section, Set<String> wired) {
    Connection connection =
        section
            .choice("connection", Connection.class)
            .map(Written::value)
            .orElseGet(
                () ->
                    wired.contains("N")
                        ? Connection.STAR_WITH_NEUTRAL
                        : wired.contains("3") ? Connection.DELTA : Connection.SINGLE);
    return new Part.OtherLoad(
        head,
        loadPins(connection),
        section.quantity("power"),
        section.quantity("current"),
        section.quantity("voltage"),
        section.quantity("power-factor"),
        section.text("category"),
        section.rating("inrush"),
        section.flagIfKnown("thermal-protector"));
  }

  private static List<String> loadPins(Connection connection) {
    return switch (connection) {
      case SINGLE -> List.of("1", "2", "PE");
      case STAR, DELTA -> List.of("1", "2", "3", "PE");
      case STAR_WITH_NEUTRAL -> List.of("1", "2", "3", "N", "PE");
    };
  }
}
