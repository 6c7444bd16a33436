package org.coilwright.rules;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import org.coilwright.circuit.Actuator;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Coil;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Circuit;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Part.ContactForm;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.solve.Study;

/**
 * What can still feed a load when thermostats or cut-outs have opened and everything else is at its
 * worst: outputs and switches closed, and some contactor welded. Decided on the graph: a contactor
 * whose coil no way can feed any more lets go, and with it whatever hangs on its contacts. Looked
 * at is only what can have a say in it, from the load towards the sources.
 */
final class Overheating {
  private final Study study;
  private final Circuit circuit;
  private final Part load;
  private final Set<Actuator> near;
  private final Map<Boolean, List<Part.Thermal>> stopping = new ConcurrentHashMap<>();

  /** Kept with the study, for several rules ask about the same heater. */
  private record Known(Map<String, Overheating> of) {}

  /** What can feed a load. */
  static Overheating of(Study study, Part load) {
    return study
        .derived(Known.class, s -> new Known(new ConcurrentHashMap<>()))
        .of()
        .computeIfAbsent(load.name(), name -> new Overheating(study, load));
  }

  private Overheating(Study study, Part load) {
    this.study = study;
    this.circuit = study.circuit();
    this.load = load;
    this.near = Regions.of(study).actuatorsOf(load.name());
  }

  /**
   * What still reaches the load.
   *
   * @param open thermostats and cut-outs that have opened
   * @param welded relays whose contacts stay as they were
   */
  PinFeeds with(Set<String> open, Set<String> welded) {
    return closed(open, welded).at(load.name());
  }

  /** Contacts that can be closed; the largest set that upholds itself. */
  private Feeding closed(Set<String> open, Set<String> welded) {
    Set<String> dropped = new LinkedHashSet<>();
    while (true) {
      Set<String> before = Set.copyOf(dropped);
      Feeding feeding =
          Feeding.of(study, b -> !(b instanceof Contact c) || canClose(c, open, welded, before));
      for (Actuator actuator : near) {
        if (actuator.kind() == Actuator.Kind.COIL) {
          for (Branch branch : circuit.branchesOf(actuator.name())) {
            if (branch instanceof Coil coil && !canBeFed(feeding, coil)) {
              dropped.add(coil.part());
            }
          }
        }
      }
      if (dropped.size() == before.size()) {
        return feeding;
      }
    }
  }

  private static boolean canClose(
      Contact contact, Set<String> open, Set<String> welded, Set<String> dropped) {
    Actuator actuator = contact.actuator();
    return switch (actuator.kind()) {
      // one that closes as it warms is closed when it is hot
      case THERMOSTAT, CUT_OUT ->
          contact.form() == ContactForm.NO || !open.contains(actuator.name());
      case COIL ->
          welded.contains(actuator.name())
              || contact.form() == ContactForm.NC
              || !dropped.contains(actuator.name());
      case OUTPUT, SWITCH, PROTECTIVE -> true;
    };
  }

  /**
   * True if its two pins can hang on two different sides; a coil in series with another may too.
   */
  private static boolean canBeFed(Feeding feeding, Coil coil) {
    Set<Feeding.Side> first = feeding.at(coil.from());
    Set<Feeding.Side> second = feeding.at(coil.to());
    if (first.isEmpty() || second.isEmpty()) {
      return false;
    }
    Set<Feeding.Side> both = new LinkedHashSet<>(first);
    both.addAll(second);
    return both.size() > 1;
  }

  /** Cut-outs, or thermostats, of the whole circuit. */
  private static List<Part.Thermal> thermals(Study study, boolean cutOut) {
    return cutOut
        ? study.derived(Thermals.class, Thermals::of).cutOuts()
        : study.derived(Thermals.class, Thermals::of).thermostats();
  }

  /**
   * Kept with the study.
   *
   * @param places where each part stands in the netlist
   * @param astray names of those that have no say in whether any heater is fed
   */
  private record Thermals(
      List<Part.Thermal> thermostats,
      List<Part.Thermal> cutOuts,
      Map<String, Integer> places,
      Set<String> astray) {
    static Thermals of(Study study) {
      Map<String, Integer> places = new HashMap<>();
      List<Part.Thermal> all = new ArrayList<>();
      for (Part part : study.circuit().netlist().parts().values()) {
        places.put(part.name(), places.size());
        if (part instanceof Part.Thermal thermal) {
          all.add(thermal);
        }
      }
      Set<String> astray = new HashSet<>();
      all.forEach(t -> astray.add(t.name()));
      for (Part part : Loads.of(study.circuit())) {
        if (part instanceof Part.Heater) {
          Regions.of(study).actuatorsOf(part.name()).forEach(a -> astray.remove(a.name()));
        }
      }
      return new Thermals(
          all.stream().filter(t -> !t.isCutOut()).toList(),
          all.stream().filter(Part.Thermal::isCutOut).toList(),
          places,
          astray);
    }
  }

  /**
   * The cut-outs, or thermostats, to be named with the load: those that have a say in whether it is
   * fed, and those that have none anywhere; if there are no such, the first of the circuit.
   */
  List<Part.Thermal> guards(boolean cutOut) {
    Thermals all = study.derived(Thermals.class, Thermals::of);
    Set<String> names = new HashSet<>(all.astray());
    near.forEach(a -> names.add(a.name()));
    List<Part.Thermal> guards =
        inOrder(names.stream()).stream()
            .map(name -> circuit.netlist().parts().get(name))
            .filter(part -> part instanceof Part.Thermal thermal && thermal.isCutOut() == cutOut)
            .map(Part.Thermal.class::cast)
            .toList();
    return guards.isEmpty() ? thermals(study, cutOut).stream().limit(2).toList() : guards;
  }

  /** Names of parts in the order of the netlist; what is no part is left out. */
  private List<String> inOrder(Stream<String> names) {
    Map<String, Integer> places = study.derived(Thermals.class, Thermals::of).places();
    return names
        .filter(places::containsKey)
        .sorted(Comparator.comparing(name -> places.getOrDefault(name, 0)))
        .toList();
  }

  /** The fault, in words, with which a vessel is heated though thermostats and cut-outs opened. */
  Optional<String> heatingFault(List<Part.Thermal> cutOuts, List<Part.Thermal> thermostats) {
    Set<String> out = names(cutOuts);
    if (with(out, Set.of()).areComplete()) {
      return Optional.of("with the thermostat stuck closed");
    }
    Set<String> both = names(cutOuts);
    both.addAll(names(thermostats));
    // a relay that has no say in it changes nothing by welding, and one more way never cools
    List<String> relays =
        with(both, Set.of()).areComplete()
            ? circuit.branches(Coil.class).stream().limit(1).map(Coil::part).toList()
            : inOrder(
                near.stream().filter(a -> a.kind() == Actuator.Kind.COIL).map(Actuator::name));
    return relays.stream()
        .filter(relay -> with(both, Set.of(relay)).areComplete())
        .findFirst()
        .map("with %s welded"::formatted);
  }

  /** Those of the thermostats, or cut-outs, each of which alone keeps the load off. */
  List<Part.Thermal> stopping(boolean cutOut) {
    return stopping.computeIfAbsent(
        cutOut,
        kind ->
            guards(kind).stream()
                .filter(t -> !with(Set.of(t.name()), Set.of()).areComplete())
                .toList());
  }

  /** What is said of a heater's vessel, and of the devices that should guard it. */
  static Subject subject(RuleFacts facts, Part.Heater heater, List<Part.Thermal> guards) {
    List<String> at = new ArrayList<>(List.of(heater.name()));
    at.addAll(names(guards));
    return new Subject(
        facts, heater.vessel().map(Part.Vessel::mark).orElse(heater.head().mark()), at);
  }

  static Set<String> names(List<Part.Thermal> parts) {
    Set<String> names = new LinkedHashSet<>();
    parts.forEach(p -> names.add(p.name()));
    return names;
  }
}
