package org.coilwright.rules;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Site;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Quantity;
import org.coilwright.sizing.MainsBand;
import org.coilwright.sizing.Overcurrent;
import org.coilwright.sizing.PowerSide;
import org.coilwright.solve.CoilReading;
import org.coilwright.solve.ContactReading;
import org.coilwright.solve.State;
import org.coilwright.solve.StateTable;
import org.coilwright.solve.Study;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/**
 * The coils that hang on one pole of a fuse or circuit-breaker.
 *
 * @param coils those on whose way the pole lies, in the order of the netlist
 */
record DeviceCoils(Study study, Part device, Contact pole, List<CoilFeed> coils) {
  /**
   * What they draw together, at most.
   *
   * @param holds A while they are in, at worst
   * @param pullIn A while all that can be on pull in at once, at worst
   * @param silent coils whose pick-up is not written and was taken from what they hold with
   * @param cited the figures that the worst case and the silent ones rest on
   */
  record Most(double holds, double pullIn, List<CoilFeed> silent, List<Cited<?>> cited) {
    /** In brackets, what was taken for the pick-up of a silent one; or nothing. */
    String taken() {
      return silent.isEmpty()
          ? ""
          : " (pick-up of %s is not written and taken from what it holds with)"
              .formatted(silent.get(0).relay());
    }
  }

  /** Every pole that coils hang on, in the order of the netlist's coils. */
  static List<DeviceCoils> all(Study study) {
    Map<Contact, Set<CoilFeed>> byPole = new LinkedHashMap<>();
    for (CoilFeed feed : CoilFeed.all(study)) {
      feed.ways().stream()
          .flatMap(way -> way.branches().stream())
          .filter(b -> Overcurrent.device(study.circuit(), b).isPresent())
          .map(Contact.class::cast)
          .forEach(c -> byPole.computeIfAbsent(c, k -> new LinkedHashSet<>()).add(feed));
    }
    List<DeviceCoils> all = new ArrayList<>();
    byPole.forEach(
        (pole, feeds) ->
            all.add(
                new DeviceCoils(
                    study,
                    Overcurrent.device(study.circuit(), pole).orElseThrow(),
                    pole,
                    List.copyOf(feeds))));
    return all;
  }

  String names() {
    return coils.stream().map(CoilFeed::relay).collect(Collectors.joining(", "));
  }

  /** The first thing without which their current cannot be known. */
  Optional<Gap> unknown() {
    return coils.stream()
        .flatMap(feed -> Gap.ofVoltage(feed).or(() -> Gap.ofCurrent(feed)).stream())
        .findFirst();
  }

  /** {@code ; what U1 draws for itself is not counted}, or nothing: no netlist tells it. */
  String uncounted() {
    Circuit circuit = study.circuit();
    Set<Node> behind = circuit.reach(pole.to(), b -> PowerSide.isWay(b) && !b.equals(pole));
    List<String> others =
        circuit.branches(Branch.Input.class).stream()
            .filter(i -> behind.contains(i.from()) || behind.contains(i.to()))
            .map(Branch::part)
            .distinct()
            .toList();
    return others.isEmpty()
        ? ""
        : "; what %s for %s is not counted"
            .formatted(
                String.join(", ", others) + (others.size() > 1 ? " draw" : " draws"),
                others.size() > 1 ? "themselves" : "itself");
  }

  /**
   * The sums. Coils of one circuit count together where some state has them on together; nothing
   * keeps two circuits from being on at once.
   *
   * @param alone true if no load draws through the pole: then its current also tells of lamps
   */
  Most most(boolean alone, Tables tables) {
    Cited<Double> guess = tables.figure("coil.pick-up-multiple");
    List<CoilFeed> silent =
        coils.stream().filter(f -> f.isAlternating() && f.spec().pickUp().isEmpty()).toList();
    double[] sum = new double[2];
    Map<String, CoilFeed> left = new LinkedHashMap<>();
    coils.forEach(feed -> left.put(feed.relay(), feed));
    for (StateTable table : study.tables()) {
      List<CoilFeed> here =
          table.relays().stream().filter(left::containsKey).map(left::get).toList();
      double[] most = new double[2];
      for (State state : here.isEmpty() ? List.<State>of() : table.states()) {
        double[] now = new double[2];
        here.stream().filter(f -> draws(f, state)).forEach(f -> add(now, f, state, guess, tables));
        most[0] = Math.max(most[0], now[0]);
        most[1] = Math.max(most[1], now[1]);
      }
      sum[0] += most[0];
      sum[1] += most[1];
    }
    if (alone) {
      withLamps(sum, tables);
    }
    List<Cited<?>> cited = new ArrayList<>(List.of(tables.figure("coil.resistance-tolerance")));
    coils.stream().flatMap(f -> taken(f, tables).stream()).findFirst().ifPresent(cited::add);
    if (!silent.isEmpty()) {
      cited.add(guess);
    }
    return new Most(sum[0], Math.max(sum[0], sum[1]), silent, List.copyOf(cited));
  }

  /** What lamps beside the coils draw is in the pole's own current. */
  private void withLamps(double[] sum, Tables tables) {
    if (study.listsEveryCombination()) {
      double factor = coils.stream().mapToDouble(f -> worstFactor(f, tables)).max().orElse(1);
      for (State state : study.states()) {
        ContactReading reading = study.contact(pole, state);
        sum[0] = Math.max(sum[0], reading.amps() * factor);
        sum[1] = Math.max(sum[1], reading.makeAmps() * factor);
      }
    }
  }

  private boolean draws(CoilFeed feed, State state) {
    return feed.waysIn(state).anyMatch(way -> way.branches().contains(pole));
  }

  private void add(double[] sum, CoilFeed feed, State state, Cited<Double> guess, Tables tables) {
    CoilReading reading = study.coil(feed.relay(), state);
    double factor = worstFactor(feed, tables);
    double holds = Math.abs(reading.amps()) * factor;
    double pullsIn = Math.abs(reading.pickUpAmps()) * factor;
    boolean silent = feed.isAlternating() && feed.spec().pickUp().isEmpty();
    sum[0] += holds;
    sum[1] += silent ? Math.max(pullsIn, holds * guess.value()) : Math.max(holds, pullsIn);
  }

  /** Supply at its highest, and the least that the coil can resist. */
  private double worstFactor(CoilFeed feed, Tables tables) {
    double supply =
        feed.sources().stream()
            .flatMap(s -> s.volts().stream().map(v -> high(s, v, tables) / v.nominal()))
            .mapToDouble(Double::doubleValue)
            .max()
            .orElse(1);
    double least =
        feed.spec()
            .resistance()
            .map(Written::value)
            .filter(r -> r.low() > 0 && !r.isExact())
            .map(r -> r.low() / r.nominal())
            .orElse(1 - tables.figure("coil.resistance-tolerance").value());
    return supply / least;
  }

  private double high(Branch.Source source, Quantity volts, Tables tables) {
    return source.isDirect() ? volts.high() : band(volts, tables).high();
  }

  private Optional<Cited<Double>> taken(CoilFeed feed, Tables tables) {
    return feed.sources().stream()
        .filter(s -> !s.isDirect())
        .flatMap(s -> s.volts().stream())
        .flatMap(v -> band(v, tables).taken().stream())
        .findFirst();
  }

  private MainsBand band(Quantity volts, Tables tables) {
    Site.Practice practice = study.circuit().netlist().site().practice().value();
    return MainsBand.of(volts, practice, tables);
  }
}
