package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Terminal;
import org.coilwright.solve.Probing;

/**
 * A second opinion on what an ohmmeter reads, as plain as can be: every part of the circuit that
 * was built, as drawn anew; one ampere pushed in; conductances in one dense matrix, solved by
 * Gauss.
 */
final class PlainOhms {
  /** Beyond this nothing joins the leads. */
  static final double OPEN = 1e10;

  private final Circuit circuit;
  private final Probing probing;
  private final Map<Object, Integer> nodes = new HashMap<>();
  private final List<int[]> ends = new ArrayList<>();
  private final List<Double> ohms = new ArrayList<>();
  final List<int[]> diodes = new ArrayList<>();

  /**
   * The circuit as measured.
   *
   * @param value ohms of a branch, infinite if it does not conduct; never asked for a diode or for
   *     a contact that is open
   * @param inside ohms between two pins inside a part, infinite if they are not joined
   */
  PlainOhms(
      Circuit circuit,
      Probing probing,
      Function<Branch, Double> value,
      Function<Set<Terminal>, Double> inside) {
    this.circuit = circuit;
    this.probing = probing;
    for (Branch branch : circuit.branches()) {
      if (probing.apart().contains(branch.part())) {
        continue;
      }
      int from = number(branch.from());
      int to = number(branch.to());
      if (branch instanceof Branch.Conductor wire) {
        add(
            end(wire, wire.wire().from().value(), from),
            end(wire, wire.wire().to().value(), to),
            value.apply(wire));
      } else if (branch instanceof Branch.DiodeBranch) {
        diode(from, to);
      } else if (!(branch instanceof Contact contact) || isClosed(contact)) {
        add(from, to, value.apply(branch));
      }
      if (branch instanceof Branch.Coil coil
          && coil.spec().suppression().filter(s -> s.value().equals("diode")).isPresent()) {
        diode(to, from);
      }
    }
    pipes(inside);
    for (Part part : circuit.netlist().parts().values()) {
      for (int i = 0; i < part.pins().size(); i++) {
        for (int j = i + 1; j < part.pins().size(); j++) {
          Terminal one = new Terminal(part.name(), part.pins().get(i));
          Terminal other = new Terminal(part.name(), part.pins().get(j));
          if (!probing.apart().contains(part.name())) {
            add(number(node(one)), number(node(other)), inside.apply(Set.of(one, other)));
          }
        }
      }
    }
  }

  /** Vessel and pipes: from every load's earth pin to the supply's. */
  private void pipes(Function<Set<Terminal>, Double> inside) {
    for (Part load : circuit.netlist().parts().values()) {
      for (Part mains : circuit.netlist().parts().values()) {
        boolean both = load.pins().contains("PE") && mains.pins().contains("PE");
        if (both && !load.equals(mains) && !probing.apart().contains(load.name())) {
          Terminal one = new Terminal(load.name(), "PE");
          Terminal other = new Terminal(mains.name(), "PE");
          add(number(node(one)), number(node(other)), inside.apply(Set.of(one, other)));
        }
      }
    }
  }

  private void diode(int anode, int cathode) {
    if (probing.method() == Probing.Method.INSULATION) {
      add(anode, cathode, 1e-6);
    } else {
      diodes.add(new int[] {anode, cathode});
    }
  }

  private int end(Branch wire, Terminal pin, int node) {
    return probing.lifted().contains(pin) ? number(wire.id() + " off " + pin) : node;
  }

  private Node node(Terminal terminal) {
    return circuit.find(terminal).orElseThrow();
  }

  private boolean isClosed(Contact contact) {
    String name = contact.actuator().name();
    boolean rest =
        switch (contact.actuator().kind()) {
          case PROTECTIVE, OUTPUT, SWITCH, COIL -> false;
          case THERMOSTAT, CUT_OUT -> contact.form() == Part.ContactForm.NC;
        };
    return contact.conductsWhen(probing.operated().getOrDefault(name, rest));
  }

  private int number(Object node) {
    return nodes.computeIfAbsent(node, n -> nodes.size());
  }

  private void add(int from, int to, double value) {
    if (!Double.isInfinite(value) && from != to) {
      ends.add(new int[] {from, to});
      ohms.add(Math.max(value, 1e-6));
    }
  }

  /** Every reading that ideal diodes allow: none conducts, or just those that have to. */
  List<Double> readings() {
    List<Double> readings = new ArrayList<>();
    readings.add(reading(0));
    for (int mask = 1; mask < 1 << diodes.size(); mask++) {
      double[] volts = volts(mask);
      boolean consistent = true;
      for (int d = 0; d < diodes.size(); d++) {
        // Not a number where an end hangs free: no current then.
        double forward = volts[diodes.get(d)[0]] - volts[diodes.get(d)[1]];
        boolean conducts = (mask >> d & 1) == 1;
        consistent &= conducts ? forward > 0 : !(forward > 1e-9);
      }
      if (consistent) {
        readings.add(reading(mask));
      }
    }
    return readings;
  }

  private double reading(int conducting) {
    double read = volts(conducting)[number(node(probing.plus().get(0)))];
    return Double.isNaN(read) || read > OPEN ? Double.POSITIVE_INFINITY : read;
  }

  /**
   * Potentials with one ampere in at the positive lead and out at the other, which is at zero; not
   * a number where nothing joins a node to that lead.
   */
  private double[] volts(int conducting) {
    List<int[]> joined = new ArrayList<>(ends);
    List<Double> siemens = new ArrayList<>(ohms.stream().map(r -> 1 / r).toList());
    for (int d = 0; d < diodes.size(); d++) {
      if ((conducting >> d & 1) == 1) {
        joined.add(diodes.get(d));
        siemens.add(1e6);
      }
    }
    for (List<Terminal> lead : List.of(probing.plus(), probing.minus())) {
      for (Terminal pin : lead) {
        if (number(node(lead.get(0))) != number(node(pin))) {
          joined.add(new int[] {number(node(lead.get(0))), number(node(pin))});
          siemens.add(1e6);
        }
      }
    }
    int zero = number(node(probing.minus().get(0)));
    int into = number(node(probing.plus().get(0)));
    boolean[] reached = new boolean[nodes.size()];
    reached[zero] = true;
    for (boolean grown = true; grown; ) {
      grown = false;
      for (int[] end : joined) {
        grown |= reached[end[0]] != reached[end[1]];
        reached[end[0]] |= reached[end[1]];
        reached[end[1]] |= reached[end[0]];
      }
    }
    int[] row = new int[nodes.size()];
    int rows = 0;
    for (int n = 0; n < row.length; n++) {
      row[n] = reached[n] && n != zero ? rows++ : -1;
    }
    double[] volts = new double[nodes.size()];
    Arrays.fill(volts, Double.NaN);
    volts[zero] = 0;
    if (!reached[into]) {
      return volts;
    }
    double[][] a = new double[rows][rows + 1];
    for (int i = 0; i < joined.size(); i++) {
      int[] at = {row[joined.get(i)[0]], row[joined.get(i)[1]]};
      for (int end : at) {
        if (end >= 0) {
          a[end][end] += siemens.get(i);
        }
      }
      if (at[0] >= 0 && at[1] >= 0) {
        a[at[0]][at[1]] -= siemens.get(i);
        a[at[1]][at[0]] -= siemens.get(i);
      }
    }
    if (row[into] >= 0) {
      a[row[into]][rows] = 1;
    }
    double[] x = gauss(a);
    for (int n = 0; n < row.length; n++) {
      if (row[n] >= 0) {
        volts[n] = x[row[n]];
      }
    }
    return volts;
  }

  private static double[] gauss(double[][] a) {
    int size = a.length;
    for (int k = 0; k < size; k++) {
      for (int row = k + 1; row < size; row++) {
        double factor = a[row][k] / a[k][k];
        if (factor != 0) {
          for (int column = k; column <= size; column++) {
            a[row][column] -= factor * a[k][column];
          }
        }
      }
    }
    double[] x = new double[size];
    for (int row = size - 1; row >= 0; row--) {
      double sum = a[row][size];
      for (int column = row + 1; column < size; column++) {
        sum -= a[row][column] * x[column];
      }
      x[row] = sum / a[row][row];
    }
    return x;
  }
}
