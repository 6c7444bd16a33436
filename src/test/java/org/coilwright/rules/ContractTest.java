package org.coilwright.rules;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Weight;
import org.coilwright.table.Tables;
import org.junit.jupiter.api.Test;

/**
 * The names and weights that people and programs rely on: none may vanish, change or be heavier.
 */
class ContractTest {
  /** Rule id to weight, the heavier where a rule has two. */
  private static final Map<String, Weight> CONTRACT = new TreeMap<>();

  static {
    put(
        Weight.STOP,
        "wiring.reserved-pin",
        "wiring.self-joined",
        "wiring.short-circuit",
        "wiring.intent-differs",
        "wiring.no-steady-state",
        "wiring.sneak-path",
        "coil.always-on",
        "coil.wrong-current-kind",
        "coil.half-pulled",
        "coil.wont-release",
        "coil.reversed",
        "drive.current",
        "drive.voltage",
        "supply.overloaded",
        "suppression.reversed",
        "suppression.diode-on-ac",
        "separation.mains-meets-elv",
        "separation.shared-run",
        "separation.relay-insulation",
        "separation.insulation-voltage",
        "poles.load-not-switched",
        "poles.neutral-only",
        "poles.protective-conductor-switched",
        "poles.line-repeated",
        "poles.line-missing",
        "poles.neutral-missing",
        "poles.earth-missing",
        "poles.earth-too-thin",
        "poles.neutral-crossed",
        "fault.welds-on",
        "fault.earth-starts-load",
        "fault.break-holds-on",
        "fault.crosses-separation",
        "contactor.current",
        "contactor.voltage",
        "contactor.making",
        "conductor.unprotected",
        "conductor.overloaded",
        "conductor.short-circuit",
        "conductor.neutral-overloaded",
        "protection.missing",
        "protection.disconnection-time",
        "load.limit-wrong-form",
        "protection.island-earth-fault",
        "protection.island-no-bond",
        "load.no-cut-out",
        "load.wrong-voltage");
    put(
        Weight.FIX,
        "wiring.loose-end",
        "wiring.crowded-terminal",
        "wiring.two-steady-states",
        "coil.never-on",
        "coil.too-low",
        "coil.too-high",
        "coil.line-too-long",
        "drive.inrush",
        "drive.inductive-break",
        "supply.inrush",
        "supply.unfused",
        "suppression.missing",
        "suppression.underrated",
        "separation.elv-earthed",
        "poles.line-left-on",
        "contactor.category",
        "contactor.short-life",
        "contactor.backup-missing",
        "contactor.backup-too-large",
        "conductor.voltage-drop",
        "conductor.size-missing",
        "protection.load-exceeds-device",
        "protection.rcd-missing",
        "protection.rcd-bypassed",
        "protection.exceeds-load",
        "load.no-thermostat",
        "load.limit-setting",
        "load.no-overload",
        "load.undivided",
        "enclosure.too-warm",
        "behaviour.confirm-too-short",
        "behaviour.start-below-load",
        "behaviour.cycles",
        "behaviour.battery-drain",
        "behaviour.daily-limit",
        "behaviour.wear",
        "behaviour.from-battery",
        "load.exceeds-island",
        "protection.island-short-circuit");
    put(
        Weight.NOTE,
        "wiring.repeated",
        "wiring.unused-part",
        "drive.below-least-load",
        "suppression.slow-release",
        "load.together",
        "load.water-too-cool",
        "behaviour.window-forces-on",
        "behaviour.island",
        "record.not-checked",
        "record.accepted-nothing");
  }

  private static void put(Weight weight, String... ids) {
    for (String id : ids) {
      CONTRACT.put(id, weight);
    }
  }

  private static final List<Rule> RULES = AllRules.of(Tables.load());

  @Test
  void every_agreed_rule_exists_with_its_weight() {
    Map<String, Weight> found = new TreeMap<>();
    RULES.stream()
        .map(Rule::facts)
        .filter(facts -> CONTRACT.containsKey(facts.id()))
        .forEach(facts -> found.put(facts.id(), facts.weight()));
    assertEquals(CONTRACT, found);
  }

  @Test
  void no_name_stands_twice() {
    Map<String, Long> counts =
        RULES.stream()
            .collect(
                Collectors.groupingBy(
                    rule -> rule.facts().id(), LinkedHashMap::new, Collectors.counting()));
    assertEquals(RULES.size(), counts.size(), counts.toString());
  }

  @Test
  void a_class_is_named_for_its_rule() {
    for (Rule rule : RULES) {
      String name = rule.getClass().getSimpleName();
      String kebab = name.replaceAll("(?<!^)([A-Z])", "-$1").toLowerCase(Locale.ROOT);
      assertEquals(rule.facts().id().replace('.', '-'), kebab);
    }
  }

  @Test
  void whatever_silences_a_rule_is_a_rule() {
    Set<String> ids = RULES.stream().map(r -> r.facts().id()).collect(Collectors.toSet());
    for (Rule rule : RULES) {
      for (String cause : rule.facts().silencedBy()) {
        assertTrue(ids.contains(cause), rule.facts().id() + " waits for " + cause);
      }
      for (String cause : rule.facts().carriedBy()) {
        assertTrue(ids.contains(cause), rule.facts().id() + " is told with " + cause);
      }
    }
  }

  @Test
  void every_source_that_a_rule_names_is_in_the_bibliography() {
    Tables tables = Tables.load();
    RULES.stream()
        .map(Rule::facts)
        .map(RuleFacts::sources)
        .flatMap(List::stream)
        .forEach(tables::source);
  }
}
