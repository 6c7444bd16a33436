package org.coilwright.sweep;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Part.ContactForm;
import org.coilwright.sweep.Element.Link;
import org.coilwright.sweep.Element.Sort;
import org.coilwright.sweep.Element.Use;

/** Every position of the contacts that someone or something outside moves, carried to rest. */
final class Positions {
  private static final double FED_SHARE = 0.6;
  private static final int MOST_ROUNDS = 12;
  private static final int MOST_STATES = 400;

  private final Wiring wiring;
  private final Solver solver;
  private final Set<String> relays = new TreeSet<>();
  private final Set<String> cutOuts = new TreeSet<>();
  private final Set<String> supplies = new TreeSet<>();
  private final Map<State, Moment> solved = new HashMap<>();

  Positions(Wiring wiring) {
    this.wiring = wiring;
    int most = 0;
    for (Part part : wiring.netlist.parts().values()) {
      if (part instanceof Part.Relay) {
        relays.add(part.name());
      } else if (part instanceof Part.Thermal thermal && thermal.isCutOut()) {
        cutOuts.add(part.name());
      }
      for (String pin : part.pins()) {
        most = Math.max(most, wiring.net(part.name(), pin));
      }
    }
    for (Use use : wiring.uses) {
      if (use.sort() == Sort.INPUT) {
        supplies.add(use.part());
      }
      most = Math.max(most, Math.max(use.a(), use.b()));
    }
    solver = new Solver(wiring, most + 1);
  }

  /** All that can be reached: from the mains coming back in any position, one move at a time. */
  List<Moment> all() {
    List<String> actuators = actuators();
    Map<State, Moment> reached = new LinkedHashMap<>();
    Deque<Moment> todo = new ArrayDeque<>();
    for (boolean open : cutOuts.isEmpty() ? List.of(false) : List.of(false, true)) {
      for (int bits = 0; bits < 1 << actuators.size(); bits++) {
        Map<String, Boolean> closed = new LinkedHashMap<>();
        for (int i = 0; i < actuators.size(); i++) {
          closed.put(actuators.get(i), (bits >> i & 1) == 1);
        }
        reach(closed, Set.of(), Set.of(), open, reached, todo);
      }
    }
    while (!todo.isEmpty() && reached.size() < MOST_STATES) {
      Moment from = todo.remove();
      for (String actuator : actuators) {
        Map<String, Boolean> closed = new LinkedHashMap<>(from.closed());
        closed.merge(actuator, true, (was, t) -> !was);
        reach(closed, from.in(), from.fed(), from.cutOutsOpen(), reached, todo);
      }
      if (!cutOuts.isEmpty()) {
        reach(from.closed(), from.in(), from.fed(), !from.cutOutsOpen(), reached, todo);
      }
    }
    return List.copyOf(reached.values());
  }

  private void reach(
      Map<String, Boolean> from,
      Set<String> in,
      Set<String> fed,
      boolean open,
      Map<State, Moment> reached,
      Deque<Moment> todo) {
    Map<String, Boolean> closed = new LinkedHashMap<>(from);
    cutOuts.forEach(c -> closed.put(c, !open));
    Moment moment = settled(closed, in, fed, open);
    if (moment.isShort() && !in.isEmpty()) {
      // one that lasts as long as an armature takes is no position
      moment = settled(closed, Set.of(), fed, open);
    }
    State state = new State(moment.closed(), moment.in(), moment.fed());
    if (reached.putIfAbsent(state, moment) == null && !moment.isShort() && !moment.restless()) {
      todo.add(moment);
    }
  }

  /** A position of everything that moves. */
  private record State(Map<String, Boolean> closed, Set<String> in, Set<String> fed) {}

  /** What is moved from outside, but for cut-outs. */
  private List<String> actuators() {
    Set<String> actuators = new TreeSet<>();
    for (Link link : wiring.links) {
      if (!link.actuator().isEmpty() && !relays.contains(link.actuator())) {
        actuators.add(link.actuator());
      }
    }
    actuators.removeAll(cutOuts);
    return List.copyOf(actuators);
  }

  static boolean isClosed(Link link, Map<String, Boolean> closed, Set<String> in, Set<String> fed) {
    if (link.actuator().isEmpty()) {
      return true;
    }
    Boolean set = closed.get(link.actuator());
    if (set == null) {
      return in.contains(link.actuator()) == (link.form() == ContactForm.NO);
    }
    if (link.actuator().indexOf('.') > 0 && !fed.contains(link.part())) {
      return link.form() == ContactForm.NC;
    }
    return set;
  }

  private Moment settled(
      Map<String, Boolean> closed, Set<String> pulled, Set<String> live, boolean open) {
    Set<String> in = pulled;
    Set<String> fed = new HashSet<>(live);
    wiring.netlist.parts().values().stream()
        .filter(p -> !supplies.contains(p.name()))
        .forEach(p -> fed.add(p.name()));
    for (int round = 0; ; round++) {
      Moment moment = at(closed, in, Set.copyOf(fed), open, round >= MOST_ROUNDS);
      if (moment.isShort()) {
        return moment;
      }
      Set<String> nextIn = new TreeSet<>();
      Set<String> nextFed = new HashSet<>(fed);
      for (Use use : wiring.uses) {
        if (use.sort() == Sort.COIL && pullsIn(moment, use, in.contains(use.part()))) {
          nextIn.add(use.part());
        } else if (use.sort() == Sort.INPUT) {
          nextFed.remove(use.part());
          if (moment.acVolts(use.a(), use.b()) > FED_SHARE * inputVolts(use)) {
            nextFed.add(use.part());
          }
        }
      }
      if (round >= MOST_ROUNDS || (nextIn.equals(in) && nextFed.equals(fed))) {
        return moment;
      }
      in = nextIn;
      fed.clear();
      fed.addAll(nextFed);
    }
  }

  /** What a supply or controller asks for at its mains pins. */
  double inputVolts(Use use) {
    Part part = wiring.netlist.parts().get(use.part());
    if (part instanceof Part.DcSupply supply) {
      return supply.input().map(m -> Plain.nominal(m.voltage(), wiring.lineVolts)).orElse(1.0);
    }
    if (part instanceof Part.Controller controller) {
      return controller.mains().map(m -> Plain.nominal(m.voltage(), wiring.lineVolts)).orElse(1.0);
    }
    return wiring.lineVolts;
  }

  /** True if something is fed through something else: what it then does only its maker knows. */
  boolean isUnsure(Moment moment) {
    for (Use use : wiring.uses) {
      double share = moment.acVolts(use.a(), use.b()) / inputVolts(use);
      if (use.sort() == Sort.INPUT && share > 0.05 && share < 0.8) {
        return true;
      }
    }
    return false;
  }

  private boolean pullsIn(Moment moment, Use use, boolean isIn) {
    if (!(wiring.netlist.parts().get(use.part()) instanceof Part.Relay relay)) {
      return false;
    }
    double rated = Plain.nominal(relay.coil().voltage());
    double pull = relay.coil().range().map(r -> r.value().low()).orElse(0.8);
    double hold = relay.coil().release().map(r -> r.value().nominal()).orElse(0.1);
    double volts =
        Math.max(Math.abs(moment.dcVolts(use.a(), use.b())), moment.acVolts(use.a(), use.b()));
    return volts >= rated * (isIn ? Math.min(pull, hold * 1.5) : pull * 0.9);
  }

  private Moment at(
      Map<String, Boolean> closed, Set<String> in, Set<String> fed, boolean open, boolean never) {
    if (never) {
      return solver.solved(closed, in, fed, open, true);
    }
    State state = new State(closed, in, fed);
    Moment known = solved.get(state);
    if (known == null) {
      known = solver.solved(closed, in, fed, open, false);
      solved.put(state, known);
    }
    return known;
  }
}
