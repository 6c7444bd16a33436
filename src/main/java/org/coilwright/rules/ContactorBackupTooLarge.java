package org.coilwright.rules;

import java.util.List;
import java.util.Optional;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Written;
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
import org.coilwright.sizing.Guards;
import org.coilwright.sizing.Overcurrent;
import org.coilwright.solve.Study;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** The device before a contactor is larger than the contactor's maker allows. */
final class ContactorBackupTooLarge implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("contactor.backup-too-large", Weight.FIX, "back-up protection too large")
          .what(
              "Holds the fuse or circuit-breaker that feeds a relay's or contactor's load contact"
                  + " against the largest one that its maker names under backup.")
          .why(
              "A larger device lets through more than the contacts stand: they weld, and the load"
                  + " stays on.")
          .remedy("Take a smaller device, or a contactor that allows this one.")
          .blind("Which type of coordination the maker's figure is for.")
          .sources("part-data", "iec-60947-4-1")
          .consequenceOf("contactor.backup-missing");

  private final PowerSides sides;
  private final Tables tables;
  private final Basis basis;

  ContactorBackupTooLarge(PowerSides sides) {
    this.sides = sides;
    tables = sides.tables();
    basis = new Basis(List.of(tables.source("part-data").cite()), Standing.PUBLISHED);
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    Guards guards = sides.of(study).guards();
    return LoadContact.ask(
        sides,
        study,
        c ->
            c.part() instanceof Part.Relay relay && !guards.isUnguarded(c.contact().from())
                ? guards
                    .of(c.contact().from())
                    .or(() -> guards.of(c.contact().to()))
                    .map(d -> judge(c, relay, d))
                : Optional.empty());
  }

  private Outcome judge(LoadContact contact, Part.Relay relay, Part device) {
    Subject subject = contact.subject(FACTS);
    String kind = device instanceof Part.Fuse ? "fuse" : "breaker";
    Optional<Written<Quantity>> most = Optional.ofNullable(relay.backup().get(kind));
    if (most.isEmpty()) {
      return subject.undecided(
          "backup.%s of %s".formatted(kind, relay.name()),
          "Whether %s may stand before %s is open: the largest %s its maker allows is not written."
              .formatted(device.name(), relay.name(), kind));
    }
    Optional<Written<Quantity>> rating = Overcurrent.written(device);
    if (rating.isEmpty()) {
      return subject.undecided(
          "rating of " + device.name(),
          "Whether %s may stand before %s is open: its rating is not written."
              .formatted(device.name(), relay.name()));
    }
    double has = rating.get().value().nominal();
    double may = most.get().value().nominal();
    Printed.Pair pair = Printed.pair(has, may, Dimension.CURRENT);
    Measure value = new Measure(has, "A");
    Measure limit = new Measure(may, "A");
    if (!Comparison.exceeds(has, may)) {
      return subject.satisfied(
          "%s before %s is %s; its maker allows a %s of %s."
              .formatted(device.name(), relay.name(), pair.value(), kind, pair.limit()),
          value,
          limit,
          basis);
    }
    double needs = DeviceLoads.leastRating(contact.side(), device, tables);
    boolean can = !Comparison.exceeds(needs, may);
    return new Subject(FACTS, most.get().mark(), subject.at())
        .violated(
            "%s is too large to protect %s".formatted(device.name(), relay.name()),
            "It is %s; the maker of %s allows a %s of at most %s: too large by %s."
                .formatted(pair.value(), relay.name(), kind, pair.limit(), pair.apart()),
            "at most " + pair.limit())
        .alsoAt(rating.get().mark(), "is " + pair.value())
        .measured(value, limit)
        .change(can ? rating.get().mark() : most.get().mark(), can ? pair.limit() : pair.value())
        .todo(
            can
                ? "Put a %s of at most %s before %s.".formatted(kind, pair.limit(), relay.name())
                : "Take a %s whose maker allows a %s of %s: %s cannot be smaller, its loads need %s."
                    .formatted(
                        relay.isContactor() ? "contactor" : "relay",
                        kind,
                        pair.value(),
                        device.name(),
                        Printed.of(needs, Dimension.CURRENT)),
            basis);
  }
}
