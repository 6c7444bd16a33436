package org.coilwright.checklist;

import java.util.List;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Mistake;
import org.coilwright.netlist.Terminal;
import org.coilwright.netlist.Wire;
import org.coilwright.netlist.Written;

/** What an electrician would call a wiring mistake. */
final class MistakeWords {
  private final List<Wire> wires;
  private final Texts texts;

  MistakeWords(Circuit circuit, Texts texts) {
    this.wires = circuit.netlist().wires();
    this.texts = texts;
  }

  /** Without a full stop. */
  String of(Mistake mistake) {
    List<Terminal> pins = mistake.pins();
    return switch (mistake.kind()) {
      case LEFT_OUT -> texts.of("mistake.left-out", wire(mistake.wires().get(0)));
      case MOVED ->
          texts.of("mistake.moved", wire(mistake.wires().get(0)), pins.get(1), pins.get(0));
      case TURNED -> texts.of("mistake.turned", pins.get(0).part());
      case SUPPLY_REVERSED -> texts.of("mistake.supply-reversed", pins.get(0), pins.get(1));
      case SWAPPED ->
          mistake
              .run()
              .map(run -> texts.of("mistake.swapped-cores", one(mistake), other(mistake), run))
              .orElseGet(
                  () ->
                      texts.of(
                          "mistake.swapped",
                          one(mistake),
                          other(mistake),
                          pins.get(0).part(),
                          pins.get(0).pin(),
                          pins.get(1).pin()));
    };
  }

  private String one(Mistake swapped) {
    return wire(swapped.laid().get(0).wire());
  }

  private String other(Mistake swapped) {
    return wire(swapped.laid().get(1).wire());
  }

  /** By its number in the wiring list, and its ends. */
  String wire(int index) {
    Wire wire = wires.get(index);
    return texts.of(
        "mistake.wire",
        wire.number().map(Written::text).orElseGet(() -> String.valueOf(index + 1)),
        wire.from().value(),
        wire.to().value());
  }
}
