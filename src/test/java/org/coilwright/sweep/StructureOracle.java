package org.coilwright.sweep;

import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.coilwright.netlist.Netlist;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Terminal;
import org.coilwright.netlist.Wire;
import org.coilwright.sweep.Element.Link;
import org.coilwright.sweep.Element.Output;

/** What is wrong with what is joined to what, whatever flows. */
final class StructureOracle {
  private final Wiring wiring;
  private final List<Moment> moments;
  private final Set<Danger> dangers;

  private StructureOracle(Wiring wiring, List<Moment> moments, Set<Danger> dangers) {
    this.wiring = wiring;
    this.moments = moments;
    this.dangers = dangers;
  }

  static void look(Wiring wiring, List<Moment> moments, Set<Danger> dangers) {
    StructureOracle oracle = new StructureOracle(wiring, moments, dangers);
    oracle.reserved();
    oracle.separation();
    if (wiring.mains.isPresent()) {
      oracle.earths(wiring.mains.get());
    }
  }

  private void add(Hazard hazard, String subject) {
    dangers.add(new Danger(hazard, subject));
  }

  private void reserved() {
    for (Part part : wiring.netlist.parts().values()) {
      if (part instanceof Part.Controller controller) {
        for (String pin : controller.reserved().keySet()) {
          if (wiring.isWired(new Terminal(part.name(), pin))) {
            add(Hazard.RESERVED_PIN, part.name());
          }
        }
      }
    }
  }

  /** What conducts at all: closed contacts, devices, coils, loads, diodes. */
  private Joined<Integer> circuits(Moment moment) {
    Joined<Integer> circuits = moment.groups(wiring.links);
    wiring.uses.forEach(u -> circuits.join(u.a(), u.b()));
    wiring.valves.forEach(v -> circuits.join(v.a(), v.b()));
    wiring.outputs.forEach(o -> circuits.join(o.a(), o.b()));
    return circuits;
  }

  private void separation() {
    for (Moment moment : moments) {
      Joined<Integer> circuits = circuits(moment);
      for (Output output : lowOutputs()) {
        if (onMains(circuits, output.a())) {
          add(Hazard.MAINS_ON_ELV, "");
        }
      }
    }
    for (Output output : lowOutputs()) {
      if (output.volts() > 130) {
        add(Hazard.ELV_TOO_HIGH, output.part());
      }
    }
    sharedDevices();
    relays();
  }

  private Set<Output> lowOutputs() {
    Set<Output> low = new HashSet<>();
    for (Output output : wiring.outputs) {
      Part part = wiring.netlist.parts().get(output.part());
      Optional<Part.DcOutput> written =
          part instanceof Part.Controller c
              ? c.auxSupply()
              : part instanceof Part.DcSupply s ? Optional.of(s.output()) : Optional.empty();
      boolean isolated =
          written
              .flatMap(Part.DcOutput::isolation)
              .map(i -> i.value() != Part.Isolation.NONE)
              .orElse(false);
      if (isolated) {
        low.add(output);
      }
    }
    return low;
  }

  private boolean onMains(Joined<Integer> circuits, int net) {
    return wiring.lines.keySet().stream().anyMatch(l -> circuits.same(net, wiring.nets.of(l)))
        || wiring.mains.map(m -> circuits.same(net, wiring.net(m, "N"))).orElse(false);
  }

  /** Everything joined in some position, taken together. */
  private Joined<Integer> ever() {
    Joined<Integer> ever = new Joined<>();
    wiring.uses.forEach(u -> ever.join(u.a(), u.b()));
    wiring.outputs.forEach(o -> ever.join(o.a(), o.b()));
    for (Moment moment : moments) {
      for (Link link : wiring.links) {
        if (moment.isClosed(link)) {
          ever.join(link.a(), link.b());
        }
      }
    }
    return ever;
  }

  private void sharedDevices() {
    Joined<Integer> ever = ever();
    Map<String, Set<String>> sides = new LinkedHashMap<>();
    for (Link link : wiring.links) {
      Part part = wiring.netlist.parts().get(link.part());
      if (part instanceof Part.Relay || dangers.contains(new Danger(Hazard.MAINS_ON_ELV, ""))) {
        continue;
      }
      Set<String> found = sides.computeIfAbsent(link.part(), p -> new HashSet<>());
      if (onMains(ever, link.a()) && onMains(ever, link.b())) {
        found.add("mains");
      }
      for (Output output : lowOutputs()) {
        if (ever.same(link.a(), output.a()) && ever.same(link.b(), output.a())) {
          found.add("low");
        }
      }
    }
    sides.forEach(
        (part, found) -> {
          if (found.size() > 1) {
            add(Hazard.SHARED_DEVICE, part);
          }
        });
  }

  private void relays() {
    Joined<Integer> ever = ever();
    for (Part part : wiring.netlist.parts().values()) {
      if (part instanceof Part.Relay relay) {
        int coil = wiring.net(part.name(), relay.coil().first());
        boolean low = lowOutputs().stream().anyMatch(o -> ever.same(coil, o.a()));
        boolean mains =
            relay.contacts().stream()
                .anyMatch(c -> onMains(ever, wiring.net(part.name(), c.from())));
        if (low && mains && !onMains(ever, coil) && isThin(relay)) {
          add(Hazard.RELAY_INSULATION, part.name());
        }
      }
    }
  }

  private static boolean isThin(Part.Relay relay) {
    return relay
        .insulation()
        .map(
            i ->
                i.coilToContacts()
                        .map(w -> w.value().equals("basic") || w.value().equals("functional"))
                        .orElse(i.test().isEmpty() && i.clearance().isEmpty())
                    || i.test().map(t -> t.value().nominal() < 1000).orElse(false))
        .orElse(true);
  }

  private void earths(String mains) {
    Netlist netlist = wiring.netlist;
    int earth = wiring.net(mains, "PE");
    int neutral = wiring.net(mains, "N");
    for (Part part : netlist.parts().values()) {
      boolean isLoad = part instanceof Part.Heater || part instanceof Part.OtherLoad;
      if (isLoad && part.pins().contains("PE") && isUsed(part)) {
        int pin = wiring.net(part.name(), "PE");
        if (pin != earth) {
          Joined<Integer> all = new Joined<>();
          wiring.links.forEach(l -> all.join(l.a(), l.b()));
          boolean through = all.same(pin, earth) && pin != neutral;
          add(through ? Hazard.EARTH_SWITCHED : Hazard.EARTH_MISSING, part.name());
        }
      }
    }
    boolean combined =
        netlist
            .site()
            .mains()
            .flatMap(m -> m.earthing())
            .map(e -> e.value())
            .orElse("TN-S")
            .startsWith("TN-C");
    if (earth == neutral) {
      if (!combined || !isAtOrigin(mains)) {
        add(Hazard.NEUTRAL_EARTHED, "");
      }
      return;
    }
    for (Moment moment : moments) {
      Joined<Integer> groups = moment.groups(wiring.links);
      if (groups.same(earth, neutral)) {
        add(Hazard.NEUTRAL_EARTHED, "");
      }
    }
  }

  /** True if a wire joins the two at the mains itself. */
  private boolean isAtOrigin(String mains) {
    for (Wire wire : wiring.netlist.wires()) {
      if (wire.from().value().part().equals(mains) && wire.to().value().part().equals(mains)) {
        return true;
      }
    }
    return false;
  }

  private boolean isUsed(Part part) {
    return part.pins().stream().anyMatch(p -> wiring.isWired(new Terminal(part.name(), p)));
  }
}
