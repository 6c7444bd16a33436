package org.coilwright.draft;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.coilwright.netlist.Brief;
import org.coilwright.netlist.ReadingProblem;
import org.coilwright.quantity.Printed;
import org.coilwright.rule.Report;
import org.coilwright.table.Tables;

/** Makes a netlist of a brief, and proves it by the rules. */
public final class Draft {
  private Draft() {}

  /** What came of a brief. */
  public sealed interface Answer {}

  /** It contradicts itself, or asks for what is not drafted; at least one problem. */
  public record Unusable(List<ReadingProblem> problems) implements Answer {}

  /**
   * A circuit in which no rule finds anything to stop or to fix.
   *
   * @param netlist its text
   * @param report what the rules say of it
   * @param title which arrangement it is
   * @param says the same in a sentence, and what speaks against it
   * @param buy what to ask for in a shop, by designation
   * @param others what else was tried
   * @param assumed what was taken because the brief does not say it
   * @param open what stays open because nobody can know it but on site
   */
  public record Drafted(
      String netlist,
      Report report,
      String title,
      String says,
      Map<String, String> buy,
      List<Other> others,
      List<String> assumed,
      List<String> open)
      implements Answer {}

  /**
   * No arrangement passes.
   *
   * @param others why not, the nearest first
   * @param change what would have to change
   */
  public record Nothing(List<Other> others, List<String> change, List<String> assumed)
      implements Answer {}

  /**
   * Another arrangement.
   *
   * @param passes true if it would do as well
   * @param lines what it needs more, or why it fails, with the numbers
   */
  public record Other(String title, boolean passes, List<String> lines) {}

  /** Drafts. */
  public static Answer of(Brief brief, Tables tables, Judges judges) {
    JobReader.Read read = JobReader.read(brief, tables);
    if (read instanceof JobReader.Refused refused) {
      return new Unusable(refused.problems());
    }
    Job job = ((JobReader.Whole) read).job();
    Drafter drafter = new Drafter(job, tables, judges);
    List<Candidate> all = drafter.all(Arrangement.all());
    if (!all.get(0).passes()) {
      return new Nothing(others(all, Optional.empty()), change(job, all), job.assumed());
    }
    return drafted(job, drafter.least(all.get(0)), all, new Proof(tables, judges));
  }

  private static Drafted drafted(Job job, Candidate best, List<Candidate> all, Proof proof) {
    Arrangement arrangement = best.arrangement();
    Sketch sketch = Sketch.of(job, arrangement, best.figures().orElseThrow(), PartKind.all());
    List<String> open = new ArrayList<>(job.open());
    List<String> assumed = new ArrayList<>(job.assumed());
    Optional<Settings> settings = Optional.empty();
    if (job.brief().hasGroup("plant")) {
      Settings.Found found =
          Settings.of(job, s -> proof.settings(sketch.text(List.of(), s.yaml(job.brief()))));
      settings = found.settings();
      if (settings.isEmpty()) {
        open.add(found.why());
      } else if (job.brief().quantity("vessel.litres").isPresent()) {
        assumed.add("water from 12 to 60 °C, for the longest time a day");
      }
    }
    List<String> head = head(arrangement, assumed);
    String switching = settings.map(s -> s.yaml(job.brief())).orElse("");
    String netlist = sketch.text(head, switching);
    Report report = proof.of(netlist);
    if (!switching.isEmpty() && !Proof.against(report).isEmpty()) {
      open.add("the switching settings: " + Proof.against(report).get(0).headline());
      netlist = sketch.text(head, "");
      report = best.report().orElseThrow();
    }
    return new Drafted(
        netlist,
        report,
        arrangement.title(),
        arrangement.says()
            + "; "
            + arrangement.weakness()
            + settings.map(s -> ". Settings: " + s.words()).orElse(""),
        sketch.shopping(),
        others(all.subList(1, all.size()), Optional.of(best)),
        List.copyOf(assumed),
        open(open, arrangement, report));
  }

  /** What the brief leaves open, then what the tables do. */
  private static List<String> open(List<String> before, Arrangement arrangement, Report report) {
    Set<String> open = new LinkedHashSet<>();
    if (arrangement.needs().contains("mains contact")) {
      open.add(
          "whether the controller's contact is insulated for mains from the rest of it, by"
              + " reinforced insulation: in its manual, and if it is not, not this arrangement");
    }
    open.addAll(before);
    Proof.unsettled(report).forEach(u -> open.add(u.sentence()));
    return List.copyOf(open);
  }

  /** What would let some arrangement pass: a better contact, and what the nearest lacks. */
  private static List<String> change(Job job, List<Candidate> all) {
    Set<String> change = new LinkedHashSet<>();
    if (!job.contact().hasDirect() && !job.contact().has("AC-14", "AC-15")) {
      change.add(
          "The manual says nothing of coils. Ask its maker what the contact may switch at %s DC (DC-13, or DC-1 into a relay with a diode), or as AC-15 at %s, and write it under contact:."
              .formatted(Printed.volts(job.coilVolts()), Printed.volts(job.controlVolts())));
    }
    if (all.get(0).report().isEmpty()) {
      change.add(
          "Lead the wires through cooler air (room:), make them shorter, put the devices into"
              + " cooler air, or have the element divided.");
    }
    all.get(0).report().stream()
        .flatMap(report -> Proof.against(report).stream())
        .forEach(f -> change.add(f.remedy()));
    return List.copyOf(change);
  }

  private static List<String> head(Arrangement arrangement, List<String> assumed) {
    List<String> head = new ArrayList<>();
    head.add("Drafted: " + arrangement.title() + ".");
    head.add("It suits where: " + arrangement.when() + ".");
    head.add("Against it: " + arrangement.weakness() + ".");
    head.add(
        "Each part has the least figures that pass; what stands behind \"buy\" is what to ask"
            + " for.");
    head.add("With the data sheets at hand, put their figures in place and check again.");
    if (!assumed.isEmpty()) {
      head.add("Assumed, because the brief does not say it:");
      assumed.forEach(a -> head.add("  " + a));
    }
    return head;
  }

  /** One for each arrangement: its forms differ in little. */
  private static List<Other> others(List<Candidate> all, Optional<Candidate> best) {
    List<Other> others = new ArrayList<>();
    Set<String> told = new LinkedHashSet<>();
    best.ifPresent(b -> told.add(b.arrangement().name()));
    for (Candidate candidate : all) {
      if (told.add(candidate.arrangement().name())) {
        others.add(
            new Other(
                candidate.arrangement().title(),
                candidate.passes(),
                candidate.passes()
                    ? List.of(more(candidate, best))
                    : candidate.why().subList(0, Math.min(2, candidate.why().size()))));
      }
    }
    return others;
  }

  private static String more(Candidate other, Optional<Candidate> best) {
    int parts =
        other.arrangement().parts().size()
            - best.map(b -> b.arrangement().parts().size()).orElse(0);
    return (parts > 0
            ? "passes too, with %s more %s".formatted(parts, parts == 1 ? "part" : "parts")
            : "passes too")
        + "; "
        + other.arrangement().weakness();
  }
}
