package org.coilwright.rules;

import java.util.Optional;
import org.coilwright.circuit.Branch.Source;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Written;

/**
 * Something about a coil that is not written, or not as it can be, and without which nothing can be
 * said.
 *
 * @param key as the netlist names it
 * @param mark where it would be written
 */
record Gap(String key, Mark mark) {
  /** What the coil's current would follow from, if nothing that gives it is written. */
  static Optional<Gap> ofCurrent(CoilFeed feed) {
    String key = feed.isAlternating() ? "coil.hold of " : "coil.resistance of ";
    return feed.isCurrentKnown()
        ? Optional.empty()
        : Optional.of(new Gap(key + feed.relay(), feed.coil().mark()));
  }

  /** The voltage of a source on the coil's way, if it is not written. */
  static Optional<Gap> ofVoltage(CoilFeed feed) {
    return feed.sources().stream()
        .filter(s -> s.volts().isEmpty())
        .findFirst()
        .map(source -> new Gap(voltageKey(feed, source), source.mark()));
  }

  /** What is wrong with the coil's limits where the solver finds none. */
  static Gap ofLimits(CoilFeed feed) {
    return new Gap(
        "coil.release of " + feed.relay() + " below its pull-in voltage",
        feed.spec().release().map(Written::mark).orElse(feed.coil().mark()));
  }

  /** What the coil draws while it pulls in. */
  static Gap ofPickUp(CoilFeed feed) {
    return new Gap("coil.pick-up of " + feed.relay(), feed.coil().mark());
  }

  private static String voltageKey(CoilFeed feed, Source source) {
    if (!source.isDirect()) {
      return "site.mains.voltage";
    }
    boolean unit =
        feed.study().circuit().netlist().parts().get(source.part()) instanceof Part.DcSupply;
    return (unit ? "output.voltage of " : "aux-supply.voltage of ") + source.part();
  }
}
