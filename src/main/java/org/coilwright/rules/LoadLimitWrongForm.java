package org.coilwright.rules;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.coilwright.circuit.Actuator;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Circuit;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Part.ContactForm;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rewiring;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.solve.Study;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** A thermostat or cut-out turns a heater on as it warms, instead of off. */
final class LoadLimitWrongForm implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("load.limit-wrong-form", Weight.STOP, "thermostat or cut-out of the wrong form")
          .what(
              "Follows the ways to each heater, and those to the coils of the relays in them, and"
                  + " looks at the form of every thermostat and cut-out there (NC where none is"
                  + " written). One that closes as it warms must not lie in the way of the heater,"
                  + " nor one that opens in the way of a coil whose opening contact does.")
          .why(
              "It keeps the heater off while the water is cold and turns it on when the water is"
                  + " hot: then nothing stops it any more.")
          .remedy("Use the contact that opens as it warms.")
          .blind(
              "Where the sensor sits: a thermostat that feels other water, and another one that"
                  + " stops the heater, may be meant so, and is only a NOTE. Whether the device is"
                  + " what the netlist says.")
          .sources("circuit-theory", "hot-water-storage");

  private final Basis basis;

  LoadLimitWrongForm(Tables tables) {
    basis = Basis.of(FACTS, tables, Standing.PUBLISHED);
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  /**
   * A contact on the way to a heater.
   *
   * @param through the relay whose contact it moves; empty if it lies in the way itself
   * @param turned true if an opening contact of that relay turns its sense round
   */
  private record OnWay(Contact contact, String through, boolean turned) {}

  @Override
  public List<Outcome> check(Study study) {
    Circuit circuit = study.circuit();
    List<Outcome> outcomes = new ArrayList<>();
    Set<String> judged = new LinkedHashSet<>();
    for (Part load : Loads.of(circuit)) {
      if (load instanceof Part.Heater heater) {
        for (OnWay on : onWays(study, heater.name())) {
          if (circuit.netlist().parts().get(on.contact().part()) instanceof Part.Thermal thermal
              && judged.add(thermal.name() + " " + heater.name())) {
            outcomes.add(judge(study, heater, thermal, on));
          }
        }
      }
    }
    return outcomes;
  }

  /** Every contact on its ways and, through its relays, on theirs; a wrong sense comes first. */
  private static List<OnWay> onWays(Study study, String heater) {
    Set<OnWay> seen = new LinkedHashSet<>();
    Deque<OnWay> open = new ArrayDeque<>();
    study.circuit().pathsAround(List.of(), heater).stream()
        .flatMap(path -> path.branches().stream())
        .filter(Contact.class::isInstance)
        .forEach(b -> open.add(new OnWay((Contact) b, "", false)));
    while (!open.isEmpty()) {
      OnWay on = open.remove();
      if (seen.add(on) && on.contact().actuator().kind() == Actuator.Kind.COIL) {
        boolean turned = on.turned() != (on.contact().form() == ContactForm.NC);
        String relay = on.contact().part();
        study.circuit().branchesOf(relay).stream()
            .filter(Branch.Coil.class::isInstance)
            .flatMap(coil -> CoilFeed.of(study, (Branch.Coil) coil).switches().stream())
            .forEach(c -> open.add(new OnWay(c, relay, turned)));
      }
    }
    List<OnWay> wrongFirst =
        new ArrayList<>(seen.stream().filter(LoadLimitWrongForm::heats).toList());
    seen.stream().filter(on -> !heats(on)).forEach(wrongFirst::add);
    return wrongFirst;
  }

  /** True if the heater comes on when this contact's device warms. */
  private static boolean heats(OnWay on) {
    return (on.contact().form() == ContactForm.NO) != on.turned();
  }

  private Outcome judge(Study study, Part.Heater heater, Part.Thermal thermal, OnWay on) {
    String name = thermal.name();
    Subject subject = Subject.of(FACTS, thermal.head().mark(), name);
    String through = on.through().isEmpty() ? "" : " through " + on.through();
    if (!heats(on)) {
      return subject.satisfied(
          "%s turns %s off%s as it warms.".formatted(name, heater.name(), through), basis);
    }
    Optional<String> other = thermal.isCutOut() ? Optional.empty() : stops(study, heater);
    Subject.Finding finding =
        subject.violated(
            "%s turns %s on as it warms".formatted(name, heater.name()),
            other
                .map(
                    o ->
                        "%s %s at %s and lets %s heat%s only above that; %s stops it."
                            .formatted(
                                name, moves(thermal), at(thermal), heater.name(), through, o))
                .orElse(
                    "%s %s at %s: %s stays off while the water is cold and heats%s when it is hot."
                        .formatted(name, moves(thermal), at(thermal), heater.name(), through)),
            moves(thermal) + " as it warms");
    finding.alsoAt(heater.head().mark(), "heats when hot");
    if (other.isPresent()) {
      finding.lighter(Weight.NOTE);
      return finding.todo(
          "Leave it only if %s feels other water than %s heats; else take its opening contact (form: NC)."
              .formatted(name, heater.name()),
          basis);
    }
    if (thermal.form() == ContactForm.NO) {
      finding.change(
          Rewiring.word(study.circuit().netlist(), thermal.head().mark(), "form: NO", "form: NC"));
    }
    return finding.todo(
        thermal.form() == ContactForm.NO
            ? "Take the contact of %s that opens as it warms (form: NC).".formatted(name)
            : "Put %s where its opening takes the current from %s, not into the coil of %s whose opening contact heats."
                .formatted(name, heater.name(), on.through()),
        basis);
  }

  private static String moves(Part.Thermal thermal) {
    return thermal.form() == ContactForm.NO ? "closes" : "opens";
  }

  private static String at(Part.Thermal thermal) {
    return thermal.opensAt().map(w -> w.text()).orElse("its temperature");
  }

  /** A thermostat that opens as it warms and without which the heater stays off. */
  private static Optional<String> stops(Study study, Part.Heater heater) {
    return Overheating.of(study, heater).stopping(false).stream()
        .map(Part.Thermal::name)
        .findFirst();
  }
}
