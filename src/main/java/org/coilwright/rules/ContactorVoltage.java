package org.coilwright.rules;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
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

/** A contact is rated for less voltage than it breaks. */
final class ContactorVoltage implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("contactor.voltage", Weight.STOP, "contact rated for too little voltage")
          .what(
              "Holds the nominal voltage of the load's supply, line to line where the load hangs on"
                  + " several lines, against the voltage that the contact's rating is given at. A"
                  + " contact that has ratings, none of them for this kind of current or all of"
                  + " them for less voltage, is raised too.")
          .why("The arc does not go out: the contact burns and may stay closed for good.")
          .remedy(
              "Take a device rated for the voltage between the lines and for this kind of current.")
          .blind("Switching surges; the tolerance of the supply, which the rating includes.")
          .sources("part-data", "contactor-thin-air")
          .consequenceOf("wiring.short-circuit", "contactor.current");

  private final PowerSides sides;
  private final Tables tables;

  ContactorVoltage(PowerSides sides) {
    this.sides = sides;
    this.tables = sides.tables();
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    return LoadContact.ask(sides, study, this::judge);
  }

  private Optional<Outcome> judge(LoadContact contact) {
    if (contact.ratings().byCategory().isEmpty()) {
      return Optional.of(contact.withoutRating(FACTS));
    }
    RatedKind kind = contact.ratedKind();
    Optional<LoadContact.Fit> fit = contact.fit(tables);
    boolean aboveAll =
        fit.isEmpty()
            && kind.mostVolts().stream()
                .anyMatch(most -> Comparison.exceeds(contact.volts(), most));
    if (kind.isForTheOther() || aboveAll) {
      return Optional.of(noneFits(contact, kind));
    }
    // that a rating for this load is missing is for contactor.category to say
    return fit.map(f -> judge(contact, f));
  }

  private Outcome noneFits(LoadContact contact, RatedKind kind) {
    String volts = kind.of(contact.volts());
    Subject.Finding finding =
        contact
            .subject(FACTS)
            .violated(
                "%s has no rating for %s".formatted(contact.name(), volts),
                "It breaks %s for %s; its ratings are %s: %s."
                    .formatted(
                        volts,
                        contact.loadNames(),
                        kind.list(),
                        kind.isForTheOther() ? "none for " + kind.words() : "all for less voltage"),
                "nothing here for " + volts);
    contact.loads().forEach(l -> finding.alsoAt(l.head().mark(), "fed with " + volts));
    String wanted =
        contact.loads().stream()
            .flatMap(l -> contact.categories(l, tables).stream().limit(1))
            .findFirst()
            .map(category -> category + " at ")
            .orElse("for ");
    contact.loads().stream()
        .flatMap(l -> contact.categories(l, tables).stream().limit(1))
        .findFirst()
        .ifPresent(
            category ->
                contact
                    .demand()
                    .filter(d -> contact.volts() > 0)
                    .ifPresent(
                        d ->
                            finding.change(
                                NewRating.of(
                                    contact.ratings(),
                                    category,
                                    NewRating.covering(contact, d.worst())))));
    return finding.todo(
        "Take a device that its maker rates %s%s.".formatted(wanted, volts),
        new Basis(List.of(tables.source("part-data").cite()), Standing.PUBLISHED));
  }

  private Outcome judge(LoadContact contact, LoadContact.Fit fit) {
    Subject subject = new Subject(FACTS, fit.rating().mark(), contact.subject(FACTS).at());
    double volts = contact.volts();
    if (fit.volts().isEmpty()) {
      return subject.undecided(
          "voltage of the %s rating of %s".formatted(fit.category(), contact.name()),
          "%s is written without the voltage it holds at.".formatted(fit.words()));
    }
    if (volts == 0) {
      return contact.withoutPower(FACTS);
    }
    double rated = fit.volts().getAsDouble();
    Basis basis = new Basis(List.of(tables.source("part-data").cite()), Standing.PUBLISHED);
    String thin = "";
    OptionalDouble metres = Surroundings.altitude(contact.side().circuit().netlist());
    if (contact.isDerated()
        && metres.isPresent()
        && metres.getAsDouble() > tables.figure("sizing.altitude").value()) {
      Optional<Cited<Double>> factor =
          tables.lookup("contact-altitude", Map.of(), metres.getAsDouble(), "voltage");
      if (factor.isEmpty()) {
        return subject.undecided(
            "data of %s for %s above the sea"
                .formatted(contact.name(), Printed.of(metres.getAsDouble(), Dimension.LENGTH)),
            "The table of thin air ends below that.");
      }
      thin =
          " (%s × %s at %s above the sea)"
              .formatted(
                  Printed.volts(rated),
                  Printed.of(factor.get().value(), Dimension.COUNT),
                  Printed.of(metres.getAsDouble(), Dimension.LENGTH));
      rated *= factor.get().value();
      basis = basis.and(Basis.of(factor.get()));
    }
    Printed.Pair pair = Printed.pair(volts, rated, Dimension.VOLTAGE);
    Measure value = new Measure(volts, "V");
    Measure limit = new Measure(rated, "V");
    if (!Comparison.exceeds(volts, rated)) {
      return subject.satisfied(
          "%s breaks %s and is rated for %s%s."
              .formatted(contact.name(), pair.value(), pair.limit(), thin),
          value,
          limit,
          basis);
    }
    Subject.Finding finding =
        subject
            .violated(
                "%s is not made for this voltage".formatted(contact.name()),
                "%s feeds %s with %s; the contact is rated for %s%s: too much by %s."
                    .formatted(
                        "The supply",
                        contact.loadNames(),
                        pair.value(),
                        pair.limit(),
                        thin,
                        pair.apart()),
                "rated for " + pair.limit())
            .measured(value, limit);
    contact.loads().forEach(l -> finding.alsoAt(l.head().mark(), "hangs on " + pair.value()));
    String needed = Printed.atLeast(volts * fit.volts().getAsDouble() / rated, Dimension.VOLTAGE);
    finding.change(
        NewRating.of(contact.ratings(), fit.category(), NewRating.at(fit.rating(), needed)));
    return finding.todo(
        "Take a device rated %s at %s or more.".formatted(fit.category(), needed), basis);
  }
}
