package org.coilwright.rules;

import java.util.List;
import java.util.Optional;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.Site;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Quantity;
import org.coilwright.rule.Basis;
import org.coilwright.sizing.BoxHeat;
import org.coilwright.sizing.Found;
import org.coilwright.sizing.WarmBox;
import org.coilwright.solve.Study;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/**
 * The air around the devices: as written, computed from the losses in the box, or that of the room.
 *
 * @param coldest °C, all off
 * @param celsius at its warmest
 * @param words how that is known
 * @param where what decides it
 */
record InsideAir(double coldest, double celsius, String words, Basis basis, Optional<Mark> where) {

  /** Kept with the study. */
  private record Known(Found<InsideAir> air) {}

  /** Of a study; worked out once for the rules that ask. */
  static Found<InsideAir> of(Study study, Tables tables) {
    return study.derived(Known.class, s -> new Known(workedOut(s, tables))).air();
  }

  private static Found<InsideAir> workedOut(Study study, Tables tables) {
    Site site = study.circuit().netlist().site();
    Optional<Written<Quantity>> written = site.enclosureAir();
    Optional<Written<Quantity>> room = site.ambient();
    if (written.isEmpty() && room.isPresent() && site.enclosure().isPresent()) {
      Found<BoxHeat> heat = WarmBox.inside(study, tables);
      if (heat instanceof Found.Unknown<BoxHeat> unknown) {
        return new Found.Unknown<>(unknown.missing(), unknown.why(), unknown.settledBy());
      }
      BoxHeat known = heat.known().orElseThrow();
      return new Found.Known<>(
          new InsideAir(
              room.get().value().low(),
              known.inside(),
              known.words(),
              Basis.of(known.cited()),
              site.enclosure().map(Site.Enclosure::mark)));
    }
    Optional<Written<Quantity>> air = written.or(() -> room);
    if (air.isEmpty()) {
      return new Found.Unknown<>("site.ambient", "No air temperature is written.");
    }
    return new Found.Known<>(
        new InsideAir(
            air.get().value().low(),
            air.get().value().high(),
            written.isPresent() ? "air inside as written" : "air of the room, no box is written",
            new Basis(List.of(tables.source("part-data").cite()), Standing.PUBLISHED),
            air.map(Written::mark)));
  }
}
