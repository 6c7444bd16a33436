package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.coilwright.netlist.Part;
import org.coilwright.quantity.Comparison;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Quantity;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Measure;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.sizing.Making;
import org.coilwright.sizing.PowerSide.Demand;
import org.coilwright.solve.Study;
import org.coilwright.table.Cited;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** A load's inrush is above what the contact may make. */
final class ContactorMaking implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("contactor.making", Weight.STOP, "inrush above the making capacity")
          .what(
              "Multiplies the load's worst current by its inrush, as written or by kind of load, or"
                  + " takes the amperes that are written, and holds it against the rating times"
                  + " what its category makes. A rating in AC-6a is one for transformers whose peak"
                  + " is up to 30 times the rated one.")
          .why("A contact that bounces on too much current welds at the first start.")
          .remedy("Take a larger rating, or a device rated in the category of the load.")
          .blind(
              "Peaks shorter than a millisecond, for which the maker gives a number of devices;"
                  + " poles in parallel, which make no more than one.")
          .sources("contactor-making-table", "load-inrush-data", "common-practice")
          .consequenceOf("wiring.short-circuit", "contactor.category", "contactor.current")
          .carriedBy("load.wrong-voltage");

  private final PowerSides sides;
  private final Tables tables;

  ContactorMaking(PowerSides sides) {
    this.sides = sides;
    this.tables = sides.tables();
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    return ByShaft.open(
        study,
        sides,
        LoadContact.ask(
            sides,
            study,
            c -> c.fit(tables).flatMap(fit -> c.demand().map(d -> judge(c, fit, d)))));
  }

  private static Optional<Quantity> written(Part load) {
    return load instanceof Part.OtherLoad other
        ? other.inrush().map(inrush -> inrush.value().amount())
        : Optional.empty();
  }

  /** What a load draws at first: over its steady current, or in A where it is written so. */
  private Optional<Cited<Double>> inrush(LoadContact contact, Part load) {
    Optional<Quantity> written = written(load);
    if (written.isPresent()) {
      return Optional.of(
          new Cited<>(
              written.get().high(), tables.source("part-data"), "inrush", Standing.PUBLISHED));
    }
    return contact.covering(load, tables).stream()
        .flatMap(r -> r.word("inrush").stream())
        .findFirst()
        .flatMap(kind -> Making.inrush(kind.value(), tables));
  }

  private static String words(double most, double amps, Demand demand) {
    String written = Printed.of(amps, Dimension.CURRENT);
    String times =
        "%s × %s"
            .formatted(
                Printed.of(demand.worst(), Dimension.CURRENT), Printed.of(most, Dimension.COUNT));
    return most == 0
        ? "its inrush as written"
        : amps == 0 ? times : "%s + %s as written".formatted(times, written);
  }

  private Outcome judge(LoadContact contact, LoadContact.Fit fit, Demand demand) {
    Subject subject = new Subject(FACTS, fit.rating().mark(), contact.subject(FACTS).at());
    Optional<Cited<Double>> multiple = Making.makes(fit.category(), tables);
    if (multiple.isEmpty()) {
      return subject.undecided(
          "making capacity of " + contact.name(),
          "No table says what a contact rated %s makes%s."
              .formatted(
                  fit.category(),
                  Making.whyNot(fit.category(), tables).map(why -> ": " + why).orElse("")));
    }
    List<Cited<?>> cited = new ArrayList<>(List.of(multiple.get()));
    double most = 0;
    double amps = 0;
    for (Part load : contact.loads()) {
      Optional<Cited<Double>> inrush = inrush(contact, load);
      if (inrush.isEmpty()) {
        return subject.undecided(
            "inrush of " + load.name(),
            "What %s has to make is open: %s does not say its inrush."
                .formatted(contact.name(), load.name()));
      }
      cited.add(inrush.get());
      if (written(load).filter(w -> w.dimension() == Dimension.CURRENT).isPresent()) {
        amps += inrush.get().value();
      } else {
        most = Math.max(most, Math.max(1, inrush.get().value()));
      }
    }
    double makes = multiple.get().value() * fit.amps();
    double peak = Math.max(demand.worst(), most * demand.worst() + amps);
    Printed.Pair pair = Printed.pair(peak, makes, Dimension.CURRENT);
    Measure value = new Measure(peak, "A");
    Measure limit = new Measure(makes, "A");
    String inrush = words(most, amps, demand);
    String capacity =
        "%s × %s (%s)"
            .formatted(
                Printed.of(fit.amps(), Dimension.CURRENT),
                Printed.of(multiple.get().value(), Dimension.COUNT),
                fit.category());
    if (!Comparison.exceeds(peak, makes)) {
      return subject.satisfied(
          "%s makes %s for %s (%s) and may make %s (%s)."
              .formatted(
                  contact.name(), pair.value(), demand.names(), inrush, pair.limit(), capacity),
          value,
          limit,
          Basis.of(cited));
    }
    Subject.Finding finding =
        subject
            .violated(
                "%s may weld when it closes on %s".formatted(contact.name(), demand.names()),
                "It makes %s (%s) and may make %s (%s): too much by %s."
                    .formatted(pair.value(), inrush, pair.limit(), capacity, pair.apart()),
                "may make " + pair.limit())
            .measured(value, limit);
    contact
        .loads()
        .forEach(l -> finding.alsoAt(l.head().mark(), "draws " + pair.value() + " at first"));
    String needed = Printed.atLeast(peak / multiple.get().value(), Dimension.CURRENT);
    finding.change(
        NewRating.of(contact.ratings(), fit.category(), NewRating.amps(fit.rating(), needed)));
    return finding.todo(
        "Take %s of %s or more, or a device that its maker rates for this load."
            .formatted(fit.category(), needed),
        Basis.of(cited));
  }
}
