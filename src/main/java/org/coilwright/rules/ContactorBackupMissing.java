package org.coilwright.rules;

import java.util.List;
import java.util.Optional;
import org.coilwright.netlist.Part;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Weight;
import org.coilwright.sizing.Guards;
import org.coilwright.solve.Study;
import org.coilwright.table.Standing;

/** Nothing before the contact interrupts a short-circuit. */
final class ContactorBackupMissing implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("contactor.backup-missing", Weight.FIX, "contactor without back-up protection")
          .what(
              "Looks whether some way leads from a mains line to a relay's or contactor's load"
                  + " contact without a fuse or circuit-breaker in it.")
          .why(
              "A contactor is not made to interrupt a short-circuit: its contacts weld, or it"
                  + " bursts.")
          .remedy("Put a fuse or circuit-breaker before it, of the size its maker allows.")
          .blind("What lies before the mains of this circuit.")
          .sources("iec-60947-4-1", "iec-61095")
          .consequenceOf("protection.missing");

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
    Guards guards = sides.of(study).guards();
    return LoadContact.ask(
        sides,
        study,
        c ->
            c.part() instanceof Part.Relay && c.loads().stream().allMatch(c.side()::isOnMains)
                ? Optional.of(judge(c, guards))
                : Optional.empty());
  }

  private Outcome judge(LoadContact contact, Guards guards) {
    var subject = contact.subject(FACTS);
    boolean bare =
        guards.isUnguarded(contact.contact().from()) || guards.isUnguarded(contact.contact().to());
    if (!bare) {
      return subject.satisfied(
          guards
              .of(contact.contact().from())
              .or(() -> guards.of(contact.contact().to()))
              .map(d -> "%s stands before %s.".formatted(d.name(), contact.name()))
              .orElse("No mains line reaches %s past a device.".formatted(contact.name())),
          basis);
    }
    return subject
        .violated(
            "nothing protects %s from a short-circuit".formatted(contact.name()),
            "A line reaches it without a fuse or circuit-breaker, and it cannot interrupt a"
                + " short-circuit itself.",
            "no device before it")
        .alsoAt(contact.loads().get(0).head().mark(), "fed through it")
        .todo(
            "Put a fuse or circuit-breaker between the mains and %s.".formatted(contact.name()),
            basis);
  }
}
