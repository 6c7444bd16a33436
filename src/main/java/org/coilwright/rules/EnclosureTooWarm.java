package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Site;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Comparison;
import org.coilwright.rule.Measure;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.sizing.Found;
import org.coilwright.solve.Study;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/** The air in the box is warmer than a part is rated for. */
final class EnclosureTooWarm implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("enclosure.too-warm", Weight.FIX, "box too warm for a part in it")
          .what(
              "Adds the losses of coils, poles and protective devices, computes the air at the top"
                  + " of the box from them and from the air of the room, and holds it against the"
                  + " rated air of each relay and contactor. Air inside that is written counts as"
                  + " it is written; without a box the air of the room counts.")
          .why("Coils reach too little, contacts carry less, and everything in the box ages early.")
          .remedy(
              "Take a larger box, spread the devices over two, or take parts rated for the air.")
          .blind(
              "Heat of controllers, supplies and cables; sun on the box; boxes with vents or with"
                  + " partitions; breakers, fuses and residual-current devices, which"
                  + " protection.device-too-warm judges; supplies and controllers.")
          .sources("iec-60890", "enclosure-manual", "iec-60947-4-1", "part-data");

  private final Tables tables;

  EnclosureTooWarm(Tables tables) {
    this.tables = tables;
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    Site site = study.circuit().netlist().site();
    List<Part.Relay> relays =
        study.circuit().netlist().parts().values().stream()
            .filter(Part.Relay.class::isInstance)
            .map(Part.Relay.class::cast)
            .toList();
    List<Outcome> outcomes = new ArrayList<>();
    if (relays.isEmpty()) {
      return outcomes;
    }
    Found<InsideAir> warmth = InsideAir.of(study, tables);
    for (Part.Relay relay : relays) {
      outcomes.add(judge(relay, site, warmth));
    }
    return outcomes;
  }

  private Outcome judge(Part.Relay relay, Site site, Found<InsideAir> warmth) {
    Mark mark = relay.ratedAir().map(Written::mark).orElse(relay.head().mark());
    Subject subject = Subject.of(FACTS, mark, relay.name());
    if (warmth instanceof Found.Unknown<InsideAir> unknown) {
      return subject.undecided(
          unknown.missing(), "How warm %s gets is open. %s".formatted(relay.name(), unknown.why()));
    }
    InsideAir inside = warmth.known().orElseThrow();
    Cited<Double> normal = tables.figure("sizing.rated-air");
    double rated = relay.ratedAir().map(a -> a.value().high()).orElse(normal.value());
    Printed.Pair pair = Printed.pair(inside.celsius(), rated, Dimension.TEMPERATURE);
    Measure value = new Measure(inside.celsius(), "°C");
    Measure limit = new Measure(rated, "°C");
    Basis basis =
        relay.ratedAir().isPresent() ? inside.basis() : inside.basis().and(Basis.of(normal));
    if (!Comparison.exceeds(inside.celsius(), rated)) {
      return subject.satisfied(
          "%s is in air of %s at most (%s) and is rated for %s."
              .formatted(relay.name(), pair.value(), inside.words(), pair.limit()),
          value,
          limit,
          basis);
    }
    if (relay.ratedAir().isEmpty()) {
      return subject.undecided(
          "rated-air of " + relay.name(),
          "%s is in air of up to %s (%s); the standard's air ends at %s, and what it is rated for is not written."
              .formatted(relay.name(), pair.value(), inside.words(), pair.limit()));
    }
    Subject.Finding finding =
        subject
            .violated(
                "%s gets too warm".formatted(relay.name()),
                "The air around it reaches %s, and it is rated for %s: too warm by %s."
                    .formatted(pair.value(), pair.limit(), pair.apart()),
                "rated for " + pair.limit())
            .measured(value, limit)
            .detail("Air: %s.".formatted(inside.words()));
    finding.alsoAt(inside.where().orElse(site.mark()), "reaches " + pair.value());
    return finding.todo(
        "Take a larger box or a cooler place, or a part rated for %s."
            .formatted(Printed.atLeast(inside.celsius(), Dimension.TEMPERATURE)),
        basis);
  }
}
