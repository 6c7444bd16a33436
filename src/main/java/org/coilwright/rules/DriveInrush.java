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
import org.coilwright.table.Cited;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** A contact makes more than its category allows while the coils behind it pull in. */
final class DriveInrush implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("drive.inrush", Weight.FIX, "pick-up current above what the contact may make")
          .what(
              "Raised for each contact that closes on more than its rated current times the making"
                  + " multiple of that rating's category, all coils behind it pulling in together.")
          .why(
              "A contact that closes on too much bounces in its own arc and welds, mostly on the"
                  + " first cold morning.")
          .remedy("Take a contact of a heavier category, or an interposing relay.")
          .blind(
              "Where in the cycle the contact closes; data sheets that allow more than the category"
                  + " asks for.")
          .sources("control-classifications", "contactor-making-table", "iec-60947-5-1")
          .consequenceOf(
              "drive.current",
              "coil.wrong-current-kind",
              "wiring.short-circuit",
              "separation.mains-meets-elv");

  private final Tables tables;

  DriveInrush(Tables tables) {
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
    if (found.get().isBelow(contact, tables)) {
      // the rating says nothing about this voltage, and drive.voltage says so
      return Optional.empty();
    }
    return Optional.of(compare(contact, found.get()));
  }

  private Outcome compare(DrivingContact contact, Cover cover) {
    Cited<Double> multiple = cover.makeMultiple(tables);
    Optional<CoilFeed> silent =
        contact.coils().stream()
            .filter(feed -> feed.isAlternating() && feed.spec().pickUp().isEmpty())
            .findFirst();
    Cited<Double> guess = tables.figure("coil.pick-up-multiple");
    double making = contact.makeAmps();
    double worst =
        contact.worstFactor()
            * (silent.isPresent() ? Math.max(making, contact.amps() * guess.value()) : making);
    double rated = ContactSheet.ratedAmps(cover.rating());
    // what it may carry it may also make: then the category's multiple need not be relied on
    boolean asRated = !Comparison.exceeds(worst, rated);
    double limit = asRated ? rated : multiple.value() * rated;
    Basis basis =
        asRated
            ? new Basis(List.of(tables.source("part-data").cite()), Standing.PUBLISHED)
            : Basis.of(multiple);
    Subject subject = new Subject(FACTS, cover.rating().mark(), contact.at());
    Printed.Pair amps = Printed.pair(worst, limit, Dimension.CURRENT);
    if (!Comparison.exceeds(worst, limit)) {
      String taken =
          silent
              .map(
                  feed ->
                      "; pick-up of %s is not given, taken as %s times what it holds with"
                          .formatted(feed.relay(), Printed.of(guess.value(), Dimension.COUNT)))
              .orElse("");
      return subject.satisfied(
          "%s makes %s at worst for %s and may make %s (%s%s%s)."
              .formatted(
                  contact.name(),
                  amps.value(),
                  contact.coilNames(),
                  amps.limit(),
                  asRated ? "" : Printed.of(multiple.value(), Dimension.COUNT) + " times ",
                  cover.words(),
                  taken),
          new Measure(worst, "A"),
          new Measure(limit, "A"),
          silent.isPresent() ? basis.and(Basis.of(guess)) : basis);
    }
    if (silent.isPresent()) {
      return new Subject(FACTS, silent.get().coil().mark(), contact.at())
          .undecided(
              "coil.pick-up of " + silent.get().relay(),
              "What %s makes while %s pulls in cannot be told."
                  .formatted(contact.name(), contact.coilNames()));
    }
    Subject.Finding finding =
        subject
            .violated(
                "%s makes too much for %s".formatted(contact.name(), contact.coilNames()),
                "Pulling in takes %s at worst, and the contact may make %s (%s times %s): too much by %s."
                    .formatted(
                        amps.value(),
                        amps.limit(),
                        Printed.of(multiple.value(), Dimension.COUNT),
                        cover.words(),
                        amps.apart()),
                "may make " + amps.limit())
            .measured(new Measure(worst, "A"), new Measure(limit, "A"));
    contact
        .coils()
        .forEach(
            feed ->
                finding.alsoAt(
                    feed.spec().pickUp().map(p -> p.mark()).orElse(feed.coil().mark()),
                    "pulls in with this"));
    return finding.change(Cover.better(contact, tables)).todo(Cover.cure(contact, tables), basis);
  }
}
