package org.coilwright.sweep;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Part.CoilSpec;
import org.coilwright.netlist.Terminal;
import org.coilwright.netlist.Written;
import org.coilwright.sweep.Element.Sort;
import org.coilwright.sweep.Element.Use;
import org.coilwright.sweep.Element.Valve;

/** What is wrong with coils and with what lies across them. */
final class CoilOracle {
  private final Wiring wiring;
  private final List<Moment> moments;
  private final Set<Danger> dangers;

  CoilOracle(Wiring wiring, List<Moment> moments, Set<Danger> dangers) {
    this.wiring = wiring;
    this.moments = moments;
    this.dangers = dangers;
  }

  /**
   * Looks at every coil.
   *
   * @param whole true if there is no other position
   */
  void look(boolean whole) {
    for (Use use : wiring.uses) {
      if (use.sort() == Sort.COIL
          && wiring.netlist.parts().get(use.part()) instanceof Part.Relay relay
          && isUsed(relay)) {
        coil(relay, use, whole);
      }
    }
    for (Moment moment : moments) {
      for (Valve valve : wiring.valves) {
        if (!isBuiltIn(valve) && moment.acVolts(valve.a(), valve.b()) > 5) {
          add(Hazard.DIODE_ON_AC, valve.part());
        }
      }
    }
    latches();
  }

  /** A diode inside a coil is no part of its own: what it suffers is told of the coil. */
  private boolean isBuiltIn(Valve valve) {
    return !(wiring.netlist.parts().get(valve.part()) instanceof Part.Diode);
  }

  private void add(Hazard hazard, String subject) {
    dangers.add(new Danger(hazard, subject));
  }

  private boolean isUsed(Part part) {
    return part.pins().stream().anyMatch(p -> wiring.isWired(new Terminal(part.name(), p)));
  }

  private void coil(Part.Relay relay, Use use, boolean whole) {
    CoilSpec coil = relay.coil();
    double rated = Plain.nominal(coil.voltage());
    double pull = coil.range().map(r -> r.value().low()).orElse(0.8);
    double release = coil.release().map(r -> r.value().nominal()).orElse(0.15);
    boolean direct = Plain.isDirect(coil.voltage());
    int in = 0;
    for (Moment moment : moments) {
      in += moment.in().contains(relay.name()) ? 1 : 0;
      double dc = moment.dcVolts(use.a(), use.b());
      double ac = moment.acVolts(use.a(), use.b());
      double right = direct ? Math.abs(dc) : ac;
      double wrong = direct ? ac : Math.abs(dc);
      if (wrong > 0.3 * rated || wrong > 12) {
        add(Hazard.COIL_KIND, relay.name());
      }
      if (right > 1.2 * rated) {
        add(Hazard.COIL_OVER, relay.name());
      }
      if (right < 0.85 * pull * rated && right > (release + 0.1) * rated) {
        add(Hazard.COIL_HALF, relay.name());
      }
      String polarity = coil.polarity().map(Written::value).orElse("none");
      if (direct && !polarity.equals("none") && isBackwards(coil, polarity, dc, rated)) {
        add(Hazard.COIL_REVERSED, relay.name());
      }
    }
    if (whole && in == 0) {
      add(Hazard.COIL_NEVER, relay.name());
    } else if (whole && in == moments.size()) {
      add(Hazard.COIL_ALWAYS, relay.name());
    }
    if (direct) {
      conducting(use);
    }
    if (direct && in > 0 && in < moments.size()) {
      suppression(relay.name(), coil, use);
    }
  }

  private static boolean isBackwards(CoilSpec coil, String polarity, double dc, double rated) {
    boolean firstIsPlus = polarity.startsWith(coil.first()) == polarity.endsWith("plus");
    return (firstIsPlus ? dc : -dc) < -0.3 * rated;
  }

  private void suppression(String relay, CoilSpec coil, Use use) {
    boolean builtIn = coil.suppression().map(s -> !s.value().equals("none")).orElse(false);
    boolean across =
        wiring.valves.stream()
            .anyMatch(
                v ->
                    (v.a() == use.a() && v.b() == use.b())
                        || (v.a() == use.b() && v.b() == use.a()));
    Optional<Part> other =
        wiring.netlist.parts().values().stream()
            .filter(p -> p instanceof Part.Varistor || p instanceof Part.Snubber)
            .filter(
                p ->
                    Set.of(wiring.net(p.name(), "1"), wiring.net(p.name(), "2"))
                        .equals(Set.of(use.a(), use.b())))
            .findFirst();
    if (!builtIn && !across && other.isEmpty()) {
      add(Hazard.SUPPRESSION_MISSING, relay);
    }
  }

  /** A diode across a coil that conducts while the coil should be on. */
  private void conducting(Use use) {
    for (Moment moment : moments) {
      for (Valve valve : wiring.valves) {
        boolean shunts = List.of(use.a(), use.b()).containsAll(List.of(valve.a(), valve.b()));
        if (shunts && !isBuiltIn(valve) && moment.conducting().contains(valve)) {
          add(Hazard.DIODE_CONDUCTS, valve.part());
        }
      }
    }
  }

  /** Two rests in one position. */
  private void latches() {
    for (Moment one : moments) {
      for (Moment other : moments) {
        if (one.closed().equals(other.closed())) {
          for (String relay : one.in()) {
            if (!other.in().contains(relay)) {
              add(Hazard.LATCHING, relay);
            }
          }
        }
      }
    }
  }
}
