package org.coilwright.rules;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Part.Isolation;
import org.coilwright.netlist.Site;
import org.coilwright.netlist.Site.MainsSupply;
import org.coilwright.netlist.Terminal;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Quantity;
import org.coilwright.solve.Study;

/**
 * Which points of a circuit are at mains voltage and which at the extra-low voltage of a supply.
 * What is joined only through the protective conductor is not joined: it carries no voltage.
 */
final class VoltageBands {
  private static final String PE = "PE";

  private final Circuit circuit;
  private final Set<Node> mains = new HashSet<>();
  private final Map<String, Set<Node>> lines = new LinkedHashMap<>();
  private final List<Node> mainsTerminals = new ArrayList<>();
  private final List<DirectSupply> supplies = new ArrayList<>();
  private final Map<Node, DirectSupply> suppliedBy = new HashMap<>();

  /**
   * Sorts a circuit's points, once for all rules that ask: they have the limit from one figure.
   *
   * @param highestElv the highest direct voltage that counts as extra-low, in volts
   */
  static VoltageBands of(Study study, double highestElv) {
    return study.derived(VoltageBands.class, s -> new VoltageBands(s.circuit(), highestElv));
  }

  private VoltageBands(Circuit circuit, double highestElv) {
    this.circuit = circuit;
    for (Part part : circuit.netlist().parts().values()) {
      if (part instanceof Part.Mains) {
        part.pins().stream()
            .filter(pin -> !pin.equals(PE))
            .forEach(pin -> addMains(new Terminal(part.name(), pin)));
      }
    }
    for (DirectSupply supply : DirectSupply.of(circuit)) {
      // a supply that calls itself SELV or PELV is held to that, however high it is
      boolean declared =
          supply.output().isolation().filter(i -> i.value() != Isolation.NONE).isPresent();
      if (declared || supply.volts().map(v -> v.high() <= highestElv).orElse(true)) {
        supplies.add(supply);
        circuit
            .reach(supply.source().to(), VoltageBands::avoidsEarth)
            .forEach(node -> suppliedBy.putIfAbsent(node, supply));
      }
    }
  }

  private void addMains(Terminal terminal) {
    circuit
        .find(terminal)
        .ifPresent(
            node -> {
              mainsTerminals.add(node);
              mains.addAll(circuit.reach(node, VoltageBands::avoidsEarth));
              if (terminal.isLine()) {
                lines.put(
                    terminal.pin(),
                    circuit.reach(
                        node, b -> b instanceof Branch.Conductor || b instanceof Branch.Contact));
              }
            });
  }

  /** True for a branch with no end at a protective conductor's own terminal. */
  static boolean avoidsEarth(Branch branch) {
    return !isEarth(branch.from()) && !isEarth(branch.to());
  }

  /** True for the terminal of a protective conductor. */
  static boolean isEarth(Node node) {
    return node.terminals().stream().anyMatch(t -> t.pin().equals(PE));
  }

  /** Extra-low voltage supplies in the order of the netlist. */
  Collection<DirectSupply> supplies() {
    return List.copyOf(supplies);
  }

  /** Line and neutral terminals of the mains. */
  List<Node> mainsTerminals() {
    return List.copyOf(mainsTerminals);
  }

  /** True where the mains reaches, in some position of the contacts and through any load. */
  boolean onMains(Node node) {
    return mains.contains(node);
  }

  /** True for a wire that the mains reaches, the protective conductor left out. */
  boolean onMains(Branch branch) {
    return avoidsEarth(branch) && onMains(branch.from());
  }

  /** True where an extra-low voltage supply reaches, whether or not the mains does too. */
  boolean onElv(Node node) {
    return suppliedBy.containsKey(node);
  }

  /** The extra-low voltage supply that reaches a point the mains does not reach. */
  Optional<DirectSupply> elvAt(Node node) {
    return onMains(node) ? Optional.empty() : Optional.ofNullable(suppliedBy.get(node));
  }

  /**
   * What the mains can put between two of these wires, or between one of them and earth.
   *
   * <p>Line to line where two lines are among them. Where one line is, line to earth: an
   * extra-low-voltage core lies at or near earth. On an IT system a first earth fault lifts the
   * other lines to the line-to-line voltage, so that counts there.
   */
  Met met(Collection<? extends Branch> wires) {
    Set<String> present = new TreeSet<>();
    lines.forEach(
        (line, nodes) -> {
          if (wires.stream().anyMatch(w -> nodes.contains(w.from()))) {
            present.add(line);
          }
        });
    return present.size() < 2 ? toEarth() : betweenLines(present);
  }

  private Met betweenLines(Set<String> present) {
    MainsSupply supply = supply();
    var volts = supply.voltage().value();
    return new Met(
        volts.nominal(),
        volts.high(),
        "line to line, as %s lie together".formatted(String.join(", ", present)));
  }

  /** Line to earth. */
  Met toEarth() {
    MainsSupply supply = supply();
    var between = supply.voltage().value();
    if (supply.earthing().map(Written::value).orElse("").equals("IT")) {
      return new Met(
          between.nominal(),
          between.high(),
          "line to line, as on an IT system one earth fault lifts the other lines to it");
    }
    List<Quantity> toNeutral =
        circuit.branches(Branch.Source.class).stream()
            .filter(s -> !s.isDirect())
            .flatMap(s -> s.volts().stream())
            .toList();
    return new Met(
        toNeutral.stream().mapToDouble(Quantity::nominal).max().orElse(between.nominal()),
        toNeutral.stream().mapToDouble(Quantity::high).max().orElse(between.high()),
        "line to earth");
  }

  private MainsSupply supply() {
    Site site = circuit.netlist().site();
    return site.mains()
        .orElseThrow(() -> new IllegalStateException("a mains part without site.mains"));
  }

  /**
   * A voltage that insulation meets.
   *
   * @param nominal in volts
   * @param highest at the highest supply, in volts
   * @param which voltage was taken, in words
   */
  record Met(double nominal, double highest, String which) {}
}
