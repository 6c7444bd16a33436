package org.coilwright.sizing;

import java.util.Optional;
import org.coilwright.circuit.Circuit;
import org.coilwright.netlist.Netlist;
import org.coilwright.netlist.Site;
import org.coilwright.quantity.Quantity;
import org.coilwright.solve.Study;
import org.coilwright.table.Tables;

/**
 * Studies a netlist in the air that its own devices make. Where a box and the air of its room are
 * written and the air inside is not, the losses are computed, the warmth from them, the coils anew
 * in that warmth, until it no longer moves. All that looks at the study then sees the warm box.
 */
public final class WarmBox {
  /** K; far below what anybody could measure. */
  private static final double SETTLED = 0.01;

  private static final int MOST_ROUNDS = 50;

  private WarmBox() {}

  /** The study; in the air as written where there is nothing to compute or it cannot be. */
  public static Study study(Netlist netlist, Tables tables) {
    Study plain = Study.of(Circuit.of(netlist), tables);
    Site site = netlist.site();
    if (site.enclosureAir().isPresent() || site.ambient().isEmpty() || site.enclosure().isEmpty()) {
      return plain;
    }
    return inside(plain, tables)
        .known()
        .map(heat -> plain.circuit().in(from(site.ambient().get().value(), heat.inside())))
        .map(air -> Study.of(air, tables))
        .orElse(plain);
  }

  /** The fixed point of loss and warmth for a study whose coils are where they are. */
  public static Found<BoxHeat> inside(Study study, Tables tables) {
    PowerSide side = PowerSide.of(study, tables);
    double air = study.circuit().netlist().site().ambient().map(a -> a.value().high()).orElse(0.0);
    Found<BoxHeat> heat = BoxHeat.of(side, air, tables);
    for (int round = 0; round < MOST_ROUNDS; round++) {
      Optional<BoxHeat> known = heat.known();
      if (known.isEmpty() || Math.abs(known.get().inside() - air) < SETTLED) {
        return heat;
      }
      air = known.get().inside();
      heat = BoxHeat.of(side, air, tables);
    }
    return heat;
  }

  /** From the air of the room at its coldest, all off, to the warmth that was computed. */
  private static Quantity from(Quantity room, double inside) {
    return new Quantity(
        room.dimension(), room.low(), Math.max(room.low(), room.nominal()), inside, room.kind());
  }
}
