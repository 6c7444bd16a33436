package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.coilwright.circuit.Branch.Conductor;
import org.coilwright.netlist.Mark;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Measure;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;

/**
 * Wires of one rating that meet one voltage, which is more: one finding tells of them all.
 *
 * @param rated volts
 * @param met the voltage
 * @param bundles at least one
 */
record LowInsulation(double rated, VoltageBands.Met met, List<WireBundle> bundles) {
  Outcome finding(RuleFacts rule, VoltageBands bands, Basis basis) {
    WireBundle first = bundles.get(0);
    Conductor live =
        first.wires().stream().filter(bands::onMains).findFirst().orElse(first.wires().get(0));
    Printed.Pair pair = Printed.pair(rated, met.highest(), Dimension.VOLTAGE);
    List<Mark> marks = bundles.stream().map(WireBundle::insulationMark).distinct().toList();
    Subject.Finding finding =
        new Subject(rule, first.insulationMark(), path())
            .violated(
                "the insulation of %s is rated too low".formatted(names()),
                numbers(pair),
                "rated " + pair.value())
            .alsoAt(live.mark(), "meets " + pair.limit());
    marks.forEach(mark -> finding.alsoAt(mark, "rated " + pair.value()));
    return finding
        .detail("The voltage that counts is %s.".formatted(met.which()))
        .measured(new Measure(rated, "V"), new Measure(met.highest(), "V"))
        .changes(marks, pair.limit())
        .todo("Use wire rated for %s or more.".formatted(pair.limit()), basis);
  }

  /** The bundles and each of their wires: what else is said of one of them is said of the same. */
  private List<String> path() {
    List<String> path = new ArrayList<>();
    bundles.forEach(bundle -> path.add(bundle.name()));
    bundles.forEach(bundle -> bundle.wires().forEach(wire -> path.add(wire.id())));
    return List.copyOf(path);
  }

  private String names() {
    int more = bundles.size() - 1;
    return more == 0
        ? bundles.get(0).name()
        : "%s and %s more".formatted(bundles.get(0).name(), more);
  }

  private String numbers(Printed.Pair pair) {
    boolean one = bundles.size() == 1;
    return "%s rated %s and meet%s %s at the highest supply: %s too little."
        .formatted(
            one
                ? "It is"
                : bundles.stream()
                    .map(WireBundle::name)
                    .collect(Collectors.joining(", ", "", " are")),
            pair.value(),
            one ? "s" : "",
            pair.limit(),
            pair.apart());
  }
}
