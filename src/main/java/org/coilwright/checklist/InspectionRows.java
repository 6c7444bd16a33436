package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.coilwright.checklist.Expected.Seen;
import org.coilwright.checklist.Expected.State;
import org.coilwright.netlist.Part;

/** What is looked at before anything is measured: no reading tells it. */
final class InspectionRows {
  private final Anatomy anatomy;
  private final Texts texts;

  InspectionRows(Anatomy anatomy, Texts texts) {
    this.anatomy = anatomy;
    this.texts = texts;
  }

  List<Row> rows() {
    List<Row> rows = new ArrayList<>();
    rows.add(row("look-ends"));
    rows.add(row("look-enclosure"));
    String thermals =
        anatomy.parts(Part.Thermal.class).stream()
            .map(Part::name)
            .collect(Collectors.joining(", "));
    if (!thermals.isEmpty() && Condition.VESSEL.holds(anatomy)) {
      rows.add(row("look-sensors", thermals));
    }
    if (Condition.ELV_AND_MAINS.holds(anatomy)) {
      rows.add(row("look-separation"));
    }
    if (Condition.VESSEL.holds(anatomy)) {
      rows.add(row("look-bonding"));
    }
    rows.add(row("look-labels"));
    return rows;
  }

  private Row row(String kind, Object... arguments) {
    return Row.of(
        texts,
        kind,
        Names.of("inspection", kind),
        new Seen(State.SOUND),
        Reasons.ofNetlist(texts.of("how.inspection")),
        arguments);
  }
}
