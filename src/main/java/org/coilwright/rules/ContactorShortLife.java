package org.coilwright.rules;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.coilwright.netlist.Netlist;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Switching;
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
import org.coilwright.sizing.Endurance;
import org.coilwright.sizing.PowerSide.Demand;
import org.coilwright.solve.Study;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/** The contact wears out before the installation does. */
final class ContactorShortLife implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("contactor.short-life", Weight.FIX, "contact worn out too soon")
          .what(
              "Takes the most starts in a day that the settings allow (longest time per day over"
                  + " shortest run) against the electrical life at the load's nominal current, and"
                  + " against the mechanical life; a year has 365 such days. The life counts"
                  + " cycles, one closing and one opening each.")
          .why("A worn contact welds or overheats, years before anybody expects it.")
          .remedy("Let each run last longer, or take a contact with a longer life.")
          .blind(
              "Whether the data sheet counted closing and opening apart, which halves its figure;"
                  + " how often a thermostat switches; days with fewer starts; what the inrush of a"
                  + " load other than a heater does to the life; how the life of this contact"
                  + " follows its current: it is taken as one over the current, which one maker's"
                  + " series keeps to within an eighth.")
          .sources("contactor-life", "common-practice");

  private final PowerSides sides;
  private final Tables tables;

  ContactorShortLife(PowerSides sides) {
    this.sides = sides;
    this.tables = sides.tables();
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    Netlist netlist = study.circuit().netlist();
    return ByShaft.open(
        study,
        sides,
        LoadContact.ask(
            sides,
            study,
            c ->
                c.part() instanceof Part.Relay relay
                    ? c.fit(tables)
                        .flatMap(f -> c.demand().map(d -> judge(c, relay, f, d, netlist)))
                    : Optional.empty()));
  }

  private Outcome judge(
      LoadContact contact, Part.Relay relay, LoadContact.Fit fit, Demand demand, Netlist netlist) {
    Subject subject = contact.subject(FACTS);
    Written<Rating> life = relay.life().get(fit.category());
    if (life == null) {
      return subject.undecided(
          "life.%s of %s".formatted(fit.category(), relay.name()),
          "How many years %s lasts is open: its life in %s is not written."
              .formatted(relay.name(), fit.category()));
    }
    Optional<Written<Quantity>> run = netlist.switching().flatMap(Switching::shortestRun);
    Optional<Written<Quantity>> day = netlist.switching().flatMap(Switching::longestPerDay);
    if (run.isEmpty() || day.isEmpty()) {
      return subject.undecided(
          run.isEmpty() ? "switching.shortest-run" : "switching.longest-per-day",
          "How many years %s lasts is open: the settings do not say how often it starts."
              .formatted(relay.name()));
    }
    Optional<Written<Quantity>> confirmed =
        netlist.switching().flatMap(Switching::start).flatMap(Switching.Start::confirm);
    boolean bounded = run.get().value().low() > 0;
    if (!bounded && confirmed.isEmpty()) {
      return subject.undecided(
          "switching.start.for",
          "How many years %s lasts is open: with a shortest run of %s only the time a surplus must last limits how often it starts."
              .formatted(relay.name(), run.get().text()));
    }
    double at = life.value().at().map(a -> a.nominal()).orElse(fit.amps());
    Endurance endurance =
        Endurance.of(
            life.value().amount().nominal(),
            at,
            demand.nominal(),
            Optional.ofNullable(relay.life().get("mechanical"))
                .map(m -> m.value().amount().nominal()),
            tables);
    double wanted = tables.figure("sizing.design-life").value();
    double once = endurance.years(1);
    if (!bounded && !(confirmed.orElseThrow().value().low() > 0)) {
      return unlimited(
          subject, relay, run.get(), confirmed.orElseThrow(), day.get(), once / wanted);
    }
    // without a shortest run it may open at once, and close again when the surplus has lasted
    Written<Quantity> each = bounded ? run.get() : confirmed.orElseThrow();
    double within = bounded ? day.get().value().high() : Duration.ofDays(1).toSeconds();
    double starts = Math.max(1, Math.floor(within / each.value().low()));
    double years = endurance.years(starts);
    Measure value = new Measure(years, "years");
    Measure limit = new Measure(wanted, "years");
    Basis basis = Basis.of(endurance.cited()).and(Basis.of(tables.figure("sizing.design-life")));
    String sum =
        "%s; %s starts a day at most (%s over %s), 365 days a year"
            .formatted(
                endurance.words(),
                Printed.of(starts, Dimension.COUNT),
                bounded ? day.get().text() : "24 h",
                each.text());
    String shown = endurance.lasting(starts);
    if (!Comparison.fallsShort(years, wanted)) {
      return subject.satisfied(
          "%s lasts %s (%s).".formatted(relay.name(), shown, sum), value, limit, basis);
    }
    return new Subject(FACTS, life.mark(), subject.at())
        .violated(
            "%s wears out in %s".formatted(relay.name(), shown),
            "It shall last %s years and lasts %s at the most starts the settings allow."
                .formatted(Printed.of(wanted, Dimension.COUNT), shown),
            "lasts " + shown)
        .alsoAt(
            run.get().mark(),
            "up to %s starts a day".formatted(Printed.of(starts, Dimension.COUNT)))
        .measured(value, limit)
        .detail("Counted: %s.".formatted(sum))
        .change(
            run,
            bounded
                ? Endurance.minutes(run.get().value().low() * wanted / years)
                : shortestRun(day.get(), once / wanted))
        .todo(
            "Set the shortest run to %s or more, or take a contact with a longer life."
                .formatted(
                    bounded
                        ? Endurance.minutes(run.get().value().low() * wanted / years)
                        : shortestRun(day.get(), once / wanted)),
            basis);
  }

  /** The shortest run that leaves so many starts a day at most. */
  private static String shortestRun(Written<Quantity> day, double starts) {
    return Endurance.minutes(day.value().high() / Math.max(1, Math.floor(starts)));
  }

  private Outcome unlimited(
      Subject subject,
      Part.Relay relay,
      Written<Quantity> run,
      Written<Quantity> confirmed,
      Written<Quantity> day,
      double starts) {
    Cited<Double> wanted = tables.figure("sizing.design-life");
    return new Subject(FACTS, run.mark(), subject.at())
        .violated(
            "nothing limits how often %s starts".formatted(relay.name()),
            "It stays closed for %s at least and a surplus must last %s: it may start as often as the meter is read, and to last %s years it may start %s times a day."
                .formatted(
                    run.text(),
                    confirmed.text(),
                    Printed.of(wanted.value(), Dimension.COUNT),
                    Printed.atMost(Math.floor(starts), Dimension.COUNT)),
            "may open again at once")
        .alsoAt(confirmed.mark(), "and close again at once")
        .change(run.mark(), shortestRun(day, starts))
        .todo(
            "Set the shortest run to %s or more.".formatted(shortestRun(day, starts)),
            Basis.of(wanted));
  }
}
