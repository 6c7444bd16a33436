package org.coilwright.sweep;

import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Outcome.Satisfied;
import org.coilwright.rule.Outcome.Violated;
import org.coilwright.rule.Report;
import org.coilwright.rule.Weight;

/**
 * What the program said about a mutant, held against what the oracle sees.
 *
 * @param named the dangers that the report names as STOP or FIX
 * @param undecided the dangers of which it says that it could not tell
 * @param behind the dangers that only matter once a heavier one, which it names, is mended
 * @param silent all other dangers
 * @param alarms the rules that raised a STOP or FIX about a harmless mutant
 * @param contradictions what the report says and unsays
 * @param findings how many above NOTE the mistake gave
 * @param leads true if the finding at the top names what the mistake touched; also if there is none
 * @param top the rule of that finding, empty if there is none
 */
record Verdict(
    Mutant mutant,
    Set<Danger> named,
    Set<Danger> undecided,
    Set<Danger> behind,
    Set<Danger> silent,
    Set<String> alarms,
    Set<String> contradictions,
    int findings,
    boolean leads,
    String top) {
  /** While one of these stands, nothing can be said about what flows elsewhere. */
  private static final Set<Hazard> FIRST =
      EnumSet.of(Hazard.SHORT_CIRCUIT, Hazard.MAINS_ON_ELV, Hazard.BUZZING);

  /** What a load or coil draws that is fed wrongly is no matter of its own. */
  private static final Set<Hazard> FED_WRONGLY =
      EnumSet.of(
          Hazard.WRONG_VOLTAGE,
          Hazard.COIL_OVER,
          Hazard.LINE_MISSING,
          Hazard.LINE_REPEATED,
          Hazard.UNPROTECTED,
          Hazard.NEUTRAL_EARTHED,
          Hazard.EARTH_CARRIES,
          Hazard.NEUTRAL_CROSSED,
          Hazard.RCD_TRIPS,
          Hazard.LINE_LEFT_ON,
          Hazard.CUT_OUT_BYPASSED,
          Hazard.OFF_WHEN_ON,
          Hazard.ON_WHEN_OFF);

  private static final Set<Hazard> OF_COILS =
      EnumSet.of(Hazard.LATCHING, Hazard.SUPPRESSION_MISSING, Hazard.COIL_HALF);

  private static final Set<Hazard> MISWIRED_COIL =
      EnumSet.of(Hazard.COIL_NEVER, Hazard.COIL_ALWAYS, Hazard.COIL_HALF);

  private static final Set<Hazard> LEFT_ON = EnumSet.of(Hazard.LINE_LEFT_ON, Hazard.NEUTRAL_ONLY);

  private static final Set<Hazard> OF_CURRENTS =
      EnumSet.of(
          Hazard.DEVICE_BELOW_LOAD,
          Hazard.WIRE_OVERLOADED,
          Hazard.CONTACT_CURRENT,
          Hazard.NEUTRAL_CROSSED);

  /** What does not depend on what flows. */
  private static final Set<Hazard> ALWAYS =
      EnumSet.of(
          Hazard.SHORT_CIRCUIT,
          Hazard.MAINS_ON_ELV,
          Hazard.BUZZING,
          Hazard.RESERVED_PIN,
          Hazard.EARTH_MISSING,
          Hazard.EARTH_SWITCHED);

  boolean isHarmless() {
    return named.isEmpty() && undecided.isEmpty() && silent.isEmpty() && behind.isEmpty();
  }

  /**
   * Holds a report against the dangers.
   *
   * @param base what the program says about the circuit without the mistake
   */
  static Verdict of(Mutant mutant, Set<Danger> dangers, Report report, Report base) {
    List<Violated> all = told(report);
    Set<Danger> named = new LinkedHashSet<>();
    Set<Danger> undecided = new LinkedHashSet<>();
    Set<Danger> silent = new LinkedHashSet<>();
    for (Danger danger : dangers) {
      if (all.stream().anyMatch(v -> v.weight() != Weight.NOTE && names(v, danger))) {
        named.add(danger);
      } else if (report.undecided().stream().anyMatch(u -> leavesOpen(u, danger))) {
        undecided.add(danger);
      } else {
        silent.add(danger);
      }
    }
    Set<Danger> behind = new LinkedHashSet<>();
    if (named.stream().anyMatch(d -> FIRST.contains(d.hazard()))) {
      silent.stream().filter(d -> !ALWAYS.contains(d.hazard())).forEach(behind::add);
    }
    if (named.stream().anyMatch(d -> FED_WRONGLY.contains(d.hazard()))) {
      silent.stream().filter(d -> OF_CURRENTS.contains(d.hazard())).forEach(behind::add);
    }
    for (Danger danger : silent) {
      // what a coil of the other kind does is not its maker's word
      if (OF_COILS.contains(danger.hazard())
          && named.contains(new Danger(Hazard.COIL_KIND, danger.subject()))) {
        behind.add(danger);
      }
      // a coil that never gets its voltage lies elsewhere than was meant, and its diode with it
      if (danger.hazard() == Hazard.DIODE_CONDUCTS
          && named.stream().anyMatch(d -> MISWIRED_COIL.contains(d.hazard()))) {
        behind.add(danger);
      }
      // whether a contact that nothing closes would leave a line on is not to be seen
      if (LEFT_ON.contains(danger.hazard())
          && named.contains(new Danger(Hazard.OFF_WHEN_ON, danger.subject()))) {
        behind.add(danger);
      }
    }
    silent.removeAll(behind);
    List<Violated> fresh = fresh(report.findings(), base.findings());
    Set<String> alarms = new TreeSet<>();
    if (dangers.isEmpty()) {
      fresh.forEach(v -> alarms.add(v.rule().id()));
    }
    return new Verdict(
        mutant,
        named,
        undecided,
        behind,
        silent,
        alarms,
        contradictions(report, all),
        fresh.size(),
        fresh.isEmpty() || touches(fresh.get(0), mutant),
        fresh.isEmpty() ? "" : fresh.get(0).rule().id());
  }

  /** Everything above the line and what it tells along. */
  private static List<Violated> told(Report report) {
    List<Violated> all = new ArrayList<>(report.findings());
    report.silenced().values().forEach(all::addAll);
    report.beside().values().forEach(all::addAll);
    return all;
  }

  private static boolean names(Violated finding, Danger danger) {
    return danger.hazard().rules().contains(finding.rule().id())
        && mentions(
            finding, finding.headline() + " " + finding.numbers() + finding.detail(), danger);
  }

  private static boolean leavesOpen(Outcome.Undecided open, Danger danger) {
    return danger.hazard().rules().contains(open.rule().id())
        && mentions(open, open.sentence() + " " + open.missing(), danger);
  }

  private static boolean mentions(Outcome outcome, String text, Danger danger) {
    String subject = danger.subject();
    return subject.isEmpty()
        || outcome.at().stream().anyMatch(a -> a.equals(subject) || a.startsWith(subject + "."))
        || Pattern.compile("\\b" + Pattern.quote(subject) + "\\b").matcher(text).find();
  }

  /** What is above NOTE and was not said of the circuit without the mistake. */
  private static List<Violated> fresh(List<Violated> findings, List<Violated> before) {
    Map<String, Integer> known = new HashMap<>();
    before.forEach(v -> known.merge(key(v), 1, Integer::sum));
    List<Violated> fresh = new ArrayList<>();
    for (Violated finding : findings) {
      if (finding.weight() != Weight.NOTE && known.merge(key(finding), -1, Integer::sum) < 0) {
        fresh.add(finding);
      }
    }
    return fresh;
  }

  private static String key(Violated finding) {
    return finding.weight() + finding.rule().id() + finding.at();
  }

  private static boolean touches(Violated finding, Mutant mutant) {
    return finding.at().stream()
            .flatMap(a -> Stream.of(a, a.indexOf('.') < 0 ? a : a.substring(0, a.indexOf('.'))))
            .anyMatch(mutant.touched()::contains)
        || finding.places().stream().anyMatch(p -> mutant.places().contains(p.mark().line()))
        || mutant.touched().stream()
            .anyMatch(
                t ->
                    Pattern.compile("\\b" + Pattern.quote(t) + "\\b")
                        .matcher(
                            String.join(
                                " ", finding.headline(), finding.numbers(), finding.remedy()))
                        .find());
  }

  private static Set<String> contradictions(Report report, Collection<Violated> all) {
    Set<String> found = new TreeSet<>();
    Set<String> violated = new TreeSet<>();
    all.forEach(v -> violated.add(v.rule().id() + " at " + v.at().get(0)));
    boolean shorted = all.stream().anyMatch(v -> v.rule().id().equals("wiring.short-circuit"));
    for (Satisfied satisfied : report.satisfied()) {
      String key = satisfied.rule().id() + " at " + satisfied.at().get(0);
      if (violated.contains(key)) {
        found.add(satisfied.rule().id() + " violated and satisfied at one subject");
      }
      if (shorted && satisfied.rule().id().equals("wiring.intent-differs")) {
        found.add("intent satisfied beside a short-circuit");
      }
    }
    return found;
  }
}
