package org.coilwright.rules;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.coilwright.circuit.Actuator;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.netlist.Part;
import org.coilwright.quantity.Printed;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.rules.KeptOn.Held;
import org.coilwright.solve.Fault;
import org.coilwright.solve.LoadEffect.Effect;
import org.coilwright.solve.Study;
import org.coilwright.table.Cited;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** A contact that welds keeps a load on, and nothing independent of it ends that. */
final class FaultWeldsOn implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("fault.welds-on", Weight.STOP, "welded contact with no limit behind it")
          .what(
              "Welds each contact and sticks each armature, one at a time, and computes every"
                  + " position again. Where a heater is then on when it should be off, or starts"
                  + " with nobody asking, one thermostat or cut-out must still turn it off whatever"
                  + " else stands how; a welded thermostat needs another. For other loads a switch"
                  + " or protective device that a person opens counts as well.")
          .why(
              "Contacts weld: of the contactors that fail, most stay closed. A heater then heats"
                  + " until something gives way, and nobody need be there.")
          .remedy(
              "Put a thermostat or a cut-out with contacts of its own into the way of the load;"
                  + " draw the one that the heater has built in.")
          .blind(
              "Two contacts that weld at once, a cut-out that welds (it opens only once something"
                  + " else has failed), limits built into the load and not drawn; the word mirror"
                  + " at a relay, which has no main poles (an opening contact of a contactor with"
                  + " it stays open while a pole is welded); and whether the cut-out's own setting"
                  + " is low enough.")
          .sources(
              "circuit-theory", "contactor-failure-data", "hot-water-storage", "common-practice")
          .consequenceOf("load.no-cut-out");

  private static final Set<Fault.Kind> KINDS =
      EnumSet.of(Fault.Kind.CONTACT_WELDS, Fault.Kind.ARMATURE_STICKS);

  private final Cited<Double> staysClosed;
  private final Basis basis;
  private final Basis vessel;
  private final Basis otherHeater;

  FaultWeldsOn(Tables tables) {
    staysClosed = tables.figure("fault.stays-closed-share");
    basis =
        new Basis(List.of(tables.source("circuit-theory").cite()), Standing.PUBLISHED)
            .and(Basis.of(staysClosed));
    vessel =
        basis.and(
            new Basis(List.of(tables.source("hot-water-storage").cite()), Standing.PUBLISHED));
    otherHeater =
        basis.and(
            new Basis(List.of(tables.source("common-practice").cite()), Standing.COMMON_PRACTICE));
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    List<Outcome> outcomes = new ArrayList<>();
    KeptOn.all(study, KINDS).forEach(kept -> outcomes.add(check(kept)));
    return outcomes;
  }

  private Outcome check(KeptOn kept) {
    String name = kept.name();
    boolean heats = kept.load() instanceof Part.Heater;
    List<Held> first = kept.held().stream().filter(h -> !isCutOut(kept, h)).toList();
    List<Held> endless = first.stream().filter(h -> !isLimited(h, heats)).toList();
    if (!endless.isEmpty()) {
      return kept.finding(
              FACTS,
              endless,
              (endless.stream().allMatch(h -> h.effect().effect() == Effect.STARTS_BY_ITSELF)
                      ? "%s starts by itself when a contact welds"
                      : "%s stays on when a contact welds")
                  .formatted(name),
              heats ? "no thermostat or cut-out then stops it" : "nothing then stops it")
          .detail(
              "Of the contactors that fail, %s stay closed."
                  .formatted(Printed.percent(staysClosed.value())))
          .todo(
              heats
                  ? "Put a thermostat or cut-out that works without %s into the way of %s; draw the one it has built in."
                      .formatted(where(endless), name)
                  : "Put a switch or protective device that a person can open into the way of %s."
                      .formatted(name),
              basis(kept.load()));
    }
    Optional<Outcome> open = kept.open(FACTS);
    return open.orElseGet(
        () ->
            Subject.of(FACTS, kept.load().head().mark(), name)
                .satisfied(
                    first.isEmpty()
                        ? "No single contact that welds keeps %s on.".formatted(name)
                        : kept.inWordsAll(first),
                    basis(kept.load())));
  }

  /**
   * What asks for a limit of its own: of stored water the regulations, of other heat good sense.
   */
  private Basis basis(Part load) {
    return load instanceof Part.Heater heater
        ? heater.vessel().isPresent() ? vessel : otherHeater
        : basis;
  }

  private static String where(List<Held> endless) {
    return endless.get(0).fault().at().get(0);
  }

  /** A cut-out opens once something else has failed: that it then welds is the second fault. */
  private static boolean isCutOut(KeptOn kept, Held held) {
    return kept.study()
        .circuit()
        .branch(held.fault().at().get(0))
        .filter(
            b -> b instanceof Contact contact && contact.actuator().kind() == Actuator.Kind.CUT_OUT)
        .isPresent();
  }

  private static boolean isLimited(Held held, boolean heats) {
    return held.effect().isLimited()
        || (!heats
            && held.effect().stoppedBy().stream()
                .anyMatch(
                    a -> a.kind() == Actuator.Kind.SWITCH || a.kind() == Actuator.Kind.PROTECTIVE));
  }
}
