// Over 250 lines: trying, enlarging and lessening share the same figures.
package org.coilwright.draft;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.coilwright.quantity.Printed;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Report;
import org.coilwright.table.Tables;

/**
 * Tries every arrangement for a job: first figures from sizing, larger ones where a rule asks for
 * them, then the least with which every rule is content, then all rules.
 */
final class Drafter {
  private static final int MOST_MENDS = 16;

  /** A; above this a single pole of a relay is the last choice, whatever else it saves. */
  private static final double GOOD_FOR_ONE_POLE = 12;

  /** More than any number of parts. */
  private static final int LAST_CHOICE = 100;

  private final Job job;
  private final Proof proof;
  private final Sizing sizing;
  private final Map<String, PartKind> kinds;

  Drafter(Job job, Tables tables, Judges judges) {
    this.job = job;
    this.proof = new Proof(tables, judges);
    this.sizing = new Sizing(job, tables);
    this.kinds = PartKind.all();
  }

  /** All of them, those that pass first, the best of them foremost. */
  List<Candidate> all(List<Arrangement> arrangements) {
    Sizing.Begun begun = sizing.begin();
    // a second contactor is tried where one does not do
    List<Candidate> tried = new ArrayList<>();
    for (boolean second : new boolean[] {false, true}) {
      if (tried.stream().noneMatch(Candidate::passes)) {
        Map<String, List<Arrangement>> forms =
            arrangements.stream()
                .filter(a -> a.second() == second)
                .collect(
                    Collectors.groupingBy(
                        Arrangement::name, LinkedHashMap::new, Collectors.toList()));
        // a Study belongs to one thread, and each candidate has its own
        tried.addAll(
            forms.values().parallelStream().flatMap(f -> inForms(f, begun).stream()).toList());
      }
    }
    List<Candidate> sorted = new ArrayList<>(tried);
    sorted.sort(
        Comparator.comparing((Candidate c) -> !c.passes())
            .thenComparingInt(c -> farness(c, begun.why()))
            .thenComparingInt(c -> rank(c.arrangement()))
            .thenComparingLong(Candidate::faults)
            .thenComparingInt(tried::indexOf));
    return sorted;
  }

  /** How far one is from passing: what cannot be wired at all is farthest. */
  private static int farness(Candidate candidate, String sized) {
    return candidate.report().isPresent() || candidate.passes()
        ? candidate.why().size()
        : candidate.why().contains(sized) ? LAST_CHOICE : 2 * LAST_CHOICE;
  }

  /** The forms of one arrangement, the usual first; once one passes the others are not asked. */
  private List<Candidate> inForms(List<Arrangement> forms, Sizing.Begun begun) {
    List<Arrangement> usual = new ArrayList<>(forms);
    usual.sort(Comparator.comparingInt(this::rank));
    List<Candidate> tried = new ArrayList<>();
    for (Arrangement form : usual) {
      Candidate candidate = tried(form, begun);
      tried.add(candidate);
      if (candidate.passes()) {
        break;
      }
    }
    return tried;
  }

  /** The same with the easiest figures with which every rule is content. */
  Candidate least(Candidate candidate) {
    Arrangement arrangement = candidate.arrangement();
    return proved(arrangement, least(arrangement, candidate.figures().orElseThrow()));
  }

  /** Fewest parts first; what is electronic or seldom sold counts more. */
  private int rank(Arrangement arrangement) {
    int parts = arrangement.parts().size() + (arrangement.hasControl() ? 1 : 0);
    boolean onePole = arrangement.isOnePole() && sizing.worst() > GOOD_FOR_ONE_POLE;
    boolean seldom = arrangement.isDirect() && arrangement.inCoil();
    return parts
        + (arrangement.supply().isPresent() ? 1 : 0)
        + (onePole ? LAST_CHOICE : 0)
        + (seldom ? LAST_CHOICE : 0);
  }

  private Candidate tried(Arrangement arrangement, Sizing.Begun begun) {
    Optional<String> missing = missing(arrangement);
    if (missing.isPresent()) {
      return Candidate.refused(arrangement, missing.get());
    }
    if (job.isThree() && !arrangement.inCoil()) {
      return Candidate.refused(
          arrangement, "a thermostat of one pole in the load's way opens one line of three");
    }
    if (begun.figures().isEmpty()) {
      return Candidate.refused(arrangement, begun.why());
    }
    Figures figures = best(arrangement, begun.figures().get());
    Report report = proof.quick(text(arrangement, figures));
    for (int i = 0; i < MOST_MENDS && !reasons(report).isEmpty(); i++) {
      Optional<Figures> mended = mended(arrangement, figures, report);
      if (mended.isEmpty()) {
        return failed(arrangement, figures, report);
      }
      figures = mended.get();
      report = proof.quick(text(arrangement, figures));
    }
    if (!reasons(report).isEmpty()) {
      return failed(arrangement, figures, report);
    }
    return proved(arrangement, figures);
  }

  private Candidate proved(Arrangement arrangement, Figures figures) {
    Report whole = proof.of(text(arrangement, figures));
    return new Candidate(
        arrangement,
        Optional.of(figures),
        Optional.of(whole),
        reasons(whole),
        Sketch.of(job, arrangement, figures, kinds).shopping());
  }

  private Candidate failed(Arrangement arrangement, Figures figures, Report report) {
    return new Candidate(
        arrangement, Optional.of(figures), Optional.of(report), reasons(report), Map.of());
  }

  private String text(Arrangement arrangement, Figures figures) {
    return Sketch.of(job, arrangement, figures, kinds).text(List.of(), "");
  }

  /** What stands against a circuit, with its numbers; what a draft cannot settle counts as well. */
  private static List<String> reasons(Report report) {
    Set<String> reasons = new LinkedHashSet<>();
    Proof.against(report).forEach(f -> reasons.add(f.headline() + ": " + f.numbers()));
    Proof.vital(report).forEach(u -> reasons.add(u.sentence() + " (" + u.missing() + ")"));
    return List.copyOf(reasons);
  }

  /** What the brief lacks for an arrangement. */
  private Optional<String> missing(Arrangement arrangement) {
    for (String need : arrangement.needs()) {
      Optional<String> why =
          switch (need) {
            case "auxiliary supply" ->
                job.supply().isPresent()
                    ? Optional.empty()
                    : Optional.of("the controller has no auxiliary supply");
            case "one line" ->
                job.lines() == 1
                    ? Optional.empty()
                    : Optional.of(
                        "the element has %s lines, and a relay opens one".formatted(job.lines()));
            case "mains contact" ->
                job.contact().has("AC-14", "AC-15")
                    ? Optional.empty()
                    : Optional.of(
                        "the manual states no AC-15 for the contact, which a coil of %s needs"
                            .formatted(Printed.volts(job.controlVolts())));
            case "direct coil" ->
                job.contact().has("DC-13")
                    ? Optional.empty()
                    : Optional.of(
                        "the manual states no DC-13 for the contact, which a contactor's coil"
                            + " needs");
            default -> throw new IllegalStateException("nobody knows the need " + need);
          };
      if (why.isPresent()) {
        return why;
      }
    }
    return Optional.empty();
  }

  // -- figures --------------------------------------------------------------------------------

  /** A figure that a part may have, from easily to hardly had. */
  private record Step(String name, List<String> values) {}

  private List<Step> steps(Arrangement arrangement, Figures figures) {
    List<Step> steps = new ArrayList<>();
    Sketch.of(job, arrangement, figures, kinds)
        .parts()
        .forEach(
            (name, kind) -> {
              PartKind part = kinds.get(kind);
              if (part != null) {
                part.steps(job.volts())
                    .forEach((gap, values) -> steps.add(new Step(name + "." + gap, values)));
              }
            });
    return steps;
  }

  /** The figures with the best that can be had of every part. */
  private Figures best(Arrangement arrangement, Figures begun) {
    Figures figures = begun;
    for (Step step : steps(arrangement, begun)) {
      figures = figures.with(step.name(), step.values().get(step.values().size() - 1));
    }
    return figures;
  }

  /** Takes of each figure the easiest with which the rules are content. */
  private Figures least(Arrangement arrangement, Figures whole) {
    Figures figures = whole;
    for (Step step : steps(arrangement, whole)) {
      Figures from = figures;
      String before = text(arrangement, from);
      int low = 0;
      int high = step.values().size() - 1;
      if (before.equals(text(arrangement, from.with(step.name(), step.values().get(0))))) {
        continue;
      }
      while (low < high) {
        int middle = (low + high) / 2;
        boolean does = does(arrangement, from.with(step.name(), step.values().get(middle)));
        low = does ? low : middle + 1;
        high = does ? middle : high;
      }
      figures = from.with(step.name(), step.values().get(high));
    }
    return figures;
  }

  private boolean does(Arrangement arrangement, Figures figures) {
    return reasons(proof.quick(text(arrangement, figures))).isEmpty();
  }

  /** Something larger where a rule asks for it; empty if nothing that can be enlarged helps. */
  private Optional<Figures> mended(Arrangement arrangement, Figures figures, Report report) {
    for (Outcome.Violated finding : Proof.against(report)) {
      for (String name : enlarged(arrangement, figures, finding)) {
        Optional<Figures> more = sizing.larger(figures, name);
        if (more.isPresent()) {
          return more;
        }
      }
    }
    for (Outcome.Undecided open : Proof.vital(report)) {
      String run = open.missing().substring(open.missing().lastIndexOf(' ') + 1);
      Optional<Figures> more =
          Sketch.of(job, arrangement, figures, kinds)
              .useOf(run)
              .flatMap(use -> sizing.larger(figures, use + ".size"));
      if (more.isPresent()) {
        return more;
      }
    }
    return Optional.empty();
  }

  private List<String> enlarged(
      Arrangement arrangement, Figures figures, Outcome.Violated finding) {
    String rule = finding.rule().id();
    return switch (rule) {
      case "protection.load-exceeds-device", "protection.device-too-warm" -> List.of("breaker");
      case "protection.disconnection-time", "poles.earth-too-thin" -> List.of("load.size");
      case "contactor.current", "contactor.making", "contactor.short-life" -> List.of("contactor");
      case "coil.too-low" -> List.of("elv.size");
      default ->
          rule.startsWith("conductor.")
              ? sizes(Sketch.of(job, arrangement, figures, kinds), finding)
              : List.of();
    };
  }

  /** The sizes of the wires that a finding names. */
  private static List<String> sizes(Sketch sketch, Outcome.Violated finding) {
    Set<String> sizes = new LinkedHashSet<>();
    for (String place : finding.path()) {
      Optional<String> use =
          place.startsWith("wire ") && place.substring(5).matches("[0-9]{1,6}")
              ? sketch.useOf(Integer.parseInt(place.substring(5)))
              : sketch.useOf(place);
      use.ifPresent(u -> sizes.add(u + ".size"));
    }
    if (sizes.isEmpty() || sizes.contains("load.size")) {
      sizes.add("supply.size");
      sizes.add("load.size");
    }
    return List.copyOf(sizes);
  }
}
