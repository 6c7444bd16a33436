package org.coilwright.sizing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Conductor;
import org.coilwright.netlist.Run;
import org.coilwright.netlist.Written;
import org.coilwright.solve.CopperLaw;
import org.coilwright.table.Cited;
import org.coilwright.table.ConductorTable;
import org.coilwright.table.Tables;

/**
 * Resistance of the wires of a way, each at the temperature its insulation allows.
 *
 * @param ohms all of them in series
 * @param cited where the figures come from
 * @param longest the wire that adds most
 * @param hottest °C, the warmest of them; empty without a wire
 */
public record WayOhms(
    double ohms, List<Cited<Double>> cited, Optional<Conductor> longest, OptionalDouble hottest) {
  private static final double METRES_PER_KM = 1000;
  private static final double TABLE_CELSIUS = 20;

  /** Ω of it with every wire at 20 °C, or a little less where they differ in heat. */
  public double cold(Tables tables) {
    return CopperLaw.from(tables).at(ohms, hottest.orElse(TABLE_CELSIUS), TABLE_CELSIUS);
  }

  /** Adds the wires of some branches up; contacts count as none. */
  public static Found<WayOhms> of(List<Branch> branches, Tables tables) {
    CopperLaw copper = CopperLaw.from(tables);
    ConductorTable conductors = new ConductorTable(tables);
    OptionalDouble hottest = OptionalDouble.empty();
    double sum = 0;
    double most = -1;
    Optional<Conductor> longest = Optional.empty();
    List<Cited<Double>> cited = new ArrayList<>();
    for (Branch branch : branches) {
      if (branch instanceof Conductor wire) {
        String name =
            wire.run().map(Run::name).orElse("%s to %s".formatted(wire.from(), wire.to()));
        if (wire.size().isEmpty() || wire.length().isEmpty()) {
          return new Found.Unknown<>(
              (wire.size().isEmpty() ? "size of " : "length of ") + name,
              "The resistance of %s is not known.".formatted(name));
        }
        if (!wire.isCopper()) {
          return new Found.Unknown<>(
              "resistance of %s, which is aluminium".formatted(name),
              "The tables of resistance read here are for copper.");
        }
        Cited<Double> hot = Core.of(wire).celsius(wire.size().get(), tables);
        hottest = OptionalDouble.of(Math.max(hot.value(), hottest.orElse(hot.value())));
        Optional<Cited<Double>> perKm =
            conductors.ohmPerKm(
                wire.size().get(),
                wire.run().flatMap(Run::flexible).map(Written::value).orElse(false));
        if (perKm.isEmpty()) {
          return new Found.Unknown<>(
              "tabulated size of " + name, "No table gives the resistance of %s.".formatted(name));
        }
        double ohms =
            copper.at(perKm.get().value(), TABLE_CELSIUS, hot.value())
                * wire.length().getAsDouble()
                / METRES_PER_KM;
        cited.add(perKm.get());
        sum += ohms;
        if (ohms > most) {
          most = ohms;
          longest = Optional.of(wire);
        }
      }
    }
    return new Found.Known<>(new WayOhms(sum, List.copyOf(cited), longest, hottest));
  }
}
