package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import org.coilwright.behaviour.Forecast;
import org.coilwright.behaviour.Settings;
import org.coilwright.netlist.Part;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Words;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Measure;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.solve.Study;
import org.coilwright.table.Standing;

/** What the settings do while the mains are off. */
final class BehaviourIsland implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("behaviour.island", Weight.NOTE, "settings in island operation")
          .what(
              "Tells for each load on the output that the source of `site.island` feeds what the"
                  + " settings make of it while the mains are off: no export is seen, fixed windows"
                  + " close the contact, a shortest run keeps it closed.")
          .why(
              "The settings look at a meter that then tells nothing. What heats goes out of the"
                  + " battery that the house needs until the mains are back.")
          .remedy("Keep the load off what `feeds` names, or have it dropped at the change-over.")
          .blind("What the controller really does without its meter: its maker has to say.")
          .sources("common-practice", "physics-textbook");

  private final PowerSides sides;
  private final Basis basis;

  BehaviourIsland(PowerSides sides) {
    this.sides = sides;
    basis = Basis.of(FACTS, sides.tables(), Standing.COMMON_PRACTICE);
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    return study.circuit().netlist().switching().isEmpty()
        ? List.of()
        : IslandView.ask(
            study,
            sides,
            FACTS,
            island ->
                SetOutput.ask(
                    study, sides.tables(), FACTS, List.of(), set -> List.of(judge(island, set))));
  }

  private Outcome judge(IslandView island, SetOutput set) {
    List<String> fed =
        set.loads().loads().stream().filter(island.loads()::contains).map(Part::name).toList();
    if (fed.isEmpty()) {
      return set.subject(FACTS, island.written().mark())
          .satisfied("In island operation nothing feeds %s.".formatted(set.loads().names()), basis);
    }
    Settings settings = set.settings();
    List<String> words = new ArrayList<>();
    double most = Forecast.wattHours(set.watts(), settings.shortestRunSeconds());
    if (most > 0) {
      words.add(
          "once closed it stays closed for %s (%s)"
              .formatted(
                  Printed.span(settings.shortestRunSeconds()), Printed.of(most, Dimension.ENERGY)));
    }
    double seconds =
        Math.min(
            settings.windows().stream().mapToDouble(Settings.Window::seconds).sum(),
            settings.longestPerDaySeconds().orElse(Double.POSITIVE_INFINITY));
    double windows = Forecast.wattHours(set.watts(), seconds);
    if (windows > 0) {
      words.add(
          "fixed windows close it for %s a day whatever the battery holds (%s)"
              .formatted(Printed.span(seconds), Printed.of(windows, Dimension.ENERGY)));
    }
    Subject subject = set.subject(FACTS, set.written().mark());
    return subject
        .violated(
            "%s can heat from the battery while the mains are off".formatted(set.output()),
            "%s then hangs on the source alone, and a meter at the mains shows neither export nor import: what %s does is open.%s"
                .formatted(
                    Words.all(fed),
                    set.output(),
                    words.isEmpty() ? "" : " By its settings " + String.join("; ", words) + "."),
            "looks at a meter that tells nothing")
        .alsoAt(island.written().mark(), "feeds " + Words.all(fed))
        .measured(new Measure(Math.max(most, windows), "Wh"), new Measure(0, "Wh"))
        .todo(
            "Name under site.island.feeds only parts behind which %s does not lie, and wire it so; otherwise ask the maker of the controller what it does without the mains."
                .formatted(Words.all(fed)),
            basis);
  }
}
