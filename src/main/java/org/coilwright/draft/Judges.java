package org.coilwright.draft;

import java.util.List;
import java.util.Set;
import java.util.function.Function;
import org.coilwright.rule.Rule;
import org.coilwright.rule.Runner;

/**
 * The rules that a draft has to satisfy.
 *
 * @param whole all of them
 * @param quick those that choose figures, asked often: all but those on faults and settings
 * @param settings those that rehearse settings, or count their starts
 */
public record Judges(Runner whole, Runner quick, Runner settings) {
  private static final Set<String> SLOW = Set.of("fault", "behaviour");
  private static final Set<String> ON_SETTINGS = Set.of("behaviour", "contactor");

  /**
   * All rules of a list.
   *
   * @param runner makes a runner of some of them
   */
  public static Judges of(List<Rule> rules, Function<List<Rule>, Runner> runner) {
    return new Judges(
        runner.apply(rules),
        runner.apply(rules.stream().filter(r -> !SLOW.contains(r.facts().group())).toList()),
        runner.apply(rules.stream().filter(r -> ON_SETTINGS.contains(r.facts().group())).toList()));
  }
}
