package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Circuit;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Terminal;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Quantity;
import org.jspecify.annotations.Nullable;

/**
 * A direct-voltage output that something is wired to.
 *
 * @param key the netlist key its output stands under: {@code aux-supply} or {@code output}
 */
record DirectSupply(Branch.Source source, Part.DcOutput output, String key) {
  /** The source alone tells one from another; the rest is what is known about it. */
  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof DirectSupply that && source.equals(that.source);
  }

  @Override
  public int hashCode() {
    return source.hashCode();
  }

  /** Every wired one, in the order of the netlist. */
  static List<DirectSupply> of(Circuit circuit) {
    List<DirectSupply> all = new ArrayList<>();
    for (Branch.Source source : circuit.branches(Branch.Source.class)) {
      if (source.isDirect() && source.output().isPresent()) {
        Part.DcOutput output = source.output().get();
        boolean wired =
            List.of(output.plus(), output.minus()).stream()
                .anyMatch(
                    pin -> !circuit.wiresAt(new Terminal(source.part(), pin.value())).isEmpty());
        if (wired) {
          all.add(new DirectSupply(source, output, keyOf(circuit, source)));
        }
      }
    }
    return List.copyOf(all);
  }

  /** The netlist key under which a direct output stands. */
  static String keyOf(Circuit circuit, Branch.Source source) {
    boolean own = circuit.netlist().parts().get(source.part()) instanceof Part.Controller;
    return own ? "aux-supply" : "output";
  }

  /** Designation of the device it belongs to. */
  String part() {
    return source.part();
  }

  /** A key of it as an undecided outcome names it: {@code aux-supply.limit of U1}. */
  String missing(String what) {
    return "%s.%s of %s".formatted(key, what, part());
  }

  /** Where its voltage is written, or else the output itself. */
  Mark mark() {
    return output.voltage().map(Written::mark).orElse(output.mark());
  }

  /** Its voltage; empty if it is not written. */
  Optional<Quantity> volts() {
    return output.voltage().map(Written::value);
  }

  /** {@code 24 V}, or {@code direct-voltage} where it is not written. */
  String inWords() {
    return volts().map(v -> Printed.volts(v.nominal())).orElse("direct-voltage");
  }
}
