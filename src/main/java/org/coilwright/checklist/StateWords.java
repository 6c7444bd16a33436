package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.List;
import org.coilwright.netlist.Part;
import org.coilwright.solve.State;

/** Positions of contacts in words. */
final class StateWords {
  private final Anatomy anatomy;
  private final Texts texts;

  StateWords(Anatomy anatomy, Texts texts) {
    this.anatomy = anatomy;
    this.texts = texts;
  }

  /** Every position of a state: {@code U1.heat on, B1 closed}. */
  String of(State state) {
    return of(state, anatomy.study().columns());
  }

  /** Some positions of a state. */
  String of(State state, List<String> columns) {
    List<String> words = new ArrayList<>();
    for (String column : columns) {
      boolean operated = state.positions().getOrDefault(column, false);
      words.add(column + " " + position(column, operated));
    }
    return String.join(", ", words);
  }

  /** How a position is called, by what kind of contact it is. */
  String position(String column, boolean operated) {
    Part part = anatomy.netlist().parts().get(column);
    if (part instanceof Part.Thermal) {
      return texts.of(operated ? "position.closed" : "position.open");
    }
    if (part instanceof Part.Switch) {
      return texts.of(operated ? "position.operated" : "position.at-rest");
    }
    return texts.of(operated ? "position.on" : "position.off");
  }
}
