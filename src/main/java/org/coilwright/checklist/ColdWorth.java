package org.coilwright.checklist;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.coilwright.checklist.Bands.Reasoned;
import org.coilwright.circuit.Branch;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Quantity;
import org.coilwright.solve.Span;

/** Ohms of whatever lies between two pins of a circuit that is switched off and cold. */
final class ColdWorth implements Function<Branch, Span> {
  private final Anatomy anatomy;
  private final Bands bands;

  ColdWorth(Anatomy anatomy, Bands bands) {
    this.anatomy = anatomy;
    this.bands = bands;
  }

  @Override
  public Span apply(Branch branch) {
    if (branch instanceof Branch.Conductor wire) {
      return bands
          .series(List.of(wire))
          .map(r -> new Span(low(r), high(r) - figure("checklist.probe-ohms")))
          .orElseGet(() -> new Span(0, figure("checklist.wire-ohms")));
    }
    if (branch instanceof Branch.Contact) {
      return new Span(0, figure("checklist.closed-contact-ohms"));
    }
    if (branch instanceof Branch.Coil coil) {
      return bands.coil(coil.spec()).map(r -> new Span(low(r), high(r))).orElse(Span.ANY);
    }
    if (branch instanceof Branch.LoadElement load) {
      return load(load);
    }
    if (branch instanceof Branch.Passive passive) {
      return passive(passive.spec());
    }
    if (branch instanceof Branch.Source source) {
      // The isolator parts the lines of the mains; what lies before it is not felt here.
      return source.isDirect() ? electronics() : Span.OPEN;
    }
    return branch instanceof Branch.Input ? electronics() : Span.ANY;
  }

  /** Between two pins of a device with electronics in it. */
  Span electronics() {
    return new Span(figure("checklist.electronics-ohms"), Double.POSITIVE_INFINITY);
  }

  private Span load(Branch.LoadElement load) {
    if (load.ratedVolts().isEmpty() || load.ratedWatts().isEmpty()) {
      return Span.ANY;
    }
    double volts = load.ratedVolts().getAsDouble();
    double watts = load.ratedWatts().getAsDouble();
    if (volts <= 0 || watts <= 0) {
      return Span.ANY;
    }
    if (anatomy.netlist().parts().get(load.part()) instanceof Part.Heater) {
      Reasoned cold = bands.element(volts * volts / watts);
      return new Span(low(cold), high(cold));
    }
    return new Span(
        figure("checklist.load-low-share") * volts * volts / watts, Double.POSITIVE_INFINITY);
  }

  /** Varistors and snubbers conduct no direct current at the voltage of an ohmmeter. */
  private Span passive(Part part) {
    if (part instanceof Part.Resistor resistor) {
      return resistor
          .resistance()
          .map(Written::value)
          .filter(q -> q.low() > 0)
          .map(this::resistor)
          .orElse(Span.ANY);
    }
    if (part instanceof Part.Lamp lamp) {
      OptionalDouble volts = nominal(lamp.voltage());
      OptionalDouble amps = nominal(lamp.current());
      return volts.isPresent() && amps.isPresent() && amps.getAsDouble() > 0
          ? new Span(
              figure("checklist.load-low-share") * volts.getAsDouble() / amps.getAsDouble(),
              Double.POSITIVE_INFINITY)
          : Span.ANY;
    }
    return Span.OPEN;
  }

  private Span resistor(Quantity ohms) {
    double spread = ohms.isExact() ? figure("checklist.load-spread") : 0;
    return new Span(ohms.low() * (1 - spread), ohms.high() * (1 + spread));
  }

  private static OptionalDouble nominal(Optional<Written<Quantity>> written) {
    return written.stream().mapToDouble(w -> w.value().nominal()).findFirst();
  }

  private double figure(String name) {
    return bands.figure(name).value();
  }

  private static double low(Reasoned reasoned) {
    return reasoned.band().min().orElse(0);
  }

  private static double high(Reasoned reasoned) {
    return reasoned.band().max().orElse(Double.POSITIVE_INFINITY);
  }
}
