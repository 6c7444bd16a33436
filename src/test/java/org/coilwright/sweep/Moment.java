package org.coilwright.sweep;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.coilwright.netlist.Terminal;
import org.coilwright.sweep.Element.Link;
import org.coilwright.sweep.Element.Output;
import org.coilwright.sweep.Element.Use;
import org.coilwright.sweep.Element.Valve;

/**
 * A circuit at rest with its contacts in one position.
 *
 * @param closed the actuators that someone operates, such as {@code U1.heat}, and whether their
 *     contacts are closed
 * @param in the relays that are pulled in
 * @param fed the supplies and controllers that have mains
 * @param volts of each net
 * @param conducting the diodes that conduct
 * @param cutOutsOpen true if every cut-out is open
 */
record Moment(
    Wiring wiring,
    Map<String, Boolean> closed,
    Set<String> in,
    Set<String> fed,
    Volts volts,
    Set<Valve> conducting,
    boolean cutOutsOpen,
    boolean restless) {
  static final double LINK_OHMS = 0.001;
  static final double SOURCE_OHMS = 0.0005;
  static final double OUTPUT_OHMS = 0.05;

  private static final double SHORT_ON_MAINS = 5000;
  private static final double SHORT_ON_OUTPUT = 20;

  /** The voltages of all nets against earth. */
  static final class Volts {
    private final double[][] ac;
    private final double[] dc;

    /**
     * Voltages by net.
     *
     * @param ac alternating: real and imaginary part
     * @param dc direct
     */
    Volts(double[][] ac, double[] dc) {
      this.ac = ac;
      this.dc = dc;
    }
  }

  /** Real ({@code part} 0) or imaginary part of a net's alternating volts. */
  double ac(int part, int net) {
    return volts.ac[part][net];
  }

  double acVolts(int a, int b) {
    return Math.hypot(ac(0, a) - ac(0, b), ac(1, a) - ac(1, b));
  }

  double dcVolts(int a, int b) {
    return volts.dc[a] - volts.dc[b];
  }

  boolean isClosed(Link link) {
    return Positions.isClosed(link, closed, in, fed);
  }

  /** Real and imaginary part of the alternating current from {@code a} to {@code b}. */
  double[] acAmps(Link link) {
    if (!isClosed(link)) {
      return new double[] {0, 0};
    }
    return new double[] {
      (ac(0, link.a()) - ac(0, link.b())) / LINK_OHMS,
      (ac(1, link.a()) - ac(1, link.b())) / LINK_OHMS
    };
  }

  double dcAmps(Link link) {
    return isClosed(link) ? dcVolts(link.a(), link.b()) / LINK_OHMS : 0;
  }

  double acWatts(Use use) {
    double volts = acVolts(use.a(), use.b());
    return volts * volts / use.ohms();
  }

  /** Direct amperes that an output gives. */
  double amps(Output output) {
    double volts = !output.fed() || fed.contains(output.part()) ? output.volts() : 0;
    return (volts - dcVolts(output.a(), output.b())) / OUTPUT_OHMS;
  }

  /** Amperes in the protective conductor at the origin. */
  double earthAmps() {
    return wiring
        .mains
        .map(m -> Math.hypot(ac(0, wiring.net(m, "PE")), ac(1, wiring.net(m, "PE"))) / SOURCE_OHMS)
        .orElse(0.0);
  }

  /** True if a source feeds next to no resistance. */
  boolean isShort() {
    for (Map.Entry<Terminal, Double> line : wiring.lines.entrySet()) {
      int net = wiring.nets.of(line.getKey());
      double angle = Math.toRadians(line.getValue());
      double real = wiring.lineVolts * Math.cos(angle) - ac(0, net);
      double imaginary = wiring.lineVolts * Math.sin(angle) - ac(1, net);
      if (Math.hypot(real, imaginary) / SOURCE_OHMS > SHORT_ON_MAINS) {
        return true;
      }
    }
    return wiring.outputs.stream().anyMatch(o -> Math.abs(amps(o)) > SHORT_ON_OUTPUT);
  }

  /** Nets that are one through wires and whatever links {@code through} takes in. */
  Joined<Integer> groups(List<Link> through) {
    Joined<Integer> groups = new Joined<>();
    for (Link link : through) {
      if (isClosed(link)) {
        groups.join(link.a(), link.b());
      }
    }
    return groups;
  }
}
