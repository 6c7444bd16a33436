package org.coilwright.sweep;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.coilwright.sweep.Mutant.Kind;

/** The counts of a sweep, and the mutants behind them. */
final class Tally {
  /** As many findings above NOTE as one mistake may give. */
  private static final int MOST_FINDINGS = 8;

  private final Map<Hazard, int[]> hazards = new EnumMap<>(Hazard.class);
  private final Map<String, Set<String>> gaps = new TreeMap<>();
  private final Map<String, Set<String>> alarms = new TreeMap<>();
  private final Map<String, String> faults = new TreeMap<>();
  private int mutants;
  private int refused;
  private int dangerous;
  private int harmless;
  private int alarmed;
  private int led;
  private int misled;

  synchronized void fault(Mutant mutant, String trace) {
    mutants++;
    faults.put(mutant.name(), trace);
  }

  synchronized void refused() {
    mutants++;
    refused++;
  }

  /** How many mutants were looked at. */
  synchronized int mutants() {
    return mutants;
  }

  synchronized void add(Verdict verdict) {
    mutants++;
    String name = verdict.mutant().name();
    List<Set<Danger>> groups =
        List.of(verdict.named(), verdict.undecided(), verdict.behind(), verdict.silent());
    for (int i = 0; i < groups.size(); i++) {
      for (Danger danger : groups.get(i)) {
        hazards.computeIfAbsent(danger.hazard(), h -> new int[4])[i]++;
      }
    }
    verdict.silent().forEach(d -> note(gaps, "silent " + d.hazard(), name));
    if (verdict.isHarmless()) {
      harmless++;
      alarmed += verdict.alarms().isEmpty() ? 0 : 1;
    } else {
      dangerous++;
    }
    verdict.alarms().forEach(a -> note(alarms, a + " " + verdict.mutant().kind(), name));
    verdict.contradictions().forEach(c -> note(gaps, "contradiction " + c, name));
    if (verdict.findings() > MOST_FINDINGS) {
      note(gaps, "many", name);
    }
    Kind kind = verdict.mutant().kind();
    if ((kind == Kind.MOVED || kind == Kind.LEFT_OUT) && !verdict.top().isEmpty()) {
      led++;
      misled += verdict.leads() ? 0 : 1;
      if (!verdict.leads()) {
        note(gaps, "misled by " + verdict.top(), name);
      }
    }
  }

  private static void note(Map<String, Set<String>> where, String what, String mutant) {
    where.computeIfAbsent(what, w -> new TreeSet<>()).add(mutant);
  }

  /** What the program should not do, by what it is, with the mutants that show it. */
  Map<String, Set<String>> gaps() {
    return gaps;
  }

  /** The rules that raised a STOP or FIX about a harmless mutant, with its kind. */
  Map<String, Set<String>> alarms() {
    return alarms;
  }

  /** Failures of the program by mutant. */
  Map<String, String> faults() {
    return faults;
  }

  /** The hazards that were met. */
  Set<Hazard> hazards() {
    return hazards.keySet();
  }

  /** How many of the moved and missing wires have a finding at the top that is not about them. */
  double misledShare() {
    return led == 0 ? 0 : (double) misled / led;
  }

  /** The table that a run ends with. */
  String table() {
    List<String> lines = new ArrayList<>();
    lines.add(
        "%d mutants: %d refused by the reader, %d failed, %d dangerous, %d harmless"
            .formatted(mutants, refused, faults.size(), dangerous, harmless));
    lines.add("harmless mutants with a STOP or FIX: " + alarmed);
    lines.add(
        "moved or missing wires where the first finding is about something else: %d of %d"
            .formatted(misled, led));
    lines.add("");
    lines.add(
        "%-24s %7s %7s %9s %7s %7s"
            .formatted("hazard", "mutants", "named", "undecided", "behind", "silent"));
    int[] sum = new int[4];
    hazards.forEach(
        (hazard, counts) -> {
          for (int i = 0; i < sum.length; i++) {
            sum[i] += counts[i];
          }
          lines.add(row(hazard.name(), counts));
        });
    lines.add(row("all", sum));
    lines.add("");
    gaps.forEach((what, names) -> lines.add(what + ": " + count(names)));
    alarms.forEach((what, names) -> lines.add("alarm " + what + ": " + count(names)));
    return String.join("\n", lines) + "\n";
  }

  private static String row(String name, int[] counts) {
    return "%-24s %7d %7d %9d %7d %7d"
        .formatted(
            name,
            counts[0] + counts[1] + counts[2] + counts[3],
            counts[0],
            counts[1],
            counts[2],
            counts[3]);
  }

  private static String count(Set<String> names) {
    return names.size() + ", " + names.iterator().next();
  }
}
