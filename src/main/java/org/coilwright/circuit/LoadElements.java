package org.coilwright.circuit;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Part.Connection;
import org.coilwright.netlist.Terminal;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Quantity;

/**
 * The elements inside a load. Voltages of three-phase loads are written line to line, so an element
 * in star sees 1/√3 of it.
 */
final class LoadElements {
  private final Terminals terminals;

  LoadElements(Terminals terminals) {
    this.terminals = terminals;
  }

  List<Branch> of(Part part) {
    if (part instanceof Part.Heater heater) {
      return elements(
          part, heater.connection().value(), nominal(heater.voltage()), nominal(heater.power()), 1);
    }
    if (part instanceof Part.OtherLoad load) {
      Connection connection = connectionOf(load);
      double factor = load.powerFactor().map(f -> f.value().nominal()).orElse(1.0);
      return elements(part, connection, nominal(load.voltage()), watts(load, factor), factor);
    }
    return List.of();
  }

  private static OptionalDouble watts(Part.OtherLoad load, double powerFactor) {
    OptionalDouble byPower = byPower(load, powerFactor);
    OptionalDouble byCurrent = byCurrent(load, powerFactor);
    // a motor's plate gives the power at its shaft: what its wires carry is the more of the two
    boolean greater =
        byPower.isPresent()
            && byCurrent.isPresent()
            && load.head().is().equals("motor")
            && byCurrent.getAsDouble() > byPower.getAsDouble();
    return greater || byPower.isEmpty() ? byCurrent : byPower;
  }

  private static OptionalDouble byPower(Part.OtherLoad load, double powerFactor) {
    if (load.power().isEmpty()) {
      return OptionalDouble.empty();
    }
    Quantity power = load.power().get().value();
    return OptionalDouble.of(
        switch (power.dimension()) {
          case APPARENT_POWER -> power.nominal() * powerFactor;
          default -> power.nominal();
        });
  }

  private static OptionalDouble byCurrent(Part.OtherLoad load, double powerFactor) {
    if (load.current().isEmpty() || load.voltage().isEmpty()) {
      return OptionalDouble.empty();
    }
    double lines = connectionOf(load) == Connection.SINGLE ? 1 : Math.sqrt(3);
    double volts = load.voltage().get().value().nominal();
    return OptionalDouble.of(lines * volts * load.current().get().value().nominal() * powerFactor);
  }

  /**
   * A three-wire load without neutral is taken as a delta: outside it cannot be told from a star.
   */
  private static Connection connectionOf(Part.OtherLoad load) {
    if (!load.pins().contains("3")) {
      return Connection.SINGLE;
    }
    return load.pins().contains("N") ? Connection.STAR_WITH_NEUTRAL : Connection.DELTA;
  }

  private List<Branch> elements(
      Part part, Connection connection, OptionalDouble volts, OptionalDouble watts, double factor) {
    List<Branch> elements = new ArrayList<>();
    switch (connection) {
      case SINGLE -> add(elements, part, "1", "2", volts, watts, factor);
      case DELTA -> {
        OptionalDouble third = times(watts, 1.0 / 3);
        add(elements, part, "1", "2", volts, third, factor);
        add(elements, part, "2", "3", volts, third, factor);
        add(elements, part, "3", "1", volts, third, factor);
      }
      case STAR -> {
        Node star = terminals.inner(part.name() + ".star");
        addStar(elements, part, star, "star", volts, watts, factor);
      }
      case STAR_WITH_NEUTRAL -> addStar(elements, part, at(part, "N"), "N", volts, watts, factor);
    }
    return elements;
  }

  private void addStar(
      List<Branch> elements,
      Part part,
      Node star,
      String starName,
      OptionalDouble volts,
      OptionalDouble watts,
      double factor) {
    OptionalDouble phase = times(volts, 1 / Math.sqrt(3));
    OptionalDouble third = times(watts, 1.0 / 3);
    for (String pin : List.of("1", "2", "3")) {
      elements.add(element(part, pin + "-" + starName, at(part, pin), star, phase, third, factor));
    }
  }

  private void add(
      List<Branch> elements,
      Part part,
      String from,
      String to,
      OptionalDouble volts,
      OptionalDouble watts,
      double factor) {
    elements.add(
        element(part, from + "-" + to, at(part, from), at(part, to), volts, watts, factor));
  }

  private static Branch element(
      Part part,
      String name,
      Node from,
      Node to,
      OptionalDouble volts,
      OptionalDouble watts,
      double factor) {
    return new Branch.LoadElement(
        part.name() + "." + name, from, to, part.head().mark(), part.name(), volts, watts, factor);
  }

  private Node at(Part part, String pin) {
    return terminals.at(new Terminal(part.name(), pin));
  }

  private static OptionalDouble nominal(Optional<Written<Quantity>> written) {
    return written.stream().mapToDouble(w -> w.value().nominal()).findFirst();
  }

  private static OptionalDouble times(OptionalDouble value, double factor) {
    return value.isPresent() ? OptionalDouble.of(value.getAsDouble() * factor) : value;
  }
}
