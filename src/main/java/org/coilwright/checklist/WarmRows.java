package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.coilwright.circuit.Branch;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Terminal;
import org.coilwright.table.Cited;

/** Clamps of the contactors after an hour at full current: a loose one is the warmest. */
final class WarmRows {
  private static final String TABLE = "insulation-materials";

  private final Anatomy anatomy;
  private final Bands bands;
  private final Texts texts;

  WarmRows(Anatomy anatomy, Bands bands, Texts texts) {
    this.anatomy = anatomy;
    this.bands = bands;
    this.texts = texts;
  }

  List<Row> rows(Part load) {
    List<Row> rows = new ArrayList<>();
    for (Part part : onTheWay(load)) {
      limit(part)
          .ifPresent(
              most ->
                  rows.add(
                      Row.of(
                              texts,
                              "warm-clamps",
                              Names.of(part.name(), "after-an-hour", load.name()),
                              Expected.Band.atMost(most.value(), "°C"),
                              Reasons.of(texts.of("how.warm-clamps"), most),
                              part.name())
                          .live(true)
                          .inLine("warm." + load.name() + " " + most.value(), part.name())));
    }
    return rows;
  }

  /** Breaker, contactor and cut-out before the load, then the load. */
  private List<Part> onTheWay(Part load) {
    Set<String> protection = anatomy.protectionOf(anatomy.nodesOf(load));
    List<Part> parts = new ArrayList<>();
    for (Part part : anatomy.netlist().parts().values()) {
      boolean relay = part instanceof Part.Relay switching && switchesMains(switching);
      boolean cutOut = part instanceof Part.Thermal thermal && thermal.isCutOut() && isAt(thermal);
      if (relay || cutOut || protection.contains(part.name())) {
        parts.add(part);
      }
    }
    parts.add(load);
    return parts;
  }

  private boolean isAt(Part.Thermal thermal) {
    return thermal.poles().stream()
        .anyMatch(
            pole -> anatomy.node(thermal.name(), pole.from()).filter(anatomy::onMains).isPresent());
  }

  private boolean switchesMains(Part.Relay relay) {
    boolean contactors = anatomy.has(Part.Relay.class, Part.Relay::isContactor);
    return (relay.isContactor() || !contactors)
        && relay.contacts().stream()
            .anyMatch(
                contact ->
                    anatomy
                        .node(relay.name(), contact.from())
                        .filter(anatomy::onMains)
                        .isPresent());
  }

  /** What the core of the least warm insulation at a part may reach; PVC where none is stated. */
  private Optional<Cited<Double>> limit(Part part) {
    List<String> materials =
        anatomy.circuit().branches(Branch.Conductor.class).stream()
            .filter(c -> ends(c.wire().from().value(), part) || ends(c.wire().to().value(), part))
            .map(c -> c.insulationMaterial().orElse(anatomy.isNec() ? "pvc-60" : "pvc-70"))
            .distinct()
            .toList();
    return materials.stream()
        .flatMap(m -> bands.lookup(TABLE, Map.of("material", m), "celsius").stream())
        .min(Comparator.comparingDouble(Cited::value));
  }

  private static boolean ends(Terminal terminal, Part part) {
    return terminal.part().equals(part.name());
  }
}
