package org.coilwright.sweep;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Part.ContactForm;
import org.coilwright.netlist.Written;
import org.coilwright.sweep.Element.Link;

/** What is wrong with the thermostats and cut-outs of a heater. */
final class LimitOracle {
  private static final double BOILING_CLOSED = 115;

  private final Wiring wiring;
  private final List<Moment> moments;
  private final Set<Danger> dangers;
  private final LoadOracle loads;

  LimitOracle(Wiring wiring, List<Moment> moments, Set<Danger> dangers, LoadOracle loads) {
    this.wiring = wiring;
    this.moments = moments;
    this.dangers = dangers;
    this.loads = loads;
  }

  void look(Part.Heater part) {
    boolean vessel = part.vessel().isPresent();
    boolean closed = part.vessel().flatMap(Part.Vessel::closed).map(Written::value).orElse(false);
    Set<String> cutOuts = new LinkedHashSet<>();
    Set<String> thermostats = new LinkedHashSet<>();
    for (Part other : wiring.netlist.parts().values()) {
      if (other instanceof Part.Thermal thermal) {
        (thermal.isCutOut() ? cutOuts : thermostats).add(other.name());
      }
    }
    boolean everOn = moments.stream().anyMatch(m -> loads.share(part, m) > LoadOracle.ON);
    for (Moment moment : moments) {
      boolean hot = moment.cutOutsOpen() || cutOuts.isEmpty();
      Joined<Integer> groups = moment.groups(wiring.links);
      if (hot && (vessel || !cutOuts.isEmpty()) && loads.share(part, moment) > LoadOracle.OFF) {
        add(Hazard.CUT_OUT_BYPASSED, part.name());
      } else if (moment.cutOutsOpen()
          && everOn
          && loads.pins(part).stream().anyMatch(p -> !loads.linesAt(groups, p).isEmpty())) {
        boolean single = loads.pins(part).size() == 2 && wiring.lines.size() != 2;
        if (closed || single) {
          add(single ? Hazard.NEUTRAL_ONLY : Hazard.CUT_OUT_NOT_EVERY_LINE, part.name());
        }
      }
      boolean thermostatsOpen = thermostats.stream().noneMatch(t -> moment.closed().get(t));
      if (vessel && thermostatsOpen && loads.share(part, moment) > LoadOracle.ON) {
        add(Hazard.THERMOSTAT_BYPASSED, part.name());
      }
    }
    for (Link link : wiring.links) {
      if (loads.isLimit(link.actuator()) && link.form() == ContactForm.NO && heatsBy(part, link)) {
        add(Hazard.LIMIT_WRONG_FORM, link.part());
      }
    }
    if (closed) {
      settings(part, thermostats, cutOuts);
    }
  }

  /** True if the load heats in some position with this contact closed, and in none with it open. */
  private boolean heatsBy(Part part, Link link) {
    boolean open = false;
    boolean shut = false;
    for (Moment moment : moments) {
      boolean on = loads.share(part, moment) > LoadOracle.ON;
      boolean isShut = moment.closed().getOrDefault(link.actuator(), false);
      open |= on && !isShut;
      shut |= on && isShut;
    }
    return shut && !open;
  }

  private void settings(Part part, Set<String> thermostats, Set<String> cutOuts) {
    double highest = 0;
    for (String name : thermostats) {
      highest = Math.max(highest, opensAt(name).orElse(0.0));
    }
    for (String name : cutOuts) {
      Part.Thermal cutOut = (Part.Thermal) wiring.netlist.parts().get(name);
      boolean byItself = cutOut.reset().map(r -> r.value().equals("automatic")).orElse(false);
      if (byItself || opensAt(name).orElse(0.0) > BOILING_CLOSED) {
        add(Hazard.CUT_OUT_UNFIT, part.name());
      }
    }
    for (String name : cutOuts) {
      if (highest > opensAt(name).orElse(Double.MAX_VALUE)) {
        add(Hazard.LIMITS_MEET, name);
      }
    }
  }

  private Optional<Double> opensAt(String name) {
    Part.Thermal thermal = (Part.Thermal) wiring.netlist.parts().get(name);
    return thermal.opensAt().map(w -> w.value().nominal());
  }

  private void add(Hazard hazard, String subject) {
    dangers.add(new Danger(hazard, subject));
  }
}
