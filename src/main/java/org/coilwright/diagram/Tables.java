package org.coilwright.diagram;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Part.ContactForm;
import org.coilwright.netlist.Part.ContactSpec;

/** What stands beneath each coil: its contacts and where they are. */
final class Tables {
  private final Extent extent;
  private final Map<Unit, List<Row>> rows = new HashMap<>();
  private double height;

  /**
   * A contact.
   *
   * @param pins as marked
   * @param form make or break, in letters
   */
  record Row(String pins, String form, String from) {}

  Tables(Fabric fabric, org.coilwright.netlist.Netlist netlist, Extent extent) {
    this.extent = extent;
    for (Unit unit : fabric.units()) {
      if (unit.look() == Look.COIL
          && netlist.parts().get(unit.part()) instanceof Part.Relay relay) {
        List<Row> contacts = new ArrayList<>();
        for (ContactSpec contact : relay.contacts()) {
          contacts.add(
              new Row(
                  contact.from() + "–" + contact.to(),
                  contact.form() == ContactForm.NC ? "NC" : "NO",
                  contact.from()));
        }
        rows.put(unit, contacts);
        height = Math.max(height, (contacts.size() + 1) * Type.LEADING + 8);
      }
    }
  }

  boolean has(Unit unit) {
    return rows.containsKey(unit);
  }

  List<Row> rows(Unit unit) {
    return rows.getOrDefault(unit, List.of());
  }

  double height() {
    return height;
  }

  double pinsWidth(Unit unit) {
    return rows(unit).stream().mapToDouble(r -> extent.text(r.pins())).max().orElse(0) + 6;
  }

  double formWidth() {
    return extent.text("NO") + 6;
  }

  double width(Unit unit) {
    return pinsWidth(unit) + formWidth() + extent.text(Notes.WIDEST_PLACE) + 6;
  }
}
