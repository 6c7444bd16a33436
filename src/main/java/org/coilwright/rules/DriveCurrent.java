package org.coilwright.rules;

import java.util.List;
import java.util.Optional;
import org.coilwright.quantity.Comparison;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Measure;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.solve.Study;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** A contact carries more coil current than its rating for that kind of load. */
final class DriveCurrent implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("drive.current", Weight.STOP, "contact overloaded by coils")
          .what(
              "Raised for each contact that carries more current for the coils behind it than its"
                  + " rating for electromagnets allows, or its resistive rating where it has no"
                  + " other.")
          .why("The contact overheats and welds: what it switches stays on.")
          .remedy("Take a contact with a higher rating, or an interposing relay.")
          .blind(
              "The current of a load that the same contact switches; contacts that switch a load"
                  + " and no coil; how often it switches.")
          .sources("control-classifications", "category-overview", "circuit-theory")
          .consequenceOf(
              "coil.wrong-current-kind", "wiring.short-circuit", "separation.mains-meets-elv");

  private final Tables tables;

  DriveCurrent(Tables tables) {
    this.tables = tables;
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    return PerContact.ask(study, FACTS, this::judge);
  }

  private Optional<Outcome> judge(DrivingContact contact) {
    Optional<Cover> found = Cover.of(contact, tables);
    if (found.isEmpty()) {
      return PerContact.noRating(FACTS, contact);
    }
    Cover cover = found.get();
    Subject subject = new Subject(FACTS, cover.rating().mark(), contact.at());
    double worst = contact.amps() * contact.worstFactor();
    double rated = ContactSheet.ratedAmps(cover.rating());
    Basis basis =
        new Basis(
            List.of(tables.source("part-data").cite(), tables.source("circuit-theory").cite()),
            Standing.PUBLISHED);
    Printed.Pair amps = Printed.pair(worst, rated, Dimension.CURRENT);
    Measure value = new Measure(worst, "A");
    Measure limit = new Measure(rated, "A");
    if (Comparison.exceeds(worst, rated)) {
      Subject.Finding finding =
          subject
              .violated(
                  "%s carries too much for %s".formatted(contact.name(), contact.coilNames()),
                  "%s at worst, and %s allows %s: too much by %s."
                      .formatted(amps.value(), cover.words(), amps.limit(), amps.apart()),
                  "may carry " + amps.limit())
              .measured(value, limit);
      contact.coils().forEach(feed -> finding.alsoAt(feed.coil().mark(), "its current flows here"));
      finding.change(Cover.better(contact, tables));
      return Optional.of(
          finding
              .detail("Worst case: supply at its highest, coil resistance at its lowest.")
              .todo(Cover.cure(contact, tables), basis));
    }
    if (cover.isBelow(contact, tables)) {
      // the rating says nothing about this voltage, and drive.voltage says so
      return Optional.empty();
    }
    return Optional.of(
        subject.satisfied(
            "%s carries %s at worst for %s and may carry %s (%s)."
                .formatted(
                    contact.name(), amps.value(), contact.coilNames(), amps.limit(), cover.words()),
            value,
            limit,
            basis));
  }
}
