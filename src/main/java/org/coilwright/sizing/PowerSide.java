// Over 250 lines: the ways of the power side are worked out once, together.
package org.coilwright.sizing;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Conductor;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Branch.Path;
import org.coilwright.circuit.Branch.Source;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.circuit.Routes;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Terminal;
import org.coilwright.quantity.Quantity;
import org.coilwright.solve.State;
import org.coilwright.solve.StateTable;
import org.coilwright.solve.Study;
import org.coilwright.table.Tables;

/**
 * The loads of a circuit, the ways by which they are fed, and what flows in each wire and contact
 * of these ways. A branch that lies in several ways of one load counts with that load's whole
 * current, so wires in parallel are judged as if each were alone.
 */
public final class PowerSide {
  private static final int MOST_WAYS = 24;

  /** A way from one side of a source to a pin of a load, with every contact closed. */
  public record Way(Part load, String pin, Source source, boolean line, Path path) {}

  /**
   * What a wire or contact carries for loads.
   *
   * @param nominal A at rated power and nominal voltage
   * @param worst A at the highest voltage and the upper end of the power tolerance
   * @param words how {@code worst} comes about: {@code at 253 V and +5 % power}
   * @param loads the loads whose current it is
   */
  public record Demand(double nominal, double worst, String words, List<LoadCurrent> loads) {
    /** {@code E1 draws}, {@code E1 and E2 draw}. */
    public String draws() {
      return names() + (loads.size() > 1 ? " draw" : " draws");
    }

    /** Designations of the loads: {@code E1 and E2}. */
    public String names() {
      List<String> names = loads.stream().map(l -> l.load().name()).toList();
      return names.size() < 3
          ? String.join(" and ", names)
          : String.join(", ", names.subList(0, names.size() - 1))
              + " and "
              + names.get(names.size() - 1);
    }
  }

  private final Study study;
  private final Tables tables;
  private final Routes routes;
  private final Map<Part, List<Way>> ways = new LinkedHashMap<>();
  private final Map<Part, LoadCurrent> currents = new LinkedHashMap<>();
  private final Map<Branch, List<Way>> through = new LinkedHashMap<>();
  private final Map<Branch, Demand> demands = new HashMap<>();
  private final Map<String, StateTable> tableOf = new HashMap<>();
  private final Map<StateTable, Set<Set<String>>> onTogether = new HashMap<>();

  private PowerSide(Study study, Tables tables) {
    this.study = study;
    this.tables = tables;
    this.routes = study.circuit().routes(PowerSide::isWay);
    Map<Node, List<Reached>> reached = new HashMap<>();
    Set<Node> sides = new LinkedHashSet<>();
    for (Source source : circuit().branches(Source.class)) {
      for (boolean line : new boolean[] {true, false}) {
        Node side = line ? source.to() : source.from();
        circuit()
            .reach(side, PowerSide::isWay)
            .forEach(
                node ->
                    reached
                        .computeIfAbsent(node, k -> new ArrayList<>())
                        .add(new Reached(source, line)));
        sides.add(side);
      }
    }
    for (Part part : circuit().netlist().parts().values()) {
      if (part instanceof Part.Heater || part instanceof Part.OtherLoad) {
        add(part, reached, sides);
      }
    }
    study.tables().forEach(t -> t.loads().forEach(load -> tableOf.put(load, t)));
    through.keySet().forEach(b -> demandOf(b).ifPresent(d -> demands.put(b, d)));
  }

  /** Looks a study over. */
  public static PowerSide of(Study study, Tables tables) {
    return new PowerSide(study, tables);
  }

  /** Wires and contacts. */
  public static boolean isWay(Branch branch) {
    return branch instanceof Conductor || branch instanceof Contact;
  }

  public Circuit circuit() {
    return study.circuit();
  }

  public Study study() {
    return study;
  }

  /** A side of a source that a way leads from. */
  private record Reached(Source source, boolean line) {}

  private void add(Part load, Map<Node, List<Reached>> reached, Set<Node> sides) {
    List<Way> found = new ArrayList<>();
    Set<Node> neutralsDone = new LinkedHashSet<>();
    for (Node pin : circuit().outerNodesOf(load.name())) {
      String name =
          pin.terminals().stream()
              .filter(t -> t.part().equals(load.name()))
              .map(Terminal::pin)
              .findFirst()
              .orElse(pin.name());
      neutralsDone.clear();
      for (Reached by : reached.getOrDefault(pin, List.of())) {
        Source source = by.source();
        if (by.line()) {
          addWays(found, load, name, source, true, source.to(), pin, sides);
        } else if (neutralsDone.add(source.from())) {
          addWays(found, load, name, source, false, source.from(), pin, sides);
        }
      }
    }
    if (found.stream().noneMatch(Way::line)) {
      return;
    }
    ways.put(load, List.copyOf(found));
    found.forEach(
        way ->
            way.path()
                .branches()
                .forEach(b -> through.computeIfAbsent(b, k -> new ArrayList<>()).add(way)));
    List<Source> sources = found.stream().filter(Way::line).map(Way::source).distinct().toList();
    LoadCurrent.of(study, load, sources, lines(found), tables)
        .ifPresent(c -> currents.put(load, c));
  }

  private void addWays(
      List<Way> found,
      Part load,
      String pin,
      Source source,
      boolean line,
      Node from,
      Node to,
      Set<Node> sides) {
    for (Path path : routes.between(from, to, MOST_WAYS)) {
      boolean crosses = path.nodes().stream().skip(1).anyMatch(sides::contains);
      if (!crosses) {
        found.add(new Way(load, pin, source, line, path));
      }
    }
  }

  private static Set<Node> lines(List<Way> ways) {
    return ways.stream()
        .filter(Way::line)
        .map(w -> w.source().to())
        .collect(Collectors.toCollection(LinkedHashSet::new));
  }

  /** Loads that some line or plus can reach, in the order of the netlist. */
  public List<Part> loads() {
    return List.copyOf(ways.keySet());
  }

  /** Of these the ones on alternating mains. */
  public List<Part> mainsLoads() {
    return ways.keySet().stream().filter(this::isOnMains).toList();
  }

  /** True if some line of alternating mains can reach a load. */
  public boolean isOnMains(Part load) {
    return waysOf(load).stream().anyMatch(way -> !way.source().isDirect());
  }

  /** The ways of a load. */
  public List<Way> waysOf(Part load) {
    return ways.getOrDefault(load, List.of());
  }

  /**
   * The ways of the lines to a load, or to the mains input of a controller or supply, which is no
   * load: its current is not known.
   */
  public List<Way> linesTo(Part part) {
    if (ways.containsKey(part)) {
      return waysOf(part).stream().filter(Way::line).toList();
    }
    List<Way> found = new ArrayList<>();
    for (String pin : Part.inputOf(part).map(Part.MainsInput::pins).orElse(List.of())) {
      Optional<Node> node = circuit().find(new Terminal(part.name(), pin));
      for (Source source : circuit().branches(Source.class)) {
        if (!source.isDirect() && node.isPresent()) {
          routes
              .shortest(source.to(), node.get())
              .filter(path -> !path.nodes().contains(source.from()))
              .ifPresent(path -> found.add(new Way(part, pin, source, true, path)));
        }
      }
    }
    return found;
  }

  /** Names of the lines that can reach it. */
  public Set<Node> linesOf(Part load) {
    return lines(waysOf(load));
  }

  /**
   * The voltage that feeds a load, its power known or not: between the lines of the mains where
   * several reach it; empty if it is not written.
   */
  public Optional<Quantity> supply(Part load) {
    List<Source> sources =
        waysOf(load).stream().filter(Way::line).map(Way::source).distinct().toList();
    return sources.isEmpty()
        ? Optional.empty()
        : LoadCurrent.supply(study, sources.get(0), linesOf(load));
  }

  /** What a load takes; empty if its power is not known. */
  public Optional<LoadCurrent> current(Part load) {
    return Optional.ofNullable(currents.get(load));
  }

  /** Loads whose current flows, or would flow if it were known, through a branch. */
  public List<Part> loadsThrough(Branch branch) {
    return through.getOrDefault(branch, List.of()).stream().map(Way::load).distinct().toList();
  }

  /** The lines that feed loads through a branch. */
  public Set<Node> linesThrough(Branch branch) {
    return lines(through.getOrDefault(branch, List.of()));
  }

  /** True if a branch lies in a line's way to a load, not only in a neutral's. */
  public boolean isLine(Branch branch) {
    return through.getOrDefault(branch, List.of()).stream().anyMatch(Way::line);
  }

  /** Every wire and contact of all ways, in the order in which the loads name them. */
  public Set<Branch> branches() {
    return through.keySet();
  }

  /** What a branch carries; empty if it carries no load or a load's power is not known. */
  public Optional<Demand> demand(Branch branch) {
    return Optional.ofNullable(demands.get(branch));
  }

  private Optional<Demand> demandOf(Branch branch) {
    List<Way> here = through.getOrDefault(branch, List.of());
    Map<Part, String> pins = new LinkedHashMap<>();
    here.forEach(w -> pins.putIfAbsent(w.load(), w.pin()));
    if (pins.keySet().stream().anyMatch(p -> !currents.containsKey(p))) {
      return Optional.empty();
    }
    boolean neutral = here.stream().noneMatch(Way::line);
    List<LoadCurrent> loads = pins.keySet().stream().map(this::known).toList();
    double nominal = 0;
    double worst = 0;
    if (pins.size() == 1) {
      nominal = at(loads.get(0), pins, neutral);
      worst = nominal * loads.get(0).worstFactor();
    } else {
      Map<Set<Node>, double[]> byLine = new LinkedHashMap<>();
      byTable(loads)
          .forEach(
              (table, own) ->
                  mostOf(table, own, pins, neutral)
                      .forEach(
                          (line, most) -> {
                            double[] sum = byLine.computeIfAbsent(line, k -> new double[2]);
                            sum[0] += most[0];
                            sum[1] += most[1];
                          }));
      // a neutral carries what its fullest line brings: lines cancel each other, never add
      for (double[] sum : byLine.values()) {
        nominal = Math.max(nominal, sum[0]);
        worst = Math.max(worst, sum[1]);
      }
      if (worst == 0) {
        for (LoadCurrent load : loads) {
          nominal += at(load, pins, neutral);
          worst += at(load, pins, neutral) * load.worstFactor();
        }
      }
    }
    LoadCurrent first = loads.get(0);
    return Optional.of(new Demand(nominal, worst, first.worstWords(), loads));
  }

  private Map<StateTable, List<LoadCurrent>> byTable(List<LoadCurrent> loads) {
    Map<StateTable, List<LoadCurrent>> byTable = new LinkedHashMap<>();
    for (LoadCurrent load : loads) {
      Optional.ofNullable(tableOf.get(load.load().name()))
          .ifPresent(t -> byTable.computeIfAbsent(t, k -> new ArrayList<>()).add(load));
    }
    return byTable;
  }

  /** Which loads of a circuit are on together in some state; all of them if that is not known. */
  private Set<Set<String>> on(StateTable table) {
    return onTogether.computeIfAbsent(
        table,
        t -> {
          Set<Set<String>> on = new LinkedHashSet<>();
          for (State state : t.isComplete() ? t.states() : List.<State>of()) {
            on.add(
                t.loads().stream()
                    .filter(load -> study.load(load, state).on())
                    .collect(Collectors.toSet()));
          }
          return t.isComplete() ? on : Set.of(Set.copyOf(t.loads()));
        });
  }

  /**
   * The most that some loads of one circuit take together, nominal and at worst, on each line where
   * it is a neutral's. What is in other circuits adds to it, for nothing keeps both from being on.
   */
  private Map<Set<Node>, double[]> mostOf(
      StateTable table, List<LoadCurrent> loads, Map<Part, String> pins, boolean neutral) {
    Map<Set<Node>, double[]> most = new LinkedHashMap<>();
    for (Set<String> on : on(table)) {
      Map<Set<Node>, double[]> here = new LinkedHashMap<>();
      for (LoadCurrent load : loads) {
        if (on.contains(load.load().name())) {
          Set<Node> key = neutral ? linesOf(load.load()) : Set.of();
          double[] sum = here.computeIfAbsent(key, k -> new double[2]);
          sum[0] += at(load, pins, neutral);
          sum[1] += at(load, pins, neutral) * load.worstFactor();
        }
      }
      here.forEach(
          (line, sum) -> {
            double[] so = most.computeIfAbsent(line, k -> new double[2]);
            so[0] = Math.max(so[0], sum[0]);
            so[1] = Math.max(so[1], sum[1]);
          });
    }
    return most;
  }

  private LoadCurrent known(Part load) {
    LoadCurrent current = currents.get(load);
    if (current == null) {
      throw new IllegalStateException("no current of " + load.name());
    }
    return current;
  }

  /** A neutral of a star carries a whole line current once an element has failed. */
  private static double at(LoadCurrent load, Map<Part, String> pins, boolean neutral) {
    String pin = pins.getOrDefault(load.load(), "");
    double own = load.amps().getOrDefault(pin, 0.0);
    return neutral || own == 0 ? Math.max(own, load.nominal()) : own;
  }
}
