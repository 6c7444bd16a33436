package org.coilwright.sweep;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.coilwright.netlist.Intent;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Terminal;
import org.coilwright.netlist.Written;
import org.coilwright.sweep.Element.Sort;
import org.coilwright.sweep.Element.Use;

/** What is wrong with how loads are fed, switched and limited. */
final class LoadOracle {
  static final double ON = 0.5;
  static final double OFF = 0.05;
  private static final double LEAST = 0.75;
  private static final double MOST = 1.4;

  private final Wiring wiring;
  private final List<Moment> moments;
  private final Set<Danger> dangers;

  LoadOracle(Wiring wiring, List<Moment> moments, Set<Danger> dangers) {
    this.wiring = wiring;
    this.moments = moments;
    this.dangers = dangers;
  }

  void look() {
    for (Part part : wiring.netlist.parts().values()) {
      boolean isLoad = part instanceof Part.Heater || part instanceof Part.OtherLoad;
      if (isLoad && rated(part) > 0) {
        voltage(part);
        intent(part);
        protection(part);
        if (part instanceof Part.Heater heater) {
          new LimitOracle(wiring, moments, dangers, this).look(heater);
        }
      }
    }
    if (moments.stream().anyMatch(m -> m.earthAmps() > 0.005) && !isAllAtOrigin()) {
      add(Hazard.EARTH_CARRIES, "");
    }
  }

  /**
   * True if what flows in the earth terminal is the neutral: joined to it by wires, which is told
   * as such, or taken from it where the two part.
   */
  private boolean isAllAtOrigin() {
    boolean combined =
        wiring
            .netlist
            .site()
            .mains()
            .flatMap(m -> m.earthing())
            .map(Written::value)
            .orElse("TN-S")
            .startsWith("TN-C");
    int earth = wiring.mains.map(m -> wiring.net(m, "PE")).orElse(-1);
    int neutral = wiring.mains.map(m -> wiring.net(m, "N")).orElse(-1);
    if (earth == neutral) {
      return true;
    }
    return combined && wiring.uses.stream().noneMatch(u -> u.a() == earth || u.b() == earth);
  }

  private void add(Hazard hazard, String subject) {
    dangers.add(new Danger(hazard, subject));
  }

  private static double rated(Part part) {
    if (part instanceof Part.Heater heater) {
      return heater.voltage().isPresent() ? Plain.nominal(heater.power(), 0) : 0;
    }
    return part instanceof Part.OtherLoad load && load.voltage().isPresent()
        ? Plain.nominal(load.power(), 0)
        : 0;
  }

  double share(Part part, Moment moment) {
    double watts = 0;
    for (Use use : elements(part)) {
      watts += moment.acWatts(use);
      double direct = moment.dcVolts(use.a(), use.b());
      watts += direct * direct / use.ohms();
    }
    return watts / rated(part);
  }

  private List<Use> elements(Part part) {
    return wiring.uses.stream()
        .filter(u -> u.sort() == Sort.LOAD && u.part().equals(part.name()))
        .toList();
  }

  /** Nets of the pins that want a line or the neutral. */
  List<Integer> pins(Part part) {
    List<Integer> pins = new ArrayList<>();
    for (String pin : List.of("1", "2", "3")) {
      if (part.pins().contains(pin)) {
        pins.add(wiring.net(part.name(), pin));
      }
    }
    return pins;
  }

  Set<Terminal> linesAt(Joined<Integer> groups, int net) {
    Set<Terminal> lines = new HashSet<>();
    for (Terminal line : wiring.lines.keySet()) {
      if (groups.same(net, wiring.nets.of(line))) {
        lines.add(line);
      }
    }
    return lines;
  }

  private void voltage(Part part) {
    for (Moment moment : moments) {
      if (moment.cutOutsOpen() || !isWanted(part, moment)) {
        continue;
      }
      double share = share(part, moment);
      Joined<Integer> groups = moment.groups(wiring.links);
      List<Integer> pins = pins(part);
      List<Set<Terminal>> lines = pins.stream().map(p -> linesAt(groups, p)).toList();
      if (share > OFF && (share < LEAST || share > MOST)) {
        boolean missing = pins.size() == 3 && lines.stream().anyMatch(Set::isEmpty);
        add(missing ? Hazard.LINE_MISSING : Hazard.WRONG_VOLTAGE, part.name());
      }
      boolean repeated = new HashSet<>(lines).size() < lines.size();
      if (pins.size() == 3 && share > OFF && repeated && lines.stream().noneMatch(Set::isEmpty)) {
        add(Hazard.LINE_REPEATED, part.name());
      }
      if (share > OFF && part.pins().contains("N")) {
        int neutral = wiring.net(part.name(), "N");
        boolean there =
            wiring.mains.map(m -> groups.same(neutral, wiring.net(m, "N"))).orElse(false);
        if (!there) {
          add(Hazard.NEUTRAL_MISSING, part.name());
        }
      }
    }
  }

  private Optional<Intent> intentOf(Part part) {
    return Optional.ofNullable(wiring.netlist.intent().get(part.name())).map(Written::value);
  }

  /** True unless the intent says off. */
  private boolean isWanted(Part part, Moment moment) {
    return intentOf(part)
        .map(i -> i.holds(n -> moment.closed().getOrDefault(n, true)))
        .orElse(true);
  }

  private void intent(Part part) {
    Optional<Intent> intent = intentOf(part);
    if (intent.isEmpty()) {
      if (moments.stream().allMatch(m -> share(part, m) < OFF)) {
        add(Hazard.LOAD_DEAD, part.name());
      }
      return;
    }
    for (Moment moment : moments) {
      if (moment.cutOutsOpen() || !unnamedAreClosed(moment, intent.get())) {
        continue;
      }
      boolean wanted = isWanted(part, moment);
      double share = share(part, moment);
      if (wanted && share < OFF) {
        add(Hazard.OFF_WHEN_ON, part.name());
      } else if (!wanted && share > OFF) {
        add(Hazard.ON_WHEN_OFF, part.name());
      } else if (!wanted && share < OFF && limitsClosed(moment)) {
        leftOn(part, moment);
      }
    }
  }

  private void leftOn(Part part, Moment moment) {
    Joined<Integer> groups = moment.groups(wiring.links);
    long live = pins(part).stream().filter(p -> !linesAt(groups, p).isEmpty()).count();
    if (live > 0) {
      boolean single = pins(part).size() == 2 && wiring.lines.size() != 2;
      add(single ? Hazard.NEUTRAL_ONLY : Hazard.LINE_LEFT_ON, part.name());
    }
  }

  /** Thermostats that the intent does not name count as closed. */
  private boolean unnamedAreClosed(Moment moment, Intent intent) {
    return moment.closed().entrySet().stream()
        .allMatch(e -> e.getValue() || intent.names().contains(e.getKey()) || !isLimit(e.getKey()));
  }

  private boolean limitsClosed(Moment moment) {
    return moment.closed().entrySet().stream().allMatch(e -> e.getValue() || !isLimit(e.getKey()));
  }

  boolean isLimit(String name) {
    return wiring.netlist.parts().get(name) instanceof Part.Thermal;
  }

  private void protection(Part part) {
    for (Moment moment : moments) {
      Joined<Integer> groups =
          moment.groups(wiring.links.stream().filter(l -> !l.guard()).toList());
      if (share(part, moment) > OFF
          && pins(part).stream().anyMatch(p -> !linesAt(groups, p).isEmpty())) {
        add(Hazard.UNPROTECTED, part.name());
      }
    }
  }
}
