package org.coilwright.rules;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Part;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rewiring;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.solve.State;
import org.coilwright.solve.Study;

/**
 * The poles of a residual-current device, and by which of their ends they are fed.
 *
 * @param opened how far the mains get with the device open
 */
record ResidualPoles(Study study, Part.Protective device, Feeding opened) {
  /** Poles that are fed from different ends, so that their currents add up in the device. */
  Optional<Outcome> backwards(RuleFacts facts, Basis basis) {
    List<Contact> ahead = new ArrayList<>();
    List<Contact> back = new ArrayList<>();
    for (Contact pole : poles()) {
      boolean from = MainsConsumer.isOnMains(opened, pole.from());
      boolean to = MainsConsumer.isOnMains(opened, pole.to());
      if (from != to) {
        (from ? ahead : back).add(pole);
      }
    }
    if (ahead.isEmpty() || back.isEmpty()) {
      return Optional.empty();
    }
    List<Contact> odd = back.size() <= ahead.size() ? back : ahead;
    String poles = odd.stream().map(Contact::id).collect(Collectors.joining(" and "));
    Subject.Finding finding =
        Subject.of(facts, device.head().mark(), device.name())
            .violated(
                "%s is fed from both sides".formatted(device.name()),
                "%s %s fed from the other end than its other poles: their currents add up in %s instead of cancelling, and it opens as soon as a load is on."
                    .formatted(poles, odd.size() == 1 ? "is" : "are", device.name()),
                "opens with any load");
    odd.forEach(
        pole ->
            ends(
                pole,
                odd == back ? pole.to() : pole.from(),
                "brings the mains to the wrong end",
                finding));
    odd.forEach(
        pole ->
            finding.change(
                Rewiring.exchanged(
                    study.circuit().netlist(),
                    pole.from().terminals().get(0),
                    pole.to().terminals().get(0))));
    return Optional.of(finding.todo("Exchange the two ends of %s.".formatted(poles), basis));
  }

  private List<Contact> poles() {
    return study.circuit().branchesOf(device.name()).stream()
        .filter(Contact.class::isInstance)
        .map(Contact.class::cast)
        .toList();
  }

  private void ends(Contact pole, Node end, String label, Subject.Finding finding) {
    study.circuit().branchesAt(end).stream()
        .filter(b -> !b.part().equals(pole.part()))
        .findFirst()
        .ifPresent(b -> finding.alsoAt(b.mark(), label));
  }

  /** A pole that is fed from behind another pole of the device, so that a current passes twice. */
  Optional<Outcome> twice(RuleFacts facts, Basis basis) {
    Map<Contact, Feeding> without = new LinkedHashMap<>();
    for (Contact pole : poles()) {
      without.put(pole, Feeding.of(study, b -> !b.equals(pole)));
    }
    for (Map.Entry<Contact, Feeding> one : without.entrySet()) {
      Contact pole = one.getKey();
      boolean from = MainsConsumer.isOnMains(one.getValue(), pole.from());
      boolean to = MainsConsumer.isOnMains(one.getValue(), pole.to());
      Node fed = from ? pole.from() : pole.to();
      if (from == to || MainsConsumer.isOnMains(opened, fed)) {
        continue;
      }
      String through =
          without.entrySet().stream()
              .filter(e -> !MainsConsumer.isOnMains(e.getValue(), fed))
              .map(e -> e.getKey().id())
              .findFirst()
              .orElse("its other poles");
      Subject.Finding finding =
          Subject.of(facts, device.head().mark(), device.name())
              .violated(
                  "%s is fed from its own output".formatted(device.name()),
                  "%s gets its current at %s through %s: it goes through %s twice there and comes back once, and %s opens as soon as a load is on."
                      .formatted(pole.id(), fed.name(), through, device.name(), device.name()),
                  "opens with any load");
      ends(pole, fed, "brings what went through it already", finding);
      return Optional.of(
          finding.todo("Feed %s from ahead of %s.".formatted(pole.id(), device.name()), basis));
    }
    return Optional.empty();
  }

  /** A pole of which both ends are live with the device open, in some position of the contacts. */
  Optional<Outcome> bridged(RuleFacts facts, Basis basis) {
    List<Contact> suspect =
        poles().stream()
            .filter(p -> MainsConsumer.isOnMains(opened, p.from()))
            .filter(p -> MainsConsumer.isOnMains(opened, p.to()))
            .toList();
    for (State state : suspect.isEmpty() ? List.<State>of() : study.states()) {
      Predicate<Branch> closed = Feeding.closed(study, state);
      Predicate<Branch> past = b -> !b.part().equals(device.name()) && closed.test(b);
      for (Contact pole : suspect) {
        Optional<Outcome> found =
            study
                .circuit()
                .path(pole.from(), pole.to(), b -> isWay(b) && past.test(b))
                .map(way -> bridged(facts, basis, pole, state, way));
        if (found.isPresent()) {
          return found;
        }
      }
    }
    return Optional.empty();
  }

  private static boolean isWay(Branch branch) {
    return branch instanceof Branch.Conductor || branch instanceof Contact;
  }

  private Outcome bridged(
      RuleFacts facts, Basis basis, Contact pole, State state, Branch.Path way) {
    Subject.Finding finding =
        Subject.of(facts, device.head().mark(), device.name())
            .violated(
                "a way leads past %s".formatted(device.name()),
                "With %s, %s is bridged: %s. What is behind it then draws a part of its current past %s, which opens with a load on, and of a fault sees a part."
                    .formatted(Positions.of(study, state), pole.id(), way.inWords(), device.name()),
                "some of the current goes past it");
    way.branches().forEach(branch -> finding.alsoAt(branch.mark(), "in the way past it"));
    return finding.todo(
        "Take this way apart: what is behind %s gets its current through %s alone."
            .formatted(device.name(), device.name()),
        basis);
  }
}
