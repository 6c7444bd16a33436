package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Site;
import org.coilwright.netlist.Written;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.solve.Study;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** A residual-current device where neutral and protective conductor are one. */
final class ProtectionRcdInTnC implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("protection.rcd-in-tn-c", Weight.FIX, "residual-current device in a TN-C system")
          .what("Looks for residual-current devices where the earthing is written as TN-C.")
          .why(
              "Neutral and protective conductor are one there: the current of an earth fault comes"
                  + " back through the device, which sees none.")
          .remedy(
              "Part the PEN conductor into neutral and protective conductor ahead of the device,"
                  + " and write TN-C-S.")
          .blind(
              "A PEN conductor behind the device in a TN-C-S system: poles.neutral-earthed tells"
                  + " that.")
          .sources("iec-60364-4-41");

  private final Basis basis;

  ProtectionRcdInTnC(Tables tables) {
    basis =
        new Basis(
            List.of(tables.source("iec-60364-4-41").cite() + ", 411.4.5"), Standing.PUBLISHED);
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    Optional<Written<String>> earthing =
        study.circuit().netlist().site().mains().flatMap(Site.MainsSupply::earthing);
    List<Outcome> outcomes = new ArrayList<>();
    for (Part.Protective device : ResidualDevices.of(study.circuit())) {
      Subject subject = Subject.of(FACTS, device.head().mark(), device.name());
      if (earthing.isEmpty()) {
        outcomes.add(
            subject.undecided(
                "site.mains.earthing",
                "Whether %s sees earth faults is open: which earthing system the mains has is not written."
                    .formatted(device.name())));
      } else if (!earthing.get().value().equals("TN-C")) {
        outcomes.add(
            subject.satisfied(
                "%s stands in a %s system, where the protective conductor does not pass it."
                    .formatted(device.name(), earthing.get().value()),
                basis));
      } else {
        outcomes.add(
            subject
                .violated(
                    "%s stands in a TN-C system".formatted(device.name()),
                    "The PEN conductor brings the current of an earth fault back through %s: it sees none and stays closed."
                        .formatted(device.name()),
                    "sees no earth fault here")
                .alsoAt(earthing.get().mark(), "neutral and earth are one")
                .change(earthing, "TN-C-S")
                .todo(
                    "Part the PEN conductor ahead of %s and write earthing: TN-C-S."
                        .formatted(device.name()),
                    basis));
      }
    }
    return outcomes;
  }
}
