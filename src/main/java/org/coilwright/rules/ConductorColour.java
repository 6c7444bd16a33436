package org.coilwright.rules;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.coilwright.circuit.Branch.Conductor;
import org.coilwright.circuit.CoreColour;
import org.coilwright.netlist.Site;
import org.coilwright.netlist.Written;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.rules.CoreRole.Use;
import org.coilwright.solve.Study;
import org.coilwright.table.Tables;

/** A core in a colour that is kept for another use. */
final class ConductorColour implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("conductor.colour", Weight.STOP, "core in a colour kept for another use")
          .what(
              "Follows each wire that has a colour written to what it hangs on, with every contact"
                  + " closed. Green-and-yellow (with practice nec also green) is for the protective"
                  + " conductor and nothing else: a line, neutral or direct voltage on it is a"
                  + " STOP. A protective conductor of another colour, a neutral that is not blue"
                  + " (nec: white or grey), and a line in the neutral's colour where there is a"
                  + " neutral are to be fixed.")
          .why(
              "Whoever opens the box next takes green-and-yellow for earth and touches it, or joins"
                  + " metal to it; and disconnects blue last.")
          .remedy("Draw in a core of the right colour.")
          .blind(
              "Wires whose colour is not written; which line has which colour; sleeves over the"
                  + " ends of a core, and the colours of plus and minus but for the protective"
                  + " one; wires that nothing reaches.")
          .sources("iec-60445", "nec")
          .consequenceOf(
              "wiring.short-circuit",
              "poles.neutral-crossed",
              "poles.neutral-earthed",
              "poles.neutral-missing",
              "poles.line-missing",
              "poles.line-repeated",
              "protection.rcd-bypassed",
              "separation.mains-meets-elv");

  private final Tables tables;

  ConductorColour(Tables tables) {
    this.tables = tables;
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  /** What can be wrong with a colour. */
  private enum Fault {
    LIVE,
    UNPROTECTIVE,
    NOT_NEUTRAL,
    NEUTRALS
  }

  /** A wire, the colour it is written in and the letters of that; empty if it is none. */
  private record Core(Conductor wire, CoreRole role, Written<String> colour, String letters) {
    String words() {
      return "%s to %s".formatted(wire.from(), wire.to());
    }

    boolean is(Use use) {
      return role.use().filter(use::equals).isPresent();
    }
  }

  @Override
  public List<Outcome> check(Study study) {
    Map<Fault, List<Core>> wrong = new LinkedHashMap<>();
    List<Outcome> outcomes = new ArrayList<>();
    List<Core> cores = cores(study);
    Site site = study.circuit().netlist().site();
    KeptColours kept = KeptColours.of(site, tables);
    for (Core core : cores) {
      Optional<Written<String>> earthing = site.mains().flatMap(Site.MainsSupply::earthing);
      boolean pen = core.is(Use.NEUTRAL) && kept.of(Use.PROTECTIVE).contains(core.letters());
      if (core.letters().isEmpty()) {
        outcomes.add(
            subject(core)
                .undecided(
                    "colour of " + core.words(),
                    "%s is no colour known here, so whether %s has one of its use is open."
                        .formatted(core.colour().text(), core.words())));
      } else if (pen && earthing.isEmpty()) {
        outcomes.add(
            subject(core)
                .undecided(
                    "site.mains.earthing",
                    "%s is %s and hangs on the neutral: right for a PEN conductor alone, and the earthing system is not written."
                        .formatted(core.words(), core.colour().text())));
      } else if (!(pen && earthing.get().value().equals("TN-C"))) {
        fault(core, kept, hasNeutral(study))
            .ifPresent(f -> wrong.computeIfAbsent(f, k -> new ArrayList<>()).add(core));
      }
    }
    wrong.forEach((fault, found) -> outcomes.add(violated(fault, found, kept)));
    if (outcomes.isEmpty() && !cores.isEmpty()) {
      outcomes.add(
          Subject.ofCircuit(FACTS, study.circuit().netlist())
              .satisfied(
                  "Each of the %s wires with a colour has one of its use.".formatted(cores.size()),
                  kept.basis(Use.PROTECTIVE).and(kept.basis(Use.NEUTRAL))));
    }
    return outcomes;
  }

  private static List<Core> cores(Study study) {
    List<Core> cores = new ArrayList<>();
    for (Conductor wire : study.circuit().branches(Conductor.class)) {
      Optional<Written<String>> colour = wire.wire().colour();
      CoreRole role = colour.isPresent() ? CoreRole.of(study, wire) : CoreRole.UNKNOWN;
      if (role.use().isPresent()) {
        String letters = CoreColour.letters(colour.get().value()).orElse("");
        cores.add(new Core(wire, role, colour.get(), letters));
      }
    }
    return cores;
  }

  private static boolean hasNeutral(Study study) {
    return study.circuit().branches(Conductor.class).stream()
        .anyMatch(w -> CoreRole.of(study, w).use().filter(Use.NEUTRAL::equals).isPresent());
  }

  private static Optional<Fault> fault(Core core, KeptColours kept, boolean hasNeutral) {
    boolean protective = kept.of(Use.PROTECTIVE).contains(core.letters());
    boolean neutral =
        kept.of(Use.NEUTRAL).contains(core.letters()) && !CoreColour.isDark(core.colour().value());
    if (core.is(Use.PROTECTIVE)) {
      return protective ? Optional.empty() : Optional.of(Fault.UNPROTECTIVE);
    } else if (protective) {
      return Optional.of(Fault.LIVE);
    } else if (core.is(Use.NEUTRAL)) {
      return neutral ? Optional.empty() : Optional.of(Fault.NOT_NEUTRAL);
    }
    return core.is(Use.LINE) && neutral && hasNeutral
        ? Optional.of(Fault.NEUTRALS)
        : Optional.empty();
  }

  private static Subject subject(Core core) {
    return Subject.of(
        FACTS,
        core.colour().mark(),
        core.wire().wire().from().value().toString(),
        core.wire().id());
  }

  private static Outcome violated(Fault fault, List<Core> cores, KeptColours colours) {
    Core first = cores.get(0);
    String colour = first.colour().text();
    Use kept = fault == Fault.LIVE || fault == Fault.UNPROTECTIVE ? Use.PROTECTIVE : Use.NEUTRAL;
    String right = colours.words(kept);
    String more = cores.size() == 1 ? "" : " So it is with %s wires.".formatted(cores.size());
    List<String> at = new ArrayList<>(subject(first).at());
    cores.forEach(core -> at.add(core.wire().id()));
    Subject subject = new Subject(FACTS, first.colour().mark(), at.stream().distinct().toList());
    Subject.Finding finding =
        switch (fault) {
          case LIVE ->
              subject.violated(
                  "%s core on %s".formatted(colour, first.role().on()),
                  "%s is %s, which is kept for the protective conductor, and hangs on %s.%s"
                      .formatted(first.words(), colour, first.role().on(), more),
                  "no colour for %s".formatted(first.role().on()));
          case UNPROTECTIVE ->
              subject
                  .violated(
                      "protective conductor in %s".formatted(colour),
                      "%s is a protective conductor and %s; its colour is %s.%s"
                          .formatted(first.words(), colour, right, more),
                      "protects and does not look it")
                  .lighter(Weight.FIX);
          case NOT_NEUTRAL ->
              subject
                  .violated(
                      "neutral in %s".formatted(colour),
                      "%s hangs on %s and is %s; the neutral's colour is %s.%s"
                          .formatted(first.words(), first.role().on(), colour, right, more),
                      "does not look like the neutral")
                  .lighter(Weight.FIX);
          case NEUTRALS ->
              subject
                  .violated(
                      "line in %s".formatted(colour),
                      "%s hangs on %s and is %s, which is the neutral's here.%s"
                          .formatted(first.words(), first.role().on(), colour, more),
                      "looks like the neutral")
                  .lighter(Weight.FIX);
        };
    if (fault == Fault.UNPROTECTIVE || fault == Fault.NOT_NEUTRAL) {
      colours.of(kept).stream()
          .sorted()
          .findFirst()
          .ifPresent(letters -> cores.forEach(c -> finding.change(c.colour().mark(), letters)));
    }
    finding.alsoAt(first.wire().wire().from().mark(), "hangs on %s".formatted(first.role().on()));
    cores.stream().limit(2 + 2).forEach(c -> finding.alsoAt(c.colour().mark(), "so is this one"));
    return finding.todo(
        switch (fault) {
          case LIVE ->
              "Draw in a core of another colour, or bring the wire to the pin it was meant for: %s is not sleeved over."
                  .formatted(colour);
          case UNPROTECTIVE, NOT_NEUTRAL ->
              "Take a core in %s, or mark both its ends so where the code allows it."
                  .formatted(right);
          case NEUTRALS ->
              "Take a core of another colour, or mark both its ends as a line where the code allows"
                  + " it.";
        },
        colours.basis(kept));
  }
}
