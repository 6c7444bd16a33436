package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Site;
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
import org.coilwright.sizing.Found;
import org.coilwright.solve.Study;
import org.coilwright.table.Cited;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** The air in the box is warmer than a part is rated for. */
final class EnclosureTooWarm implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("enclosure.too-warm", Weight.FIX, "box too warm for a part in it")
          .what(
              "Adds the losses of coils, poles and protective devices, computes the air at the top"
                  + " of the box from them and from the air of the room, and holds it against the"
                  + " rated air of each relay and contactor and, where it is written or the air is"
                  + " above the standard's, of each controller and supply. Air inside that is"
                  + " written counts as it is written; without a box the air of the room counts.")
          .why("Coils reach too little, contacts carry less, and everything in the box ages early.")
          .remedy(
              "Take a larger box, spread the devices over two, or take parts rated for the air.")
          .blind(
              "Heat of controllers, supplies and cables; sun on the box; boxes with vents or with"
                  + " partitions; breakers, fuses and residual-current devices, which"
                  + " protection.device-too-warm judges; a controller or supply without"
                  + " rated-air in air of up to 40 °C.")
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
    List<Part> parts =
        study.circuit().netlist().parts().values().stream()
            .filter(p -> p instanceof Part.Relay || isElectronics(p))
            .toList();
    List<Outcome> outcomes = new ArrayList<>();
    if (parts.isEmpty()) {
      return outcomes;
    }
    Found<InsideAir> warmth = InsideAir.of(study, tables);
    double normal = tables.figure("sizing.rated-air").value();
    for (Part part : parts) {
      boolean asked =
          !isElectronics(part)
              || part.head().ratedAir().isPresent()
              || warmth.known().filter(a -> Comparison.exceeds(a.celsius(), normal)).isPresent();
      if (asked) {
        outcomes.add(judge(part, site, warmth));
      }
    }
    return outcomes;
  }

  private static boolean isElectronics(Part part) {
    return part instanceof Part.Controller || part instanceof Part.DcSupply;
  }

  private Outcome judge(Part part, Site site, Found<InsideAir> warmth) {
    Optional<Written<Quantity>> sheet =
        part instanceof Part.Relay relay ? relay.ratedAir() : part.head().ratedAir();
    Mark mark = sheet.map(Written::mark).orElse(part.head().mark());
    Subject subject = Subject.of(FACTS, mark, part.name());
    if (warmth instanceof Found.Unknown<InsideAir> unknown) {
      Optional<Written<Quantity>> room =
          site.ambient()
              .filter(
                  a ->
                      sheet.isPresent()
                          && Comparison.exceeds(a.value().high(), sheet.get().value().high()));
      return room.isPresent()
          ? warmRoom(subject, part, sheet.orElseThrow(), room.get())
          : Unknowns.outcome(subject, "How warm %s gets is open.".formatted(part.name()), unknown);
    }
    InsideAir inside = warmth.known().orElseThrow();
    Cited<Double> normal = tables.figure("sizing.rated-air");
    double rated = sheet.map(a -> a.value().high()).orElse(normal.value());
    Printed.Pair pair = Printed.pair(inside.celsius(), rated, Dimension.TEMPERATURE);
    Measure value = new Measure(inside.celsius(), "°C");
    Measure limit = new Measure(rated, "°C");
    Basis basis = sheet.isPresent() ? inside.basis() : inside.basis().and(Basis.of(normal));
    if (!Comparison.exceeds(inside.celsius(), rated)) {
      return subject.satisfied(
          "%s is in air of %s at most (%s) and is rated for %s."
              .formatted(part.name(), pair.value(), inside.words(), pair.limit()),
          value,
          limit,
          basis);
    }
    if (sheet.isEmpty()) {
      return subject.undecided(
          "rated-air of " + part.name(),
          "%s is in air of up to %s (%s); the standard's air ends at %s, and what it is rated for is not written."
              .formatted(part.name(), pair.value(), inside.words(), pair.limit()));
    }
    Subject.Finding finding =
        subject
            .violated(
                "%s gets too warm".formatted(part.name()),
                "The air around it reaches %s, and it is rated for %s: too warm by %s."
                    .formatted(pair.value(), pair.limit(), pair.apart()),
                "rated for " + pair.limit())
            .measured(value, limit)
            .detail("Air: %s.".formatted(inside.words()));
    finding.alsoAt(inside.where().orElse(site.mark()), "reaches " + pair.value());
    finding.change(sheet.get().mark(), Printed.atLeast(inside.celsius(), Dimension.TEMPERATURE));
    return finding.todo(
        "Take a larger box or a cooler place, or a part rated for %s."
            .formatted(Printed.atLeast(inside.celsius(), Dimension.TEMPERATURE)),
        basis);
  }

  /** Inside a box it is no cooler than in its room, however warm that is. */
  private Outcome warmRoom(
      Subject subject, Part part, Written<Quantity> sheet, Written<Quantity> room) {
    double rated = sheet.value().high();
    Printed.Pair pair = Printed.pair(room.value().high(), rated, Dimension.TEMPERATURE);
    return subject
        .violated(
            "%s gets too warm".formatted(part.name()),
            "The room alone reaches %s, and it is rated for %s: too warm by %s before its box adds anything."
                .formatted(pair.value(), pair.limit(), pair.apart()),
            "rated for " + pair.limit())
        .alsoAt(room.mark(), "reaches " + pair.value())
        .measured(new Measure(room.value().high(), "°C"), new Measure(rated, "°C"))
        .todo(
            "Take a cooler place, or a part rated for %s and for what the box adds."
                .formatted(Printed.atLeast(room.value().high(), Dimension.TEMPERATURE)),
            new Basis(List.of(tables.source("part-data").cite()), Standing.PUBLISHED));
  }
}
