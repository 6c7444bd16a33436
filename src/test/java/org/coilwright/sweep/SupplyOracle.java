package org.coilwright.sweep;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Quantity;
import org.coilwright.sweep.Element.Link;
import org.coilwright.sweep.Element.Output;
import org.coilwright.sweep.Element.Sort;
import org.coilwright.sweep.Element.Use;

/** What is wrong with supplies, and with the sums of currents in protective devices. */
final class SupplyOracle {
  private final Wiring wiring;
  private final Positions positions;
  private final List<Moment> moments;
  private final Set<Danger> dangers;

  SupplyOracle(Wiring wiring, Positions positions, List<Moment> moments, Set<Danger> dangers) {
    this.wiring = wiring;
    this.positions = positions;
    this.moments = moments;
    this.dangers = dangers;
  }

  void look(boolean whole) {
    for (Use use : wiring.uses) {
      if (use.sort() == Sort.INPUT) {
        input(use, whole);
      }
    }
    for (Output output : wiring.outputs) {
      Optional<Written<Quantity>> limit = limit(output.part());
      double most = moments.stream().mapToDouble(m -> m.amps(output)).max().orElse(0);
      if (limit.isPresent() && most > 1.1 * limit.get().value().nominal()) {
        add(Hazard.SUPPLY_OVERLOADED, output.part());
      }
    }
    for (Part part : wiring.netlist.parts().values()) {
      if (part instanceof Part.Protective device) {
        moments.forEach(m -> sums(m, device));
      }
    }
  }

  private void add(Hazard hazard, String subject) {
    dangers.add(new Danger(hazard, subject));
  }

  private Optional<Written<Quantity>> limit(String name) {
    Part part = wiring.netlist.parts().get(name);
    return part instanceof Part.Controller c
        ? c.auxSupply().flatMap(Part.DcOutput::limit)
        : part instanceof Part.DcSupply s ? s.output().limit() : Optional.empty();
  }

  private void input(Use use, boolean whole) {
    double most = 0;
    for (Moment moment : moments) {
      most = Math.max(most, moment.acVolts(use.a(), use.b()));
    }
    double wanted = positions.inputVolts(use);
    if (most > 1.4 * wanted) {
      add(Hazard.SUPPLY_WRONG, use.part());
    } else if (whole && most < 0.05 * wanted) {
      add(Hazard.SUPPLY_UNFED, use.part());
    }
  }

  private void sums(Moment moment, Part.Protective device) {
    double[] all = new double[2];
    double[] neutral = new double[2];
    for (Link link : wiring.links) {
      if (link.part().equals(device.name())) {
        double[] amps = moment.acAmps(link);
        for (int i = 0; i < 2; i++) {
          all[i] += amps[i];
          neutral[i] += link.neutral() ? amps[i] : 0;
        }
      }
    }
    double rest = Math.hypot(all[0], all[1]);
    double back = Math.hypot(neutral[0], neutral[1]);
    double lines = Math.hypot(all[0] - neutral[0], all[1] - neutral[1]);
    if (device.isRcd() && rest > 0.5 * Plain.nominal(device.trip(), 0.03)) {
      add(Hazard.RCD_TRIPS, device.name());
    } else if (rest > 0.05 && back > lines + 0.05) {
      add(Hazard.NEUTRAL_CROSSED, device.name());
    }
  }
}
