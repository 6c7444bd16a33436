package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.coilwright.checklist.Expected.Setting;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Written;

/** Whether the parts in the enclosure are the ones of the netlist. */
final class MarkingRows {
  private final Anatomy anatomy;

  MarkingRows(Anatomy anatomy) {
    this.anatomy = anatomy;
  }

  List<Row> rows() {
    List<Row> rows = new ArrayList<>();
    for (Part part : anatomy.netlist().parts().values()) {
      String marking = marking(part);
      if (!marking.isEmpty()) {
        rows.add(
            Row.dead(
                Names.of(part.name(), "marking"),
                "Read the marking of " + part.name(),
                part.head().label().map(l -> "(" + l + ")").orElse(""),
                new Setting(marking),
                "fit the part listed, or check the netlist again with the one that is there.",
                Reasons.ofNetlist("as written in the netlist")));
      }
    }
    return rows;
  }

  private static String marking(Part part) {
    if (part instanceof Part.Relay relay) {
      return "coil " + relay.coil().voltage().text();
    }
    if (part instanceof Part.Protective device) {
      String kind =
          device.isRcd() ? "type " + text(device.kind()) : "curve " + text(device.curve());
      return joined(kind, text(device.rating()), text(device.trip()), poles(device));
    }
    if (part instanceof Part.Fuse fuse) {
      return text(fuse.rating());
    }
    if (part instanceof Part.Heater heater) {
      String connection =
          heater.connection().value() == Part.Connection.SINGLE
              ? ""
              : heater.connection().value().name().toLowerCase(Locale.ROOT).replace('_', ' ');
      return joined(text(heater.power()), text(heater.voltage()), connection);
    }
    if (part instanceof Part.OtherLoad load) {
      return joined(text(load.power()), text(load.current()), text(load.voltage()));
    }
    if (part instanceof Part.DcSupply supply) {
      return text(supply.output().voltage());
    }
    return "";
  }

  private static String poles(Part.Protective device) {
    long lines = device.poles().stream().filter(p -> !p.neutral()).count();
    String words = lines + (lines == 1 ? " pole" : " poles");
    return lines == device.poles().size() ? words : words + " and N";
  }

  private static String text(Optional<? extends Written<?>> written) {
    return written.map(Written::text).orElse("");
  }

  private static String joined(String... parts) {
    return Arrays.stream(parts)
        .filter(p -> !p.isBlank() && !p.equals("curve ") && !p.equals("type "))
        .collect(Collectors.joining(", "));
  }
}
