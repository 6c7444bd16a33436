package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Comparison;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Quantity;
import org.coilwright.quantity.Rating;
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

/** A contact switches less than it needs to stay clean. */
final class DriveBelowLeastLoad implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("drive.below-least-load", Weight.NOTE, "below the contact's least load")
          .what(
              "Raised for each contact that switches a coil with less current, less voltage or,"
                  + " where one is stated, less power than its least load.")
          .why(
              "Too little voltage and current do not break through the film on the contact: after"
                  + " months it closes and nothing happens.")
          .remedy("Take a contact for small loads, such as a gold-plated one, or load it more.")
          .blind(
              "Dust, gas and how seldom the contact moves; main poles of contactors, which loads"
                  + " keep clean.")
          .sources("contactor-data", "common-practice")
          .consequenceOf("coil.wrong-current-kind", "separation.mains-meets-elv");

  /** Where the supply folds back whenever the contact is closed, the overload is the cause. */
  private static final RuleFacts OVERLOADED = FACTS.alsoConsequenceOf("supply.overloaded");

  private final Tables tables;

  DriveBelowLeastLoad(Tables tables) {
    this.tables = tables;
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    return PerContact.ask(
        study,
        FACTS,
        // the load of a main pole keeps it clean, and makers state no least load for one
        contact -> contact.contact().pole() ? Optional.empty() : Optional.of(judge(contact)));
  }

  /** A least load, each part of it as far as it is known. */
  private record Least(
      Optional<Double> amps,
      Optional<Double> volts,
      Optional<Double> watts,
      Mark mark,
      String words,
      Basis basis) {}

  /** One figure that is held against one part of the least load. */
  private record Part(double value, double limit, Dimension dimension) {
    boolean isShort() {
      return Comparison.fallsShort(value, limit);
    }

    String words() {
      Printed.Pair pair = Printed.pair(value, limit, dimension);
      return "%s where it needs %s".formatted(pair.value(), pair.limit());
    }
  }

  private Outcome judge(DrivingContact contact) {
    Optional<Least> found = least(contact);
    if (found.isEmpty()) {
      return PerContact.subject(FACTS, contact)
          .undecided(
              "least-load of " + contact.name(),
              "Whether %s is enough for %s to stay clean cannot be told."
                  .formatted(contact.coilNames(), contact.name()));
    }
    Least least = found.get();
    double sag = SourceVolts.sag(contact.sources());
    double amps = contact.leastAmps() * sag;
    double volts = contact.volts() * sag;
    List<Part> parts = new ArrayList<>();
    least.amps().ifPresent(limit -> parts.add(new Part(amps, limit, Dimension.CURRENT)));
    least.volts().ifPresent(limit -> parts.add(new Part(volts, limit, Dimension.VOLTAGE)));
    least.watts().ifPresent(limit -> parts.add(new Part(amps * volts, limit, Dimension.POWER)));
    Subject subject =
        new Subject(contact.supplyFolds() ? OVERLOADED : FACTS, least.mark(), contact.at());
    Optional<Part> shortest = parts.stream().filter(Part::isShort).findFirst();
    Part shown = shortest.orElse(parts.get(0));
    Measure value = new Measure(shown.value(), shown.dimension().baseUnit());
    Measure limit = new Measure(shown.limit(), shown.dimension().baseUnit());
    if (shortest.isEmpty()) {
      return subject.satisfied(
          "%s switches at least %s at %s for %s and needs %s."
              .formatted(
                  contact.name(),
                  Printed.amps(amps),
                  Printed.volts(volts),
                  contact.coilNames(),
                  least.words()),
          value,
          limit,
          least.basis());
    }
    Subject.Finding finding =
        subject
            .violated(
                "%s switches less than it needs".formatted(contact.name()),
                "For %s it switches %s (least load %s)."
                    .formatted(
                        contact.coilNames(),
                        String.join(
                            " and ",
                            parts.stream().filter(Part::isShort).map(Part::words).toList()),
                        least.words()),
                "needs " + least.words())
            .measured(value, limit);
    contact.coils().forEach(feed -> finding.alsoAt(feed.coil().mark(), "draws this little"));
    return finding
        .detail("Supply at its lowest.")
        .todo(
            "Take a contact for small loads (gold-plated or bifurcated) for %s, or a coil that draws more."
                .formatted(contact.coilNames()),
            least.basis());
  }

  private Optional<Least> least(DrivingContact contact) {
    Optional<Written<Rating>> written = contact.sheet().leastLoad();
    if (written.isPresent()) {
      Quantity amount = written.get().value().amount();
      boolean power = amount.dimension() != Dimension.CURRENT;
      Optional<Double> least = Optional.of(amount.high());
      return Optional.of(
          new Least(
              power ? Optional.empty() : least,
              written.get().value().at().map(Quantity::high),
              power ? least : Optional.empty(),
              written.get().mark(),
              written.get().text(),
              new Basis(List.of(tables.source("part-data").cite()), Standing.PUBLISHED)));
    }
    if (!contact.sheet().isAuxiliary()) {
      return Optional.empty();
    }
    Cited<Double> amps = tables.figure("drive.auxiliary-least-current");
    Cited<Double> volts = tables.figure("drive.auxiliary-least-voltage");
    return Optional.of(
        new Least(
            Optional.of(amps.value()),
            Optional.of(volts.value()),
            Optional.empty(),
            contact.contact().mark(),
            "%s at %s, usual for auxiliary contacts because the part gives none"
                .formatted(Printed.amps(amps.value()), Printed.volts(volts.value())),
            Basis.of(amps, volts)));
  }
}
