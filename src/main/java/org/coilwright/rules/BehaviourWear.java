package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.coilwright.behaviour.Rehearsal;
import org.coilwright.behaviour.Situation;
import org.coilwright.behaviour.Tally;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.Part;
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
import org.coilwright.solve.SwitchedLoads;
import org.coilwright.table.Cited;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** So many starts a day wear the contacts out before their time. */
final class BehaviourWear implements Rule {
  private static final List<String> KEYS =
      List.of(
          "start.export-above",
          "plant.pv-peak",
          "plant.base-load",
          "plant.battery.capacity",
          "plant.battery.discharge",
          "plant.battery.charge",
          "plant.battery.settles-in",
          "plant.battery.floor");

  private static final RuleFacts FACTS =
      RuleFacts.of("behaviour.wear", Weight.FIX, "contacts worn out early")
          .what(
              "Rehearses a day of broken cloud with the settings, counts the starts, and holds that"
                  + " many starts on every day of the expected service time against the `life` of"
                  + " each relay and contactor that operates with the output.")
          .why("A worn contact welds: what it switches stays on.")
          .remedy(
              "Lengthen `shortest-run` or `start: for`, raise `export-above`, or take contacts with"
                  + " a longer life.")
          .blind(
              "The controller's own contact, for which no life can be written; days with more"
                  + " clouds than the one rehearsed, and that most days have fewer; what the"
                  + " thermostat switches.")
          .sources("common-practice", "part-data")
          .consequenceOf("behaviour.cycles");

  private final Tables tables;

  BehaviourWear(Tables tables) {
    this.tables = tables;
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    return SetOutput.ask(study, tables, FACTS, KEYS, this::judge);
  }

  private List<Outcome> judge(SetOutput set) {
    List<Part.Relay> relays = SwitchedLoads.relaysOf(set.study(), set.output());
    if (relays.isEmpty()) {
      return List.of();
    }
    Situation clouds = Situation.brokenCloud(set.scene());
    Tally day =
        Rehearsal.run(clouds.feed(), clouds.begin(set.scene().plant()), set.settings(), null);
    List<Outcome> outcomes = new ArrayList<>();
    for (Part.Relay relay : relays) {
      outcomes.add(judge(set, relay, day.startsPerDay()));
    }
    return outcomes;
  }

  private Outcome judge(SetOutput set, Part.Relay relay, double perDay) {
    Optional<ContactLife> life = ContactLife.of(relay);
    Mark mark = life.map(l -> l.written().mark()).orElse(relay.head().mark());
    Subject subject = Subject.of(FACTS, mark, relay.name(), set.output());
    if (life.isEmpty()) {
      return subject.undecided(
          "life of " + relay.name(),
          "How long %s lasts at %s starts on a day of broken cloud is open."
              .formatted(relay.name(), count(perDay)));
    }
    Cited<Double> years = tables.figure("behaviour.service-years");
    double starts = perDay * years.value() * tables.figure("behaviour.days-per-year").value();
    double operations = life.get().operations();
    Basis basis =
        Basis.of(years)
            .and(new Basis(List.of(tables.source("part-data").cite()), Standing.PUBLISHED));
    Printed.Pair pair = Printed.pair(starts, operations, Dimension.COUNT);
    Measure value = new Measure(starts, "");
    Measure limit = new Measure(operations, "");
    String lasts =
        "%s starts on a day of broken cloud are %s in %s years; %s is made for %s (%s)"
            .formatted(
                count(perDay),
                pair.value(),
                count(years.value()),
                relay.name(),
                pair.limit(),
                life.get().words());
    if (Comparison.exceeds(starts, operations)) {
      return subject
          .violated(
              "%s wears out early".formatted(relay.name()),
              "%s: too many by %s.".formatted(lasts, pair.apart()),
              "made for " + pair.limit())
          .alsoAt(set.shortestRunMark(), "lets it start %s times a day".formatted(count(perDay)))
          .measured(value, limit)
          .todo(FACTS.remedy(), basis);
    }
    return subject.satisfied(lasts + ".", value, limit, basis);
  }

  private static String count(double number) {
    return Printed.of(number, Dimension.COUNT);
  }
}
