package org.coilwright.rules;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Part;
import org.coilwright.quantity.Printed;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.solve.Study;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** A residual-current device sees only one side of what a load or coil carries. */
final class ProtectionRcdBypassed implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("protection.rcd-bypassed", Weight.FIX, "residual-current device bypassed")
          .what(
              "Opens each residual-current device and looks, for every load, coil and mains input,"
                  + " which of its pins lose the mains: all of them or none may. A neutral returned"
                  + " past the device, and neutrals mixed between two devices, show as some; so"
                  + " does what returns by the protective conductor. A pole that is fed from its"
                  + " other end than the rest, or from behind another pole of the device, is raised"
                  + " as well: the currents then add up in it. So is one that a way past the device"
                  + " bridges in some position of the contacts.")
          .why(
              "The device takes the current that it does not see come back for a fault: it opens as"
                  + " soon as the load is on, and whoever wants heat bridges it.")
          .remedy("Return each circuit through the device that its line comes from.")
          .blind("Neutrals joined behind two devices outside this circuit.")
          .sources("iec-61008-1", "circuit-theory")
          .consequenceOf("wiring.short-circuit", "poles.load-not-switched", "poles.neutral-earthed")
          .meansWiredOtherwise();

  private final Basis basis;

  ProtectionRcdBypassed(Tables tables) {
    basis = Basis.of(FACTS, tables, Standing.PUBLISHED);
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    Circuit circuit = study.circuit();
    Regions regions = Regions.of(study);
    Feeding whole = Feeding.whole(study);
    Map<Part.Protective, Feeding> opened = new LinkedHashMap<>();
    ResidualDevices.of(circuit).forEach(d -> opened.put(d, ResidualDevices.opened(study, d)));
    Set<Node> earth = NeutralEarth.of(study).earth();
    List<Outcome> outcomes = new ArrayList<>();
    Set<String> told = new LinkedHashSet<>();
    for (Part.Protective device : opened.keySet()) {
      Feeding without = opened.getOrDefault(device, whole);
      ResidualPoles poles = new ResidualPoles(study, device, without);
      poles
          .backwards(FACTS, basis)
          .or(() -> poles.twice(FACTS, basis))
          .or(
              () -> {
                Optional<Outcome> split = judge(device, regions, whole, opened, earth, told);
                return split.filter(Outcome.Violated.class::isInstance).isPresent()
                    ? split
                    : poles.bridged(FACTS, basis).or(() -> split);
              })
          .ifPresent(outcomes::add);
    }
    return outcomes;
  }

  /** A consumer and which of its fed pins a device opens. */
  private record Seen(MainsConsumer consumer, List<Node> through, List<Node> past) {}

  private static Seen seen(MainsConsumer consumer, Feeding whole, Feeding opened, Set<Node> earth) {
    List<Node> through = new ArrayList<>();
    List<Node> past = new ArrayList<>();
    for (Node pin : consumer.pins()) {
      if (earth.contains(pin) || MainsConsumer.isOnMains(opened, pin)) {
        past.add(pin);
      } else if (MainsConsumer.isOnMains(whole, pin)) {
        through.add(pin);
      }
    }
    return new Seen(consumer, through, past);
  }

  /**
   * What is to be said of one device.
   *
   * @param told consumers of which another device has said that it sees one side; grows
   */
  private Optional<Outcome> judge(
      Part.Protective device,
      Regions regions,
      Feeding whole,
      Map<Part.Protective, Feeding> opened,
      Set<Node> earth,
      Set<String> told) {
    Feeding without = opened.getOrDefault(device, whole);
    List<Seen> behind =
        regions.consumersThatFeel(device).stream()
            .map(c -> seen(c, whole, without, earth))
            .filter(s -> !s.through().isEmpty())
            .toList();
    List<Seen> split = behind.stream().filter(s -> !s.past().isEmpty()).toList();
    List<Seen> untold = split.stream().filter(s -> told.add(s.consumer().name())).toList();
    if (behind.isEmpty() || (untold.isEmpty() && !split.isEmpty())) {
      return Optional.empty();
    }
    List<String> at = new ArrayList<>(List.of(device.name()));
    (split.isEmpty() ? behind : untold).forEach(s -> at.add(s.consumer().name()));
    Subject subject = new Subject(FACTS, device.head().mark(), List.copyOf(at));
    if (split.isEmpty()) {
      return Optional.of(
          subject.satisfied(
              "%s: what comes through %s returns through it."
                  .formatted(names(behind), device.name()),
              basis));
    }
    return Optional.of(violated(subject, device, untold, whole, opened));
  }

  /** Another device that one side goes through and the other does not: not one in series. */
  private static Optional<String> otherDevice(
      Seen seen, Part.Protective device, Map<Part.Protective, Feeding> opened) {
    return opened.entrySet().stream()
        .filter(e -> !e.getKey().name().equals(device.name()))
        .filter(e -> !MainsConsumer.isOnMains(e.getValue(), seen.past().get(0)))
        .filter(e -> MainsConsumer.isOnMains(e.getValue(), seen.through().get(0)))
        .map(e -> e.getKey().name())
        .findFirst();
  }

  private Outcome violated(
      Subject subject,
      Part.Protective device,
      List<Seen> split,
      Feeding whole,
      Map<Part.Protective, Feeding> opened) {
    Seen first = split.get(0);
    Optional<String> other = otherDevice(first, device, opened);
    Subject.Finding finding =
        subject.violated(
            other
                .map(o -> "%s and %s have their circuits mixed".formatted(device.name(), o))
                .orElseGet(
                    () -> "%s sees only one side of %s".formatted(device.name(), names(split))),
            "%s %s through %s, %s %s: to %s that is a fault, and it opens%s."
                .formatted(
                    pins(first.through()),
                    first.through().size() == 1 ? "goes" : "go",
                    device.name(),
                    pins(first.past()),
                    other.map("goes through %s"::formatted).orElse("goes past it"),
                    device.name(),
                    device.trip().map(t -> " at " + Printed.amps(t.value().nominal())).orElse("")),
            "opens when %s is on".formatted(first.consumer().name()));
    split.stream()
        .limit(2)
        .forEach(s -> finding.alsoAt(s.consumer().mark(), "one side through it, one not"));
    String side = MainsConsumer.isLine(whole, first.past().get(0)) ? "line" : "neutral";
    return finding.todo(
        other.isPresent()
            ? "Return each circuit through the device that its line comes from: %s."
                .formatted(names(split))
            : "Bring the %s of %s through %s as well, or take both past it."
                .formatted(side, names(split), device.name()),
        basis);
  }

  private static String pins(List<Node> pins) {
    return pins.stream().map(Node::name).collect(Collectors.joining(" and "));
  }

  private static String names(List<Seen> seen) {
    return seen.stream().map(s -> s.consumer().name()).collect(Collectors.joining(", "));
  }
}
