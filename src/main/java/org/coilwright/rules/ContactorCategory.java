package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.coilwright.netlist.Part;
import org.coilwright.quantity.Comparison;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.solve.Study;
import org.coilwright.table.Cited;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** No rating of the contact is for the kind of load that it switches. */
final class ContactorCategory implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("contactor.category", Weight.FIX, "no rating for this kind of load")
          .what(
              "Looks at every contact in the way of a load for a rating in a utilization category"
                  + " that covers the load, and at household categories for the largest current"
                  + " their standard knows.")
          .why(
              "A contact that may carry 25 A of heater may weld on 5 A of lamps: the number counts"
                  + " only beside its category.")
          .remedy("Take a device with a rating in the category the load needs.")
          .blind(
              "Loads that do not say what they are; contacts all of whose ratings are for the other"
                  + " kind of current, which contactor.voltage raises.")
          .sources("category-overview", "iec-61095")
          .consequenceOf("contactor.current");

  private final PowerSides sides;
  private final Tables tables;

  ContactorCategory(PowerSides sides) {
    this.sides = sides;
    this.tables = sides.tables();
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    return LoadContact.ask(
        sides,
        study,
        // a contact for the other kind of current is for contactor.voltage to say
        c -> c.ratedKind().isForTheOther() ? Optional.empty() : Optional.of(judge(c)));
  }

  private Outcome judge(LoadContact contact) {
    Subject subject = contact.subject(FACTS);
    if (contact.ratings().byCategory().isEmpty()) {
      return contact.withoutRating(FACTS);
    }
    List<Cited<?>> basis = new ArrayList<>();
    for (Part load : contact.loads()) {
      List<String> wanted = contact.categories(load, tables);
      if (wanted.isEmpty()) {
        return subject.undecided(
            "category of " + load.name(),
            "Which rating of %s covers %s is open: nothing says what kind of load it is."
                .formatted(contact.name(), load.name()));
      }
      Set<String> has = contact.ratings().byCategory().keySet();
      contact.tabled(load, tables).stream()
          .filter(c -> has.contains(c.value()) || c.value().equals(wanted.get(0)))
          .forEach(basis::add);
      if (wanted.stream().noneMatch(has::contains)) {
        return subject
            .violated(
                "%s has no rating for %s".formatted(contact.name(), load.name()),
                "%s needs %s; %s is rated for %s only."
                    .formatted(load.name(), wanted.get(0), contact.name(), String.join(", ", has)),
                "no " + wanted.get(0))
            .alsoAt(load.head().mark(), "needs " + wanted.get(0))
            .change(
                contact
                    .demand()
                    .filter(d -> contact.volts() > 0)
                    .map(
                        d ->
                            NewRating.of(
                                contact.ratings(),
                                wanted.get(0),
                                NewRating.covering(contact, d.worst())))
                    .orElse(List.of()))
            .todo(
                "Take a device that its maker rates in %s.".formatted(wanted.get(0)),
                basis.isEmpty() ? Basis.of(FACTS, tables, Standing.PUBLISHED) : Basis.of(basis));
      }
    }
    Optional<Outcome> tooLarge = tooLarge(contact, subject);
    return tooLarge.orElseGet(
        () ->
            subject.satisfied(
                "%s has a rating that covers %s: %s."
                    .formatted(
                        contact.name(),
                        contact.loadNames(),
                        contact.fit(tables).map(LoadContact.Fit::words).orElse("")),
                basis.isEmpty() ? Basis.of(FACTS, tables, Standing.PUBLISHED) : Basis.of(basis)));
  }

  /** A household rating above what its standard covers means nothing. */
  private Optional<Outcome> tooLarge(LoadContact contact, Subject subject) {
    return contact
        .fit(tables)
        .flatMap(
            fit ->
                tables
                    .lookup("household-limits", Map.of("category", fit.category()), "amps")
                    .filter(most -> Comparison.exceeds(fit.amps(), most.value()))
                    .map(
                        most ->
                            subject
                                .violated(
                                    "%s cannot be %s".formatted(contact.name(), fit.words()),
                                    "%s ends at %s; %s is written."
                                        .formatted(
                                            fit.category(),
                                            Printed.of(most.value(), Dimension.CURRENT),
                                            fit.rating().text()),
                                    "above the category's end")
                                .alsoAt(contact.loads().get(0).head().mark(), "hangs on it")
                                .todo(
                                    "Look the rating up again, or take a device rated AC-1.",
                                    Basis.of(most))));
  }
}
