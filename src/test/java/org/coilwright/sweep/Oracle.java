package org.coilwright.sweep;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.coilwright.netlist.Netlist;

/**
 * Says what is dangerous about a circuit, by nothing but connectivity, voltages, and currents in
 * every position of its contacts. It shares no code with what it is held against.
 */
final class Oracle {
  private Oracle() {}

  /** The dangers of a circuit; none where it sees none or has no opinion. */
  static Set<Danger> dangers(Netlist netlist) {
    Set<Danger> dangers = new LinkedHashSet<>();
    Wiring wiring = new Wiring(netlist);
    Positions positions = new Positions(wiring);
    List<Moment> all = positions.all();
    List<Moment> sound = new ArrayList<>();
    for (Moment moment : all) {
      if (moment.isShort()) {
        dangers.add(new Danger(Hazard.SHORT_CIRCUIT, ""));
      } else if (moment.restless()) {
        dangers.add(new Danger(Hazard.BUZZING, ""));
      } else if (!positions.isUnsure(moment)) {
        sound.add(moment);
      }
    }
    boolean whole = sound.size() == all.size();
    StructureOracle.look(wiring, all, dangers);
    if (!dangers.contains(new Danger(Hazard.SHORT_CIRCUIT, ""))) {
      new LoadOracle(wiring, sound, dangers).look();
      new CoilOracle(wiring, sound, dangers).look(whole);
      new SupplyOracle(wiring, positions, sound, dangers).look(whole);
      new RatingOracle(wiring, sound, dangers).look();
    }
    return dangers;
  }
}
