package org.coilwright.rules;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.netlist.Part;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.sizing.Guards;
import org.coilwright.solve.Study;
import org.coilwright.table.Standing;

/** Nothing before the contact interrupts a short-circuit. */
final class ContactorBackupMissing implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("contactor.backup-missing", Weight.FIX, "contactor without back-up protection")
          .what(
              "Looks at each pole of a relay's or contactor's load contacts by itself, whether some"
                  + " way leads from a mains line to it without a fuse or circuit-breaker in it.")
          .why(
              "A contactor is not made to interrupt a short-circuit: its contacts weld, or it"
                  + " bursts.")
          .remedy("Put a fuse or circuit-breaker before it, of the size its maker allows.")
          .blind("What lies before the mains of this circuit.")
          .sources("iec-60947-4-1", "iec-61095")
          .consequenceOf("protection.missing", "conductor.unprotected");

  private final PowerSides sides;
  private final Basis basis;

  ContactorBackupMissing(PowerSides sides) {
    this.sides = sides;
    basis = Basis.of(FACTS, sides.tables(), Standing.PUBLISHED);
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    PowerSides.Seen seen = sides.of(study);
    Map<Part, List<Contact>> poles = new LinkedHashMap<>();
    for (Branch branch : seen.side().branches()) {
      if (branch instanceof Contact contact
          && seen.side().isLine(contact)
          && study.circuit().netlist().parts().get(contact.part()) instanceof Part.Relay relay
          && seen.side().loadsThrough(contact).stream().allMatch(seen.side()::isOnMains)) {
        poles.computeIfAbsent(relay, any -> new ArrayList<>()).add(contact);
      }
    }
    List<Outcome> outcomes = new ArrayList<>();
    poles.forEach((part, contacts) -> outcomes.add(judge(part, contacts, seen)));
    return outcomes;
  }

  private static boolean isBare(Contact pole, Guards guards) {
    return guards.isUnguarded(pole.from()) || guards.isUnguarded(pole.to());
  }

  private Outcome judge(Part part, List<Contact> poles, PowerSides.Seen seen) {
    Guards guards = seen.guards();
    Set<Part> loads = new LinkedHashSet<>();
    poles.forEach(c -> loads.addAll(seen.side().loadsThrough(c)));
    List<String> at = new ArrayList<>(List.of(part.name()));
    loads.forEach(l -> at.add(l.name()));
    Subject subject = new Subject(FACTS, poles.get(0).mark(), List.copyOf(at));
    List<Contact> bare = poles.stream().filter(c -> isBare(c, guards)).toList();
    if (bare.isEmpty()) {
      String devices =
          poles.stream()
              .flatMap(c -> guards.of(c.from()).or(() -> guards.of(c.to())).stream())
              .map(Part::name)
              .distinct()
              .collect(Collectors.joining(" and "));
      return subject.satisfied(
          devices.isEmpty()
              ? "No mains line reaches %s past a device.".formatted(part.name())
              : "%s stands before each pole of %s.".formatted(devices, part.name()),
          basis);
    }
    boolean some = bare.size() < poles.size();
    String names = bare.stream().map(Contact::id).distinct().collect(Collectors.joining(", "));
    var finding =
        subject.violated(
            "nothing protects %s from a short-circuit".formatted(some ? names : part.name()),
            "A line reaches %s without a fuse or circuit-breaker, and it cannot interrupt a"
                    .formatted(some ? names : "it")
                + " short-circuit itself.",
            "no device before it");
    loads.forEach(l -> finding.alsoAt(l.head().mark(), "fed through it"));
    return finding.todo(
        "Put a fuse or circuit-breaker between the mains and %s."
            .formatted(some ? names : part.name()),
        basis);
  }
}
