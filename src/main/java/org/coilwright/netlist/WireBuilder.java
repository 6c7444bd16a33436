package org.coilwright.netlist;

import java.util.List;
import java.util.Optional;
import org.coilwright.netlist.Value.One;
import org.coilwright.netlist.Value.Section;

/** Runs and wires. */
final class WireBuilder {
  private WireBuilder() {}

  static Run run(Written<String> name, Section section) {
    return new Run(
        name.value(),
        name.mark(),
        section.quantity("length"),
        section.size("size"),
        section.quantity("insulation"),
        section.choice("installed", Method.class),
        List.copyOf(section.words("shares-with")),
        section.text("core-material"),
        section.flag("flexible"),
        section.text("insulation-material"),
        section.quantity("clamp-temperature"));
  }

  static Wire wire(Value value) {
    if (value instanceof One one) {
      Written<WirePhrase> phrase = Value.as(one.written(), WirePhrase.class);
      return new Wire(
          phrase.mark(),
          phrase.value().from(),
          phrase.value().to(),
          phrase.value().run(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty());
    }
    Section section = (Section) value;
    return new Wire(
        section.mark(),
        terminal(section, "from"),
        terminal(section, "to"),
        section.text("run"),
        section.size("size"),
        section.quantity("length"),
        section.quantity("insulation"),
        section.text("colour"),
        section.text("number"),
        section.text("insulation-material"),
        section.quantity("clamp-temperature"));
  }

  /** A pin is written as one word, so its own place is the place of that word. */
  private static Written<Terminal> terminal(Section section, String key) {
    Written<?> outer =
        section.written(key, Written.class).orElseThrow(Value.Incomplete::new).value();
    return Value.as(outer, Terminal.class);
  }
}
