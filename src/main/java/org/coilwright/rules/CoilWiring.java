package org.coilwright.rules;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Coil;
import org.coilwright.circuit.Branch.DiodeBranch;
import org.coilwright.circuit.Branch.Passive;
import org.coilwright.circuit.Branch.Source;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Part;
import org.coilwright.solve.Study;

/** What is wired to the coils of a circuit: sources, and parts across them. */
final class CoilWiring {
  private final Circuit circuit;
  private final double tolerance;
  private final Nets wires;
  private final Nets ways;
  private final Nets pastResistors;
  private final Map<Integer, List<Source>> sources = new HashMap<>();
  private final Map<Nets.Pair, List<Branch>> suppressors = new HashMap<>();
  private final Map<Nets.Pair, List<Coil>> coils = new HashMap<>();

  /** The wiring of a study, sorted once for all who assume the same tolerance. */
  static CoilWiring of(Study study, double tolerance) {
    CoilWiring known = study.derived(CoilWiring.class, s -> new CoilWiring(s.circuit(), tolerance));
    return known.tolerance == tolerance ? known : new CoilWiring(study.circuit(), tolerance);
  }

  /**
   * Sorts a circuit's wiring.
   *
   * @param tolerance of a coil's resistance where none is written, as a share of it
   */
  private CoilWiring(Circuit circuit, double tolerance) {
    this.circuit = circuit;
    this.tolerance = tolerance;
    wires = Nets.ofWires(circuit);
    ways = Nets.ofWiresAndContacts(circuit);
    circuit.islands().forEach(island -> sources.put(island.number(), island.sources()));
    for (Branch branch : circuit.branches()) {
      if (branch instanceof Coil coil) {
        coils.computeIfAbsent(wires.ends(coil), p -> new ArrayList<>()).add(coil);
      } else if (takesTurnOffCurrent(branch)) {
        suppressors.computeIfAbsent(wires.ends(branch), p -> new ArrayList<>()).add(branch);
      }
    }
    pastResistors =
        circuit.branches(Passive.class).stream().anyMatch(this::isSeriesResistor)
            ? Nets.ofWaysAnd(circuit, this::isSeriesResistor)
            : ways;
  }

  /** A resistor that lies neither across a coil nor across a source. */
  private boolean isSeriesResistor(Branch branch) {
    return branch instanceof Passive passive
        && passive.spec() instanceof Part.Resistor
        && !coils.containsKey(wires.ends(branch))
        && circuit.branches(Source.class).stream()
            .noneMatch(s -> wires.ends(s).equals(wires.ends(branch)));
  }

  /** A diode, varistor, snubber or resistor; a lamp takes no turn-off current worth counting. */
  private static boolean takesTurnOffCurrent(Branch branch) {
    return branch instanceof DiodeBranch
        || (branch instanceof Passive passive && !(passive.spec() instanceof Part.Lamp));
  }

  Circuit circuit() {
    return circuit;
  }

  Nets wires() {
    return wires;
  }

  double tolerance() {
    return tolerance;
  }

  /** Every coil and what feeds it, in the order of the netlist. */
  List<FedCoil> fed() {
    return circuit.branches(Coil.class).stream().map(this::fed).toList();
  }

  /**
   * What feeds a coil, by wires and contacts; else past resistors in its way. Nothing does if wires
   * join its two pins.
   */
  FedCoil fed(Coil coil) {
    FedCoil plain = fed(coil, ways);
    return plain.sources().isEmpty() ? fed(coil, pastResistors) : plain;
  }

  private FedCoil fed(Coil coil, Nets by) {
    List<Source> near = sources.getOrDefault(circuit.islandOf(coil.from()).number(), List.of());
    return new FedCoil(
        this,
        by,
        coil,
        near.stream()
            .filter(
                s ->
                    drives(by, s, coil.from(), coil.to(), near)
                        || drives(by, s, coil.to(), coil.from(), near))
            .toList());
  }

  private boolean drives(Nets by, Source source, Node one, Node other, List<Source> near) {
    return !wires.joined(one, other)
        && by.joined(one, source.to())
        && (by.joined(other, source.from())
            || (!source.isDirect()
                && near.stream()
                    .anyMatch(
                        s -> !s.isDirect() && !s.equals(source) && by.joined(other, s.to()))));
  }

  /** What lies across a coil. */
  AcrossCoil across(Coil coil) {
    List<Branch> found = suppressors.getOrDefault(wires.ends(coil), List.of());
    return new AcrossCoil(
        coil,
        found.stream().filter(DiodeBranch.class::isInstance).map(DiodeBranch.class::cast).toList(),
        found.stream().filter(Passive.class::isInstance).map(Passive.class::cast).toList(),
        coil.spec().suppression());
  }

  /** The coils that a suppressor lies across. */
  List<Coil> under(Branch suppressor) {
    return coils.getOrDefault(wires.ends(suppressor), List.of());
  }
}
