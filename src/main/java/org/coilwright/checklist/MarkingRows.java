package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.coilwright.checklist.Expected.Setting;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Written;

/** Whether the parts in the enclosure are the ones of the netlist. */
final class MarkingRows {
  private final Anatomy anatomy;
  private final Texts texts;

  MarkingRows(Anatomy anatomy, Texts texts) {
    this.anatomy = anatomy;
    this.texts = texts;
  }

  List<Row> rows() {
    List<Row> rows = new ArrayList<>();
    for (Part part : anatomy.netlist().parts().values()) {
      String marking = marking(part);
      if (!marking.isEmpty()) {
        rows.add(
            Row.of(
                    texts,
                    "read-marking",
                    Names.of(part.name(), "marking"),
                    new Setting(marking),
                    Reasons.ofNetlist(texts.of("how.as-written")),
                    part.name(),
                    part.head().label().map(l -> "(" + l + ")").orElse(""))
                .answered(Manner.LISTED));
      }
    }
    return rows;
  }

  private String marking(Part part) {
    if (part instanceof Part.Relay relay) {
      return texts.of("marking.coil", text(Optional.of(relay.coil().voltage())));
    }
    if (part instanceof Part.Protective device) {
      String kind =
          device.isRcd()
              ? device.kind().map(k -> texts.of("marking.rcd-type", k.text())).orElse("")
              : device.curve().map(c -> texts.of("marking.curve", c.text())).orElse("");
      return joined(kind, text(device.rating()), text(device.trip()), poles(device));
    }
    if (part instanceof Part.Fuse fuse) {
      return text(fuse.rating());
    }
    if (part instanceof Part.Heater heater) {
      String connection =
          heater.connection().value() == Part.Connection.SINGLE
              ? ""
              : texts.of("connection." + Texts.key(heater.connection().value()));
      return joined(text(heater.power()), text(heater.voltage()), connection);
    }
    if (part instanceof Part.OtherLoad load) {
      return joined(text(load.power()), text(load.current()), text(load.voltage()));
    }
    if (part instanceof Part.Thermal thermal) {
      return joined(
          text(thermal.opensAt()),
          thermal.reset().map(r -> texts.of("marking.reset", r.text())).orElse(""));
    }
    if (part instanceof Part.DcSupply supply) {
      return text(supply.output().voltage());
    }
    return "";
  }

  private String poles(Part.Protective device) {
    long lines = device.poles().stream().filter(p -> !p.neutral()).count();
    return texts.of(
        lines == device.poles().size() ? "marking.poles" : "marking.poles-and-neutral", lines);
  }

  private String text(Optional<? extends Written<?>> written) {
    return written.map(w -> texts.figure(w.text())).orElse("");
  }

  private static String joined(String... parts) {
    return Arrays.stream(parts).filter(p -> !p.isBlank()).collect(Collectors.joining(", "));
  }
}
