package org.coilwright.solve;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Source;
import org.coilwright.circuit.Circuit.Island;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Part;
import org.coilwright.ngspice.Deck;

/**
 * An island in one state as a deck, with what our solver says about its nodes. Values of the
 * elements are those of the solver; how they are joined comes from the circuit, source by source
 * and branch by branch, so that zones, chains, eliminations, diodes and limits are all put to the
 * test.
 */
final class SpiceDeck {
  private final Study study;
  private final State state;
  private final Island island;
  private final Corner corner;
  private final boolean direct;
  private final double hertz;
  private final List<Node> nodes;
  private final List<String> lines = new ArrayList<>();

  /** Varistors that conduct. */
  int clamping;

  /** Expected answers: expression to volts. */
  final Map<String, Double> expected = new LinkedHashMap<>();

  SpiceDeck(Study study, State state, Island island, Corner corner, boolean direct) {
    this.study = study;
    this.state = state;
    this.island = island;
    this.corner = corner;
    this.direct = direct;
    this.hertz =
        study
            .circuit()
            .netlist()
            .site()
            .mains()
            .flatMap(m -> m.frequency())
            .map(f -> f.value().nominal())
            .orElse(50.0);
    this.nodes = List.copyOf(island.nodes());
    Node reference = island.sources().get(0).from();
    lines.add(".options rshunt=1e12");
    lines.add(".model ideal d(is=1e-12 n=0.005)");
    for (Source source : island.sources()) {
      source(source);
    }
    for (Branch branch : island.branches()) {
      here(branch).ifPresent(here -> branch(here, branch));
    }
    Map<Node, double[]> volts = volts();
    double[] zero = volts.getOrDefault(reference, new double[2]);
    volts.forEach(
        (node, v) -> {
          if (!node.equals(reference) && isTold(node)) {
            if (direct) {
              expected.put("v(" + name(node) + ")", v[0] - zero[0]);
            } else {
              expected.put("real(v(" + name(node) + "))", v[0] - zero[0]);
              expected.put("imag(v(" + name(node) + "))", v[1] - zero[1]);
            }
          }
        });
  }

  Deck deck(String name, List<String> asked) {
    return direct
        ? Deck.operatingPoint(name, lines, asked)
        : Deck.alternating(name, lines, hertz, asked);
  }

  private Situation situation(Zone zone) {
    return study.lookup().situation(zone, state);
  }

  private String name(Node node) {
    return node.equals(island.sources().get(0).from()) ? "0" : "n" + nodes.indexOf(node);
  }

  private Map<Node, double[]> volts() {
    Map<Node, double[]> volts = new LinkedHashMap<>();
    for (Branch branch : island.branches()) {
      here(branch)
          .ifPresent(
              here -> {
                Network.Flow flow = flow(here);
                for (Node node : List.of(branch.from(), branch.to())) {
                  int n = here.zone.indexOf(node);
                  volts.put(node, new double[] {flow.vRe[n], flow.vIm[n]});
                }
              });
    }
    return volts;
  }

  /** A branch's zone with all that hangs on the same feed; none for a source that is held. */
  private Optional<ZoneInState> here(Branch branch) {
    return study.model().grid.zoneOf(branch).map(zone -> study.lookup().at(zone, state));
  }

  private Network.Flow flow(ZoneInState here) {
    ZoneFlow flow = here.flow(corner);
    return direct ? flow.direct() : flow.alternating();
  }

  private boolean isTold(Node node) {
    return island.branches().stream()
        .filter(b -> b.from().equals(node) || b.to().equals(node))
        .flatMap(b -> here(b).stream())
        .allMatch(here -> flow(here).grounded[here.zone.indexOf(node)]);
  }

  private void source(Source source) {
    String id = "s" + lines.size();
    Zone zone =
        study.model().grid.zones.stream()
            .filter(z -> z.island.number() == island.number())
            .findFirst()
            .orElseThrow();
    Situation situation =
        study.model().grid.zones.stream()
            .filter(z -> z.sources().contains(source))
            .findFirst()
            .map(this::situation)
            .orElseGet(() -> situation(zone));
    Settings settings = situation.settings(corner);
    boolean on = settings.isLive(source) && source.isDirect() == direct;
    double share = situation.share(source, corner);
    double limit = source.limitAmps().orElse(Double.POSITIVE_INFINITY);
    boolean atLimit = Math.abs(situation.amps(source, corner)[0] - limit) < 1e-6 * limit;
    if (on && share < 1 && atLimit) {
      lines.add(
          "I%s %s %s DC %s"
              .formatted(id, name(source.from()), name(source.to()), Deck.number(limit)));
      return;
    }
    double re = on ? settings.re(source, corner) : 0;
    double im = on ? settings.im(source, corner) : 0;
    String value =
        direct
            ? "DC " + Deck.number(re)
            : "AC "
                + Deck.number(Math.hypot(re, im))
                + " "
                + Deck.number(Math.toDegrees(Math.atan2(im, re)));
    lines.add("V%s %s %s %s".formatted(id, name(source.to()), name(source.from()), value));
  }

  private void branch(ZoneInState here, Branch branch) {
    Zone zone = here.zone;
    Settings settings = situation(study.model().grid.zoneOf(branch).orElseThrow()).settings(corner);
    for (Element element : zone.elements) {
      if (!element.branch().equals(branch) || element.kind() == Element.Kind.SOURCE) {
        continue;
      }
      boolean[] grounded = flow(here).grounded;
      if (!grounded[element.from()] || !grounded[element.to()]) {
        continue;
      }
      String from = name(zone.nodes.get(element.from()));
      String to = name(zone.nodes.get(element.to()));
      String id = lines.size() + "e";
      if (element.kind() == Element.Kind.DIODE) {
        if (direct) {
          lines.add("D%s %s m%s ideal".formatted(id, from, id));
          lines.add("V%s m%s %s DC 0.697".formatted(id, id, to));
        }
        continue;
      }
      if (direct
          && element.branch() instanceof Branch.Passive passive
          && passive.spec() instanceof Part.Varistor varistor) {
        double clamp = varistor.clampingVoltage().orElseThrow().value().nominal();
        if (Math.abs(flow(here).iRe[element.number()]) > 1e-6) {
          clamping++;
        }
        String volts = "v(%s,%s)".formatted(from, to);
        lines.add(
            "B%s %s %s I=1e4*(max(%s-%s,0)-max(-%s-%s,0))"
                .formatted(id, from, to, volts, Deck.number(clamp), volts, Deck.number(clamp)));
        continue;
      }
      boolean is = element.variable() >= 0 && settings.is(element.variable());
      if (element.kind() == Element.Kind.CONTACT) {
        is = here.flow(corner).conducts().get(element.number());
      }
      Optional<Impedance> z =
          element.values(is).at(corner.of(element.kind()), direct, corner.pulling());
      z.ifPresent(i -> impedance(id, from, to, i));
    }
  }

  private void impedance(String id, String from, String to, Impedance z) {
    double turn = 2 * Math.PI * hertz;
    if (z.im() == 0) {
      lines.add("R%s %s %s %s".formatted(id, from, to, Deck.number(z.re())));
      return;
    }
    lines.add("R%s %s m%s %s".formatted(id, from, id, Deck.number(Math.max(z.re(), 1e-9))));
    lines.add(
        z.im() > 0
            ? "L%s m%s %s %s".formatted(id, id, to, Deck.number(z.im() / turn))
            : "C%s m%s %s %s".formatted(id, id, to, Deck.number(-1 / (turn * z.im()))));
  }
}
