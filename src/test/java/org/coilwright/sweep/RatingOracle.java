package org.coilwright.sweep;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Part.ContactSpec;
import org.coilwright.netlist.Part.Ratings;
import org.coilwright.netlist.Run;
import org.coilwright.netlist.Terminal;
import org.coilwright.netlist.Wire;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.ConductorSize;
import org.coilwright.quantity.Quantity;
import org.coilwright.quantity.Rating;
import org.coilwright.sweep.Element.Link;
import org.coilwright.sweep.Element.Use;

/** What is far beyond a rating, by limits so wide that nobody could dispute them. */
final class RatingOracle {
  private static final double SHORT_TAP = 3;

  private final Wiring wiring;
  private final List<Moment> moments;
  private final Set<Danger> dangers;

  RatingOracle(Wiring wiring, List<Moment> moments, Set<Danger> dangers) {
    this.wiring = wiring;
    this.moments = moments;
    this.dangers = dangers;
  }

  void look() {
    for (Link link : wiring.links) {
      if (link.actuator().isEmpty()) {
        device(link);
      } else {
        ratings(link).ifPresent(r -> contact(link, r));
      }
    }
    wiring.netlist.wires().forEach(this::wire);
    double air = wiring.netlist.site().enclosureAir().map(w -> w.value().high()).orElse(20.0);
    if (air > 100) {
      add(Hazard.AIR_TOO_HOT, "");
    }
  }

  private void add(Hazard hazard, String subject) {
    dangers.add(new Danger(hazard, subject));
  }

  private double acAmps(Link link) {
    return moments.stream()
        .mapToDouble(m -> Math.hypot(m.acAmps(link)[0], m.acAmps(link)[1]))
        .max()
        .orElse(0);
  }

  private double dcAmps(Link link) {
    return moments.stream().mapToDouble(m -> Math.abs(m.dcAmps(link))).max().orElse(0);
  }

  private Optional<Written<Quantity>> rating(String name) {
    Part part = wiring.netlist.parts().get(name);
    return part instanceof Part.Fuse fuse
        ? fuse.rating()
        : part instanceof Part.Protective device ? device.rating() : Optional.empty();
  }

  private void device(Link link) {
    Optional<Written<Quantity>> rating = rating(link.part());
    if (rating.isEmpty()) {
      return;
    }
    double amps = rating.get().value().nominal();
    if (acAmps(link) > 1.15 * amps) {
      add(Hazard.DEVICE_BELOW_LOAD, link.part());
    }
    if (link.guard()) {
      for (Wire wire : behind(link)) {
        if (amps > 1.05 * carries(wire).orElse(1e9)) {
          add(Hazard.DEVICE_TOO_LARGE, link.part());
        }
      }
    }
  }

  /** The long wires that a device alone protects: from its far end up to the next device. */
  private Set<Wire> behind(Link link) {
    Set<Integer> seen = new HashSet<>(List.of(link.a(), link.b()));
    Deque<Integer> todo = new ArrayDeque<>(List.of(link.b()));
    Set<Wire> wires = new HashSet<>();
    while (!todo.isEmpty()) {
      int net = todo.remove();
      for (Wire wire : wiring.netlist.wires()) {
        boolean isLong = length(wire).orElse(0.0) > SHORT_TAP;
        if (isLong && wiring.nets.of(wire.from().value()) == net) {
          wires.add(wire);
        }
      }
      for (Link other : wiring.links) {
        if (!other.guard() && (other.a() == net || other.b() == net)) {
          int far = other.a() == net ? other.b() : other.a();
          if (moments.stream().anyMatch(m -> m.isClosed(other)) && seen.add(far)) {
            todo.add(far);
          }
        }
      }
    }
    return wires;
  }

  private Optional<Double> length(Wire wire) {
    return wire.length()
        .or(() -> wire.run().flatMap(r -> run(r.value())).flatMap(Run::length))
        .map(w -> w.value().nominal());
  }

  private Optional<Run> run(String name) {
    return Optional.ofNullable(wiring.netlist.runs().get(name));
  }

  /** More than any table lets so thin a copper conductor carry. */
  private Optional<Double> carries(Wire wire) {
    Optional<ConductorSize> size =
        wire.size()
            .or(() -> wire.run().flatMap(r -> run(r.value())).flatMap(Run::size))
            .map(Written::value);
    return size.map(s -> 19 * Math.pow(s.mm2(), 0.66));
  }

  /** What flows in a wire, where that is plain: one of its pins holds no other and uses current. */
  private void wire(Wire wire) {
    for (Terminal pin : List.of(wire.from().value(), wire.to().value())) {
      long ends =
          wiring.netlist.wires().stream()
              .filter(w -> w.from().value().equals(pin) || w.to().value().equals(pin))
              .count();
      if (ends != 1) {
        continue;
      }
      double most = 0;
      for (Moment moment : moments) {
        most = Math.max(most, into(moment, pin));
      }
      if (most > 1.2 * carries(wire).orElse(1e9)) {
        add(Hazard.WIRE_OVERLOADED, pin.part());
      }
    }
    insulation(wire);
  }

  private double into(Moment moment, Terminal pin) {
    int net = wiring.nets.of(pin);
    double[] sum = new double[2];
    for (Use use : wiring.uses) {
      if (use.part().equals(pin.part()) && (use.a() == net) != (use.b() == net)) {
        int far = use.a() == net ? use.b() : use.a();
        for (int i = 0; i < 2; i++) {
          sum[i] += (moment.ac(i, net) - moment.ac(i, far)) / use.ohms();
        }
      }
    }
    return Math.hypot(sum[0], sum[1]);
  }

  private void insulation(Wire wire) {
    Optional<Double> volts =
        wire.insulation()
            .or(() -> wire.run().flatMap(r -> run(r.value())).flatMap(Run::insulation))
            .map(w -> w.value().nominal());
    int net = wiring.nets.of(wire.from().value());
    double most =
        moments.stream().mapToDouble(m -> Math.hypot(m.ac(0, net), m.ac(1, net))).max().orElse(0);
    if (volts.isPresent() && most > 50 && volts.get() < 0.8 * most) {
      add(Hazard.WIRE_INSULATION, "");
    }
  }

  private Optional<Ratings> ratings(Link link) {
    Part part = wiring.netlist.parts().get(link.part());
    if (part instanceof Part.Relay relay) {
      return relay.contacts().stream()
          .filter(c -> c.name().equals(link.name()))
          .findFirst()
          .map(c -> c.pole() && c.ratings().byCategory().isEmpty() ? relay.ratings() : c.ratings());
    }
    if (part instanceof Part.Controller controller) {
      String output = link.actuator().substring(link.actuator().indexOf('.') + 1);
      return Optional.ofNullable(controller.outputs().get(output)).map(ContactSpec::ratings);
    }
    return part instanceof Part.Switch s
        ? Optional.of(s.ratings())
        : part instanceof Part.Thermal t ? Optional.of(t.ratings()) : Optional.empty();
  }

  private void contact(Link link, Ratings ratings) {
    if (ratings.byCategory().isEmpty()) {
      return;
    }
    double acVolts = 0;
    double dcVolts = 0;
    for (Moment moment : moments) {
      if (!moment.isClosed(link)) {
        acVolts = Math.max(acVolts, moment.acVolts(link.a(), link.b()));
        dcVolts = Math.max(dcVolts, Math.abs(moment.dcVolts(link.a(), link.b())));
      }
    }
    if (acAmps(link) > 0.002) {
      held(link, "AC-", ratings.byCategory(), acAmps(link), acVolts);
    }
    if (dcAmps(link) > 0.002) {
      held(link, "DC-", ratings.byCategory(), dcAmps(link), dcVolts);
    }
  }

  private void held(
      Link link, String kind, Map<String, Written<Rating>> all, double amps, double volts) {
    List<Rating> right =
        all.entrySet().stream()
            .filter(e -> e.getKey().startsWith(kind))
            .map(e -> e.getValue().value())
            .toList();
    if (right.isEmpty()) {
      add(Hazard.CONTACT_KIND, link.part());
      return;
    }
    double mostAmps = right.stream().mapToDouble(r -> r.amount().nominal()).max().orElse(1e9);
    double mostVolts =
        right.stream()
            .mapToDouble(r -> r.at().map(Quantity::nominal).orElse(1e9))
            .max()
            .orElse(1e9);
    if (amps > 1.15 * mostAmps) {
      add(Hazard.CONTACT_CURRENT, link.part());
    }
    if (volts > 1.2 * mostVolts) {
      add(Hazard.CONTACT_VOLTAGE, link.part());
    }
  }
}
