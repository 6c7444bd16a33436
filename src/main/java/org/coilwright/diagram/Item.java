package org.coilwright.diagram;

import java.util.List;
import org.coilwright.drawing.Shape;

/**
 * A piece of a sheet and what it is, so that it can be found again and measured.
 *
 * @param of what it stands for: {@code K1 coil}, {@code wire 3}, {@code F1.2}
 */
record Item(Kind kind, String of, List<Shape> shapes) {
  /** What a piece is. */
  enum Kind {
    SYMBOL,
    /** A conductor; its number follows, from 1, in the order of the netlist. */
    WIRE,
    /** A terminal drawn long, because several conductors land on it. */
    BAR,
    /** Text that belongs to a symbol. */
    SYMBOL_TEXT,
    /** The designation of a pin: part and pin, with a dot between. */
    PIN,
    /** Text that belongs to a conductor. */
    WIRE_TEXT,
    /** A number that stands for a finding. */
    MARKER,
    TABLE,
    FRAME
  }

  /** The same scaled, then moved. */
  Item at(double scale, double dx, double dy) {
    return new Item(
        kind,
        of,
        shapes.stream().map(s -> (scale == 1 ? s : s.scaled(scale)).moved(dx, dy)).toList());
  }
}
