// Over 250 lines: all named questions stand where callers look for them.
package org.coilwright.solve;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Circuit;
import org.coilwright.quantity.CurrentKind;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/**
 * What the circuit does, computed once: every reachable position, each coil, load and contact in
 * it.
 */
public final class Study {
  private final Circuit circuit;
  private final Setup setup;
  private final Model model;
  private final List<State> states;
  private final States composition;
  private final List<Trouble> troubles;
  private final Lookup lookup;
  private final CoilReadings coils;
  private final LoadReadings loads;
  private final Readings readings;
  private final TurnOffs turnOffs;
  private final Map<Class<?>, Object> derived = new HashMap<>();

  private Study(Setup setup) {
    this.circuit = setup.circuit;
    this.setup = setup;
    this.model = Model.of(setup);
    List<Exploration> all = List.copyOf(model.explorations.values());
    this.composition = new States(setup.variables, all);
    this.states = composition.list();
    this.troubles = new Troubles(circuit, setup.sources).in(all, composition);
    this.lookup = new Lookup(model, composition.isEveryCombination());
    Extremes extremes = new Extremes(setup.air);
    this.coils = new CoilReadings(lookup, extremes);
    this.loads = new LoadReadings(lookup, extremes);
    this.readings = new Readings(lookup);
    this.turnOffs = new TurnOffs(lookup);
  }

  /** Studies a circuit. */
  public static Study of(Circuit circuit, Tables tables) {
    return new Study(new Setup(circuit, tables));
  }

  /** The same without parting circuits that share a feed, to hold the one against the other. */
  static Study unparted(Circuit circuit, Tables tables) {
    return new Study(new Setup(circuit, tables, false));
  }

  public Circuit circuit() {
    return circuit;
  }

  /**
   * Names of the independent actuators, in table order: outputs, switches, thermostats, cut-outs.
   * Those whose contacts are not wired are left out, unless {@code intent} names them.
   */
  public List<String> columns() {
    return List.copyOf(setup.variables.columns());
  }

  /**
   * Every reachable steady state; all contacts at rest first, the last column changing fastest.
   *
   * <p>Groups of contacts that do not act on one another are explored apart. While their
   * combinations are few (256) all are listed; beyond that each group's states are listed with all
   * other groups at rest ({@link #listsEveryCombination}), which still shows every part in every
   * state it can be in.
   */
  public List<State> states() {
    return states;
  }

  /** False if {@link #states} lists one group at a time. */
  public boolean listsEveryCombination() {
    return composition.isEveryCombination();
  }

  /**
   * The same, one table for each circuit: groups that switch one load are together. What stands in
   * one table makes no difference in another, so each is listed with the others at rest.
   */
  public List<StateTable> tables() {
    return derived(Tabulated.class, s -> new Tabulated(StateTable.of(s.model, s.composition)))
        .tables();
  }

  private record Tabulated(List<StateTable> tables) {}

  /**
   * The states in which some parts or contacts can differ: every combination of those of their
   * groups, the others at rest; empty if they are too many (4096).
   */
  public Optional<List<State>> statesOfAll(Collection<String> names) {
    Set<Group> groups = new LinkedHashSet<>();
    for (String name : names) {
      circuit.branchesOf(name).forEach(b -> groups.addAll(model.groupsOf(b)));
      Optional.of(columns().indexOf(name))
          .filter(column -> column >= 0)
          .ifPresent(column -> groups.addAll(model.movedBy(column)));
    }
    return composition.together(model.explorationsOf(groups));
  }

  /**
   * The states that can make a difference to a part: those of its own groups, the others at rest.
   * In a large panel far fewer than {@link #states}.
   */
  public List<State> statesFor(String part) {
    return circuit.branchesOf(part).stream()
        .flatMap(b -> model.groupsOf(b).stream())
        .distinct()
        .flatMap(g -> Optional.ofNullable(model.explorations.get(g)).stream())
        .flatMap(e -> composition.of(e).stream())
        .toList();
  }

  /**
   * The states to look at for a part: {@link #states} while these are every combination, and beyond
   * that those of its own groups; at least one.
   */
  public List<State> statesToLookAtFor(String part) {
    if (listsEveryCombination()) {
      return states;
    }
    List<State> own = statesFor(part);
    return own.isEmpty() ? states.subList(0, 1) : own;
  }

  /** Whatever is wrong with the states themselves. */
  public List<Trouble> troubles() {
    return troubles;
  }

  /** Ids of the sources whose voltage is not written: what hangs on them is not to be judged. */
  public List<String> sourcesOfUnknownVoltage() {
    return List.copyOf(setup.sources.assumed());
  }

  /**
   * True if in this state some source has a path without a load: the voltages of everything on that
   * source then tell of the short-circuit and of nothing else.
   */
  public boolean isShorted(State state) {
    return derived(EverShorted.class, Study::everShorted).groups.stream()
        .anyMatch(g -> Troubles.isShorted(g, lookup.bits(g, state)));
  }

  /** Groups that are shorted in some state, mostly none; the others need not be asked each time. */
  private record EverShorted(List<Group> groups) {}

  private static EverShorted everShorted(Study study) {
    List<Group> groups = new ArrayList<>();
    study.model.explorations.forEach(
        (group, exploration) -> {
          List<BitSet> steady = exploration.steady.values().stream().flatMap(List::stream).toList();
          if (steady.isEmpty() || steady.stream().anyMatch(b -> Troubles.isShorted(group, b))) {
            groups.add(group);
          }
        });
    return new EverShorted(groups);
  }

  /**
   * What a relay's coil gets.
   *
   * @throws IllegalArgumentException if there is no such relay
   */
  public CoilReading coil(String relay, State state) {
    return coils.of(relay, state);
  }

  /** What decides over a relay's armature; empty if what is written contradicts itself. */
  public Optional<CoilLimits> limits(String relay) {
    return Optional.ofNullable(setup.coils.get(relay)).flatMap(model -> model.limits);
  }

  /**
   * The kind of current a coil is made for; UNSTATED if that is not written and does not follow.
   */
  public CurrentKind coilKind(String relay) {
    return Optional.ofNullable(setup.coils.get(relay))
        .map(m -> m.kind)
        .orElse(CurrentKind.UNSTATED);
  }

  /**
   * What a coil's current rests on, in words ({@code 650 Ω ± 10 %}); empty if the part gives
   * nothing for it, and then its current is not known and reads as zero.
   */
  public Optional<String> coilCurrentRestsOn(String relay) {
    return Optional.ofNullable(setup.coils.get(relay))
        .flatMap(model -> CoilImpedance.basis(model.spec, model.kind));
  }

  /** What a load does. */
  public LoadReading load(String load, State state) {
    return loads.of(load, state);
  }

  /** What reaches a load's worst element, at every corner; empty if nothing does in this state. */
  public Optional<LoadVolts> loadVolts(String load, State state) {
    return loads.volts(load, state);
  }

  /**
   * What happens when a relay's coil is switched off. Empty for an alternating-current coil, for
   * one that nothing switches off, and where the part gives no time constant, nothing for its
   * current, or no value of what is built in across it.
   */
  public Optional<TurnOff> turnOff(String relay) {
    return turnOffs.of(relay);
  }

  /** What a contact carries or holds off. */
  public ContactReading contact(Branch.Contact contact, State state) {
    return readings.contact(contact, state);
  }

  /** V across a resistor, lamp, snubber or varistor in a state, with the supply at its highest. */
  public double volts(Branch.Passive part, State state) {
    return readings.volts(part, state);
  }

  /** False if a source has a mains input that gets nothing in this state: it is switched off. */
  public boolean isLive(Branch.Source source, State state) {
    return readings.isLive(source, state);
  }

  /** What a source delivers; {@code source} is the branch's id. */
  public SupplyReading supply(String source, State state) {
    Branch.Source branch = sourceOf(source);
    return readings.supply(branch, state);
  }

  /**
   * The most that is asked of a source in any reachable state, as if it had no limit: what it gives
   * in {@link #supply} may be less. Where {@link #states} lists one group at a time this adds what
   * each group draws most, for they can do so together.
   */
  public SupplyReading heaviest(String source) {
    Branch.Source branch = sourceOf(source);
    double amps = 0;
    double pickUp = 0;
    double watts = 0;
    for (Group group : model.fedBy(branch)) {
      Exploration exploration = explorationOf(group);
      double mostAmps = 0;
      double mostPickUp = 0;
      double mostWatts = 0;
      for (List<BitSet> steady : exploration.steady.values()) {
        for (BitSet bits : steady) {
          SupplyReading drawn = readings.asked(branch, group.situation(bits));
          mostAmps = Math.max(mostAmps, drawn.amps());
          mostPickUp = Math.max(mostPickUp, drawn.pickUpAmps());
          mostWatts = Math.max(mostWatts, drawn.watts());
        }
      }
      amps += mostAmps;
      pickUp += mostPickUp;
      watts += mostWatts;
    }
    return new SupplyReading(amps, pickUp, watts);
  }

  private Exploration explorationOf(Group group) {
    Exploration exploration = model.explorations.get(group);
    if (exploration == null) {
      throw new IllegalStateException("a group that was not explored");
    }
    return exploration;
  }

  private Branch.Source sourceOf(String id) {
    return circuit
        .branch(id)
        .filter(Branch.Source.class::isInstance)
        .map(Branch.Source.class::cast)
        .orElseThrow(() -> new IllegalArgumentException("no source " + id));
  }

  /** Ohms of a conductor at the hottest the site names; empty if length or size is missing. */
  public Optional<Cited<Double>> hotOhms(Branch.Conductor conductor) {
    return setup.elements.hotOhms(conductor);
  }

  /**
   * What {@code derive} makes of this study: made for the first who asks for that kind, the same
   * for all who ask later. For what several rules look at and takes long to work out.
   */
  public synchronized <T> T derived(Class<T> kind, Function<? super Study, ? extends T> derive) {
    Object known = derived.get(kind);
    if (known == null) {
      known = derive.apply(this);
      derived.put(kind, known);
    }
    return kind.cast(known);
  }

  Model model() {
    return model;
  }

  Lookup lookup() {
    return lookup;
  }
}
