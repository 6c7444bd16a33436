// Over 250 lines: the current, its derating and each way out of too much belong to one judgement.
package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.coilwright.netlist.Mounting;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Written;
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
import org.coilwright.sizing.Derated;
import org.coilwright.sizing.Factor;
import org.coilwright.sizing.Found;
import org.coilwright.sizing.PowerSide.Demand;
import org.coilwright.solve.Study;
import org.coilwright.table.Cited;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** A contact carries more load current than its rating allows where it sits. */
final class ContactorCurrent implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("contactor.current", Weight.STOP, "contact too small for its load")
          .what(
              "Takes the load's current at the highest supply voltage (10 % up where no tolerance"
                  + " is written) and the upper end of the power tolerance, and holds it against"
                  + " the contact's rating times the factors for warm air, close mounting, thin air"
                  + " and poles in parallel. Where no rating is for this kind of load, more than"
                  + " each rating for this kind of current is raised too."
                  + " A motor whose plate current is not written is open: its power is that at its"
                  + " shaft, and it takes more.")
          .why(
              "A contact that runs hot welds: the load then stays on whatever the controller does.")
          .remedy("Take the next larger rating, leave a gap beside it, or cool the box.")
          .blind(
              "Warm air about a hand-operated switch; a load whose current rises as the voltage"
                  + " falls; more than eight hours on at a time.")
          .sources(
              "part-data",
              "contactor-warm-air",
              "contactor-thin-air",
              "contactor-catalogue",
              "contactor-data",
              "iec-60335-1")
          .consequenceOf("wiring.short-circuit", "contactor.category")
          .carriedBy("load.wrong-voltage");

  private final PowerSides sides;
  private final Tables tables;

  ContactorCurrent(PowerSides sides) {
    this.sides = sides;
    this.tables = sides.tables();
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    return ByShaft.open(study, sides, LoadContact.ask(sides, study, this::judge));
  }

  private Optional<Outcome> judge(LoadContact contact) {
    Optional<Demand> demand = contact.demand();
    if (demand.isEmpty()) {
      return Optional.of(contact.withoutPower(FACTS));
    }
    return contact.ratings().byCategory().isEmpty()
        ? Optional.of(contact.withoutRating(FACTS))
        : contact
            .fit(tables)
            .map(fit -> judge(contact, fit, demand.get()))
            .or(() -> aboveAll(contact, demand.get()));
  }

  /** More than any rating for this kind of current, where none is for this kind of load. */
  private Optional<Outcome> aboveAll(LoadContact contact, Demand demand) {
    RatedKind kind = contact.ratedKind();
    OptionalDouble most = kind.mostAmps();
    if (most.isEmpty() || !Comparison.exceeds(demand.worst(), most.getAsDouble())) {
      return Optional.empty();
    }
    Printed.Pair pair = Printed.pair(demand.worst(), most.getAsDouble(), Dimension.CURRENT);
    String wanted =
        contact.loads().stream()
            .flatMap(l -> contact.categories(l, tables).stream().limit(1))
            .findFirst()
            .map(category -> category + ": ")
            .orElse("");
    List<Cited<?>> cited = new ArrayList<>();
    demand.loads().forEach(l -> cited.addAll(l.basis()));
    Subject.Finding finding =
        contact
            .subject(FACTS)
            .violated(
                "%s is too small for %s".formatted(contact.name(), demand.names()),
                "It carries %s %s; its ratings are %s: too much by %s for the highest of them, and none is for this kind of load. The current takes the way %s."
                    .formatted(
                        pair.value(), demand.words(), kind.list(), pair.apart(), contact.way()),
                "rated for %s at most".formatted(pair.limit()))
            .measured(new Measure(demand.worst(), "A"), new Measure(most.getAsDouble(), "A"));
    contact
        .loads()
        .forEach(l -> finding.alsoAt(l.head().mark(), "takes " + pair.value() + " at worst"));
    return Optional.of(
        finding.todo(
            "Take a device that its maker rates %s%s or more at %s, or lead %s past %s."
                .formatted(
                    wanted,
                    Printed.atLeast(demand.worst(), Dimension.CURRENT),
                    Printed.volts(contact.volts()),
                    demand.names(),
                    contact.name()),
            partData().and(Basis.of(cited))));
  }

  private Basis partData() {
    return new Basis(List.of(tables.source("part-data").cite()), Standing.PUBLISHED);
  }

  private Outcome judge(LoadContact contact, LoadContact.Fit fit, Demand demand) {
    boolean derated = contact.isDerated();
    boolean close = contact.mounting().map(m -> m.value() == Mounting.SIDE_BY_SIDE).orElse(false);
    Found<List<Factor>> apart = factors(contact, close);
    Subject subject = new Subject(FACTS, fit.rating().mark(), contact.subject(FACTS).at());
    if (apart instanceof Found.Unknown<List<Factor>> unknown) {
      return subject.undecided(
          unknown.missing().startsWith("site.")
              ? unknown.missing()
              : "data of %s for %s".formatted(contact.name(), unknown.missing()),
          "What %s may carry for %s is open. %s"
              .formatted(contact.name(), contact.loadNames(), unknown.why()));
    }
    Derated may = new Derated(fit.amps(), apart.known().orElse(List.of()), List.of());
    if (!Comparison.exceeds(demand.worst(), may.amps())
        && derated
        && contact.mounting().isEmpty()
        && contact.part() instanceof Part.Relay relay
        && relay.isContactor()) {
      Derated tight =
          new Derated(fit.amps(), factors(contact, true).known().orElse(List.of()), List.of());
      if (Comparison.exceeds(demand.worst(), tight.amps())) {
        return subject.undecided(
            "mounting of " + contact.name(),
            "%s carries %s: enough with a gap on both sides (%s), too little side by side (%s)."
                .formatted(
                    contact.name(),
                    Printed.of(demand.worst(), Dimension.CURRENT),
                    may.words(),
                    tight.words()));
      }
    }
    return verdict(contact, fit, demand, may, subject);
  }

  private Found<List<Factor>> factors(LoadContact contact, boolean close) {
    if (!contact.isDerated()) {
      return new Found.Known<>(List.of());
    }
    Surroundings around = Surroundings.of(contact.side().circuit(), tables);
    if (!around.insideKnown()) {
      return new Found.Unknown<>(
          "site.enclosure-air", "There is a box, and how warm it gets inside is not known.");
    }
    return contact.conditions(around, close).factors(tables);
  }

  private Outcome verdict(
      LoadContact contact, LoadContact.Fit fit, Demand demand, Derated may, Subject subject) {
    Printed.Pair pair = Printed.pair(demand.worst(), may.amps(), Dimension.CURRENT);
    Measure value = new Measure(demand.worst(), "A");
    Measure limit = new Measure(may.amps(), "A");
    List<Cited<?>> cited = new ArrayList<>(may.basis());
    demand.loads().forEach(l -> cited.addAll(l.basis()));
    Basis basis = partData().and(Basis.of(cited));
    String rated = "rated %s, %s".formatted(fit.words(), may.words());
    if (!Comparison.exceeds(demand.worst(), may.amps())) {
      return subject.satisfied(
          "%s carries %s %s for %s and may carry %s (%s)."
              .formatted(
                  contact.name(),
                  pair.value(),
                  demand.words(),
                  demand.names(),
                  pair.limit(),
                  rated),
          value,
          limit,
          basis);
    }
    Subject.Finding finding =
        subject
            .violated(
                "%s is too small for %s".formatted(contact.name(), demand.names()),
                "It carries %s %s and may carry %s: too much by %s."
                    .formatted(pair.value(), demand.words(), pair.limit(), pair.apart()),
                "may carry %s here".formatted(pair.limit()))
            .measured(value, limit);
    contact
        .loads()
        .forEach(l -> finding.alsoAt(l.head().mark(), "takes " + pair.value() + " at worst"));
    contact
        .mounting()
        .filter(m -> m.value() == Mounting.SIDE_BY_SIDE)
        .map(Written::mark)
        .ifPresent(m -> finding.alsoAt(m, "no gap beside it"));
    double needed = demand.worst() / may.amps() * fit.amps();
    // contactor.voltage is told along with this, so what is to be taken must serve it as well
    String at =
        fit.volts().stream().anyMatch(volts -> Comparison.exceeds(contact.volts(), volts))
            ? " at " + Printed.volts(contact.volts())
            : "";
    String amps = Printed.atLeast(needed, Dimension.CURRENT);
    String text = fit.rating().text().replaceFirst("^[0-9.]+ ?A", amps);
    finding.change(fit.rating().mark(), at.isEmpty() ? text : text.replaceFirst(" at .*", at));
    return finding
        .detail(
            "May carry: %s. Carries: %s nominal, %s %s."
                .formatted(
                    may.words(),
                    Printed.of(demand.nominal(), Dimension.CURRENT),
                    pair.value(),
                    demand.words()))
        .todo(
            "Take %s of %s or more%s here%s.".formatted(fit.category(), amps, at, cure(may)),
            basis);
  }

  /** What would make the rating as it is do. */
  private static String cure(Derated may) {
    StringBuilder cures = new StringBuilder();
    for (Factor factor : may.factors()) {
      if (factor.cause() == Factor.Cause.AIR) {
        cures.append(", or cool its air");
      } else if (factor.cause() == Factor.Cause.CLOSE_MOUNTED) {
        cures.append(", or leave a gap beside it");
      }
    }
    return cures.toString();
  }
}
