// Over 250 lines: the rules about wires ask all of it, and it is worked out from one list of wires.
package org.coilwright.rules;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;
import org.coilwright.circuit.Branch.Conductor;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.Method;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Run;
import org.coilwright.netlist.Site;
import org.coilwright.netlist.Terminal;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.ConductorSize;
import org.coilwright.quantity.Printed;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.sizing.Ampacity;
import org.coilwright.sizing.Core;
import org.coilwright.sizing.Derated;
import org.coilwright.sizing.Found;
import org.coilwright.sizing.Guards;
import org.coilwright.sizing.Overcurrent;
import org.coilwright.sizing.PowerSide;
import org.coilwright.sizing.PowerSide.Demand;
import org.coilwright.table.Tables;

/**
 * Mains wires that are alike: of one run, or in none, of one size and insulation, behind one
 * device. Wires before the first device are alike if they feed the same devices.
 *
 * @param neutral true for the return of loads, false for what a line feeds
 * @param guard the device before it; empty if there is none
 * @param tried a size in place of the one that is written
 * @param air °C that it is judged in; empty for what the netlist says
 */
record Stretch(
    PowerSide side,
    Guards guards,
    List<Conductor> wires,
    boolean neutral,
    Optional<Part> guard,
    Optional<ConductorSize> tried,
    OptionalDouble air) {
  private Stretch(
      PowerSide side,
      Guards guards,
      List<Conductor> wires,
      boolean neutral,
      Optional<Part> guard,
      Optional<ConductorSize> tried) {
    this(side, guards, wires, neutral, guard, tried, OptionalDouble.empty());
  }

  /** Every stretch, in the order of the wires. */
  static List<Stretch> of(PowerSide side, Guards guards) {
    Circuit circuit = side.circuit();
    Set<Node> earth = earth(circuit);
    Map<List<String>, List<Conductor>> groups = new LinkedHashMap<>();
    Map<List<String>, Stretch> made = new LinkedHashMap<>();
    for (Conductor wire : circuit.branches(Conductor.class)) {
      boolean live = isLive(guards, wire);
      boolean returns = !live && side.branches().contains(wire) && isMains(side, wire);
      if (earth.contains(wire.from()) || (!live && !returns)) {
        continue;
      }
      Optional<Part> guard =
          live && !isUnguarded(guards, wire)
              ? guards.of(wire.from()).or(() -> guards.of(wire.to()))
              : Optional.empty();
      List<String> key =
          List.of(
              wire.run().map(Run::name).orElse(""),
              wire.size().map(Printed::of).orElse("?") + (wire.bridge() ? " bridge" : ""),
              Core.of(wire).toString(),
              guard.map(Part::name).orElse(returns ? "" : limits(guards, wire)),
              Boolean.toString(returns),
              wire.run().isPresent() ? "" : names(side.loadsThrough(wire)));
      groups.computeIfAbsent(key, k -> new ArrayList<>()).add(wire);
      made.put(
          key,
          new Stretch(
              side, guards, List.copyOf(wiresOf(groups, key)), returns, guard, Optional.empty()));
    }
    return List.copyOf(made.values());
  }

  /** The devices that together limit what a wire before the first of them carries. */
  private static String limits(Guards guards, Conductor wire) {
    return "before " + guards.behind(wire).map(Stretch::names).orElse("nothing");
  }

  static String names(List<Part> parts) {
    return String.join(" ", parts.stream().map(Part::name).toList());
  }

  private static List<Conductor> wiresOf(
      Map<List<String>, List<Conductor>> groups, List<String> key) {
    return groups.getOrDefault(key, List.of());
  }

  private static boolean isMains(PowerSide side, Conductor wire) {
    return side.loadsThrough(wire).stream().allMatch(side::isOnMains);
  }

  private static boolean isLive(Guards guards, Conductor wire) {
    return guards.isLive(wire.from()) || guards.isLive(wire.to());
  }

  private static boolean isUnguarded(Guards guards, Conductor wire) {
    return guards.isUnguarded(wire.from()) || guards.isUnguarded(wire.to());
  }

  private static Set<Node> earth(Circuit circuit) {
    Set<Node> earth = new LinkedHashSet<>();
    circuit.netlist().parts().values().stream()
        .filter(Part.Mains.class::isInstance)
        .flatMap(p -> circuit.find(new Terminal(p.name(), Earthing.PE)).stream())
        .forEach(n -> earth.addAll(circuit.net(n)));
    return earth;
  }

  Site.Practice practice() {
    return side.circuit().netlist().site().practice().value();
  }

  Conductor first() {
    return wires.get(0);
  }

  /** {@code W2}, or {@code F1.2 to E1.1} for a wire of its own. */
  String name() {
    return first()
        .run()
        .map(Run::name)
        .orElse(
            "%s to %s%s"
                .formatted(
                    first().wire().from().value(),
                    first().wire().to().value(),
                    wires.size() > 1 ? " and %s like it".formatted(wires.size() - 1) : ""));
  }

  /** The same with only some of its wires. */
  Stretch only(List<Conductor> some) {
    return new Stretch(side, guards, List.copyOf(some), neutral, guard, tried, air);
  }

  /** The thinnest size above its own with which it is as it should be; empty if there is none. */
  Optional<ConductorSize> thicker(Tables tables, Predicate<Stretch> enough) {
    return size().stream()
        .flatMap(now -> WireSizes.above(now, tables))
        .filter(
            size ->
                enough.test(
                    new Stretch(side, guards, wires, neutral, guard, Optional.of(size), air)))
        .findFirst();
  }

  /** The thinnest gauge of all with which it is as it should be; empty if there is none. */
  Optional<ConductorSize> thinnest(Tables tables, Predicate<Stretch> enough) {
    ConductorSize none = ConductorSize.ofAwg(ConductorSize.THINNEST_AWG);
    return new Stretch(side, guards, wires, neutral, guard, Optional.of(none))
        .thicker(tables, enough);
  }

  /** {@code 4 mm² in W2}, or {@code thicker wire in W2} where no size is known to do. */
  String thickerWords(Optional<ConductorSize> thicker) {
    return thicker.map(Printed::of).orElse("thicker wire") + " " + place();
  }

  /** True for several wires that are in no run. */
  boolean isMany() {
    return first().run().isEmpty() && wires.size() > 1;
  }

  /** {@code in W2}, or {@code from F1.2 to E1.1}. */
  String place() {
    return (first().run().isPresent() ? "in " : "from ") + name();
  }

  /** The same, wires behind a device before those in front of the first. */
  static List<Stretch> guardedFirst(List<Stretch> all) {
    return all.stream().sorted(Comparator.comparing(s -> s.guard().isEmpty())).toList();
  }

  /** {@code the 2.5 mm² wires of W2}. */
  String words() {
    String size = first().size().map(Printed::of).orElse("");
    return first()
        .run()
        .map(r -> "the %s wires of %s".formatted(size, r.name()))
        .orElse("the %s wire%s from %s".formatted(size, wires.size() > 1 ? "s" : "", name()));
  }

  /** Their sizes as written, each once: at a wire, or at the run. */
  List<Mark> sizeMarks() {
    return wires.stream()
        .flatMap(w -> w.wire().size().or(() -> w.run().flatMap(Run::size)).stream())
        .map(Written::mark)
        .distinct()
        .toList();
  }

  /** Where the size is written, or the wire. */
  Mark mark() {
    return first()
        .wire()
        .size()
        .or(() -> first().run().flatMap(Run::size))
        .map(Written::mark)
        .orElse(first().mark());
  }

  /** Designations: the run, the device, the loads, and which wires of the run. */
  Subject subject(RuleFacts facts) {
    List<String> at = new ArrayList<>();
    at.add(first().run().map(Run::name).orElse(first().wire().from().value().toString()));
    guard.ifPresent(g -> at.add(g.name()));
    loads().forEach(l -> at.add(l.name()));
    wires.forEach(w -> at.add(w.id()));
    return new Subject(facts, mark(), List.copyOf(new LinkedHashSet<>(at)));
  }

  /** The same for all stretches that one remedy mends: where their size is written, and why. */
  String cause(String why) {
    return "%s:%s:%s %s".formatted(mark().file(), mark().line(), mark().column(), why);
  }

  List<Part> loads() {
    return wires.stream().flatMap(w -> side.loadsThrough(w).stream()).distinct().toList();
  }

  /** What the wire that carries most carries; empty if none of them is known to carry a load. */
  Optional<Demand> demand() {
    return wires.stream()
        .flatMap(w -> side.demand(w).stream())
        .max((a, b) -> Double.compare(a.worst(), b.worst()));
  }

  Optional<ConductorSize> size() {
    // a bridge without a size is taken as the smallest in use for its length; that is no basis here
    return tried.or(
        () ->
            first().bridge() && first().wire().size().isEmpty()
                ? Optional.empty()
                : first().size());
  }

  String missingSize() {
    return "size of " + name();
  }

  /** How it is laid; empty if its run does not say. A wire in no run lies inside an enclosure. */
  Optional<Method> method() {
    return first().run().isEmpty()
        ? Optional.of(Method.PANEL)
        : first().run().flatMap(Run::installed).map(Written::value);
  }

  private int loaded() {
    boolean three =
        loads().stream().anyMatch(l -> side.linesOf(l).size() > 2)
            || (loads().isEmpty()
                && wires.size() > 2
                && guard
                    .filter(g -> g instanceof Part.Protective p && p.poles().size() > 2)
                    .isPresent());
    return three ? 2 + 1 : 2;
  }

  /** Loaded circuits that lie together with it, itself included. */
  private int circuits(StretchIndex all) {
    Optional<Run> run = first().run();
    if (run.isEmpty() || method().filter(m -> m == Method.PANEL).isPresent()) {
      return 1;
    }
    Set<String> together = new LinkedHashSet<>(List.of(run.get().name()));
    run.get().sharesWith().forEach(w -> together.add(w.value()));
    return Math.max(1, all.circuitsIn(together));
  }

  /**
   * A judgement of wires outside a box whose own air is not written. That of the box, which is
   * warmer, stands for it; what is wrong only because of that is open.
   *
   * @param judge of the stretch in the air it is given
   */
  Outcome inItsAir(Function<Stretch, Outcome> judge, Tables tables) {
    Outcome here = judge.apply(this);
    Site site = side.circuit().netlist().site();
    double usual = tables.figure("sizing.usual-air").value();
    boolean borrowed =
        method().filter(m -> m != Method.PANEL).isPresent()
            && site.ambient().isEmpty()
            && site.enclosureAir().filter(a -> a.value().high() > usual).isPresent();
    if (!borrowed || !(here instanceof Outcome.Violated wrong)) {
      return here;
    }
    Stretch cooler =
        new Stretch(side, guards, wires, neutral, guard, tried, OptionalDouble.of(usual));
    return judge.apply(cooler) instanceof Outcome.Violated
        ? here
        : new Subject(wrong.rule(), wrong.mark(), wrong.path())
            .undecided(
                "site.ambient",
                "The air where %s runs is not written. In that of the box, %s: %s"
                    .formatted(
                        name(),
                        site.enclosureAir().map(Written::text).orElse(""),
                        wrong.numbers()));
  }

  /** Where the air that it runs in is written; empty if it is not. */
  Optional<Mark> airMark() {
    Site site = side.circuit().netlist().site();
    Optional<Mark> box =
        site.enclosureAir().map(Written::mark).or(() -> site.enclosure().map(e -> e.mark()));
    return method().filter(m -> m == Method.PANEL).isPresent()
        ? box
        : site.ambient().or(site::enclosureAir).map(Written::mark);
  }

  /** What it may carry as it is laid. */
  Found<Derated> may(StretchIndex all, Tables tables) {
    if (size().isEmpty()) {
      return new Found.Unknown<>(missingSize(), "Its size is not written.");
    }
    if (method().isEmpty()) {
      return new Found.Unknown<>("installed of " + name(), "How it is laid is not written.");
    }
    Surroundings around = Surroundings.of(side.circuit(), tables);
    Method method = method().get();
    if (method == Method.PANEL && !around.insideKnown()) {
      return new Found.Unknown<>("site.enclosure-air", "How warm the box gets is not known.");
    }
    double warm = method == Method.PANEL ? around.insideHigh() : around.outsideHigh();
    return new Ampacity(tables)
        .of(
            size().get(),
            new Ampacity.Laid(method, loaded(), air.orElse(warm), circuits(all), core()));
  }

  /** True in air as warm as its insulation stands. */
  boolean carriesNothing(PowerSides.Seen seen, Tables tables) {
    return may(seen.index(), tables).known().filter(m -> m.amps() == 0).isPresent();
  }

  /** What its wires are made of: all alike, or they would be two stretches. */
  Core core() {
    return Core.of(first());
  }

  /** {@code method B2, 3 loaded conductors, PVC 70 °C taken}, for messages. */
  String laidWords(Tables tables) {
    return "method %s, %s loaded conductors%s"
        .formatted(
            method()
                .filter(m -> m != Method.PANEL)
                .map(Method::word)
                .orElse(Ampacity.PANEL_METHOD.word() + " (in a panel)"),
            loaded(),
            size().map(s -> ", " + core().words(s, tables)).orElse(""));
  }

  /**
   * The devices that limit what it can carry for long: the one before it, or for a wire before the
   * first device all that it feeds. Empty if nothing limits it.
   */
  Optional<List<Part>> limiting() {
    if (guard.isPresent()) {
      return guard.map(List::of);
    }
    return guards.behind(first());
  }

  /** Designations of {@link #limiting}. */
  String limits() {
    return limiting().map(Stretch::names).orElse("");
  }

  /** Rating of these together; empty if one is not written. */
  static OptionalDouble rating(List<Part> devices) {
    return Guards.together(devices);
  }

  /** What a device is rated, as written. */
  static Optional<? extends Written<?>> rating(Part device) {
    return Overcurrent.written(device);
  }

  static Optional<Mark> ratingMark(List<Part> devices) {
    return devices.stream()
        .flatMap(d -> Overcurrent.written(d).stream())
        .map(Written::mark)
        .findFirst();
  }
}
