package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import org.coilwright.rule.Rule;
import org.coilwright.table.Tables;

/** Every rule there is, in the order in which they are explained and run. */
public final class AllRules {
  private AllRules() {}

  /** All rules on these tables. */
  public static List<Rule> of(Tables tables) {
    List<Rule> all = new ArrayList<>();

    // wiring
    all.add(new WiringReservedPin(tables));
    all.add(new WiringUnusedPart(tables));

    // coil
    all.add(new CoilWrongCurrentKind(tables));
    all.add(new CoilReversed(tables));
    all.add(new CoilNeverOn(tables));
    all.add(new CoilAlwaysOn(tables));

    // drive

    // supply

    // suppression

    // separation

    // poles

    // record

    return List.copyOf(all);
  }
}
