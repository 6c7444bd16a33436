package org.coilwright.rules;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Words;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.solve.Study;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** A residual-current device is relied on and neutral is joined to earth nowhere ahead of it. */
final class ProtectionIslandNoBond implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of(
              "protection.island-no-bond",
              Weight.STOP,
              "residual-current device without a bond in an island")
          .what(
              "Looks at each residual-current device that lies in every line of a load which the"
                  + " source of `site.island` feeds, and at who joins neutral and earth while the"
                  + " mains are off: `neutral-bond`. The bond has to lie on the source's side of"
                  + " the device.")
          .why(
              "Without that bond an earth fault drives no current back to the source: the device"
                  + " never opens, whatever its test button does.")
          .remedy(
              "Let the inverter join neutral and earth when it leaves the mains, and part them when"
                  + " it comes back.")
          .blind(
              "Whether the bond really closes, which is measured on site; a bond that stays closed"
                  + " when the mains are back.")
          .sources("island-earthing", "island-residual");

  private final PowerSides sides;
  private final Basis basis;

  ProtectionIslandNoBond(PowerSides sides) {
    this.sides = sides;
    Tables tables = sides.tables();
    basis = Basis.of(FACTS, tables, Standing.PUBLISHED);
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    return IslandView.ask(study, sides, FACTS, this::judge);
  }

  private List<Outcome> judge(IslandView island) {
    Map<Part.Protective, List<String>> relied = new LinkedHashMap<>();
    for (Part load : island.loads()) {
      island
          .residual(load)
          .forEach(d -> relied.computeIfAbsent(d, k -> new ArrayList<>()).add(load.name()));
    }
    List<Outcome> outcomes = new ArrayList<>();
    relied.forEach((device, loads) -> outcomes.add(judge(island, device, loads)));
    return outcomes;
  }

  private Outcome judge(IslandView island, Part.Protective device, List<String> loads) {
    List<String> at = new ArrayList<>(List.of(device.name()));
    at.addAll(loads);
    Mark mark = island.written().neutralBond().map(Written::mark).orElse(island.written().mark());
    Subject subject = new Subject(FACTS, device.head().mark(), List.copyOf(at));
    if (island.written().neutralBond().isEmpty()) {
      return subject.undecided(
          "site.island.neutral-bond",
          "Whether %s can open in island operation is open: who joins neutral and earth then is not written."
              .formatted(device.name()));
    }
    String bond = island.written().neutralBond().get().value();
    if (island.isBehindBond(device)) {
      return subject.satisfied(
          "In island operation neutral and earth are joined ahead of %s (%s)."
              .formatted(device.name(), bond),
          basis);
    }
    return subject
        .violated(
            "%s cannot open in island operation".formatted(device.name()),
            bond.equals("none")
                ? "Neutral and earth are then joined nowhere: an earth fault at %s drives nothing back that %s could see."
                    .formatted(Words.all(loads), device.name())
                : "Neutral and earth are joined at the origin, and the source's neutral gets there only through %s, which then sees as much return as go."
                    .formatted(device.name()),
            "never opens then")
        .alsoAt(mark, "neutral-bond: " + bond)
        .change(island.written().neutralBond(), "by-inverter")
        .todo(
            bond.equals("none")
                ? "Let the inverter join neutral and earth when it leaves the mains, and write"
                    + " neutral-bond: by-inverter."
                : "Bring the source in ahead of %s, or let the inverter itself join neutral and earth: neutral-bond: by-inverter."
                    .formatted(device.name()),
            basis);
  }
}
