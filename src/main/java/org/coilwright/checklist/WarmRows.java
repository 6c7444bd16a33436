package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
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
    List<Part.Relay> switching =
        anatomy.parts(Part.Relay.class).stream().filter(this::switchesMains).toList();
    List<Part.Relay> contactors = switching.stream().filter(Part.Relay::isContactor).toList();
    List<Part.Relay> parts = contactors.isEmpty() ? switching : contactors;
    for (Part.Relay part : parts) {
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
                          .live(true)));
    }
    return rows;
  }

  private boolean switchesMains(Part.Relay relay) {
    return relay.contacts().stream()
        .anyMatch(
            contact ->
                anatomy.node(relay.name(), contact.from()).filter(anatomy::onMains).isPresent());
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
