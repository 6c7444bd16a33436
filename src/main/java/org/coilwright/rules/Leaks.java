package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Branch.Passive;
import org.coilwright.circuit.Branch.Path;
import org.coilwright.circuit.Circuit;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.Part;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Quantity;
import org.coilwright.solve.State;

/** What lets current past the open contacts of a coil's feed. */
final class Leaks {
  private Leaks() {}

  /**
   * One leak.
   *
   * @param label what to say at its place
   * @param cure what to do about it, one sentence
   */
  record Leak(Mark mark, String label, String cure) {}

  /** Leaks past contacts that are open in this state, in the order of the way. */
  static List<Leak> of(CoilFeed feed, State state) {
    Circuit circuit = feed.study().circuit();
    List<Leak> leaks = new ArrayList<>();
    for (Contact contact : feed.switches()) {
      if (feed.study().contact(contact, state).closed()) {
        continue;
      }
      contact
          .spec()
          .flatMap(Part.ContactSpec::leakage)
          .filter(leakage -> leakage.value().high() > 0)
          .ifPresent(
              leakage ->
                  leaks.add(
                      new Leak(
                          leakage.mark(),
                          "leaks up to " + Printed.amps(leakage.value().high()),
                          "Drive %s from an output with a metal contact, or put a resistor across its coil that takes the leakage."
                              .formatted(feed.relay()))));
      for (Passive passive : circuit.branches(Passive.class)) {
        if (CoilWays.acrossTheSame(circuit, passive, contact)) {
          leaks.add(
              new Leak(
                  passive.mark(),
                  "lets current past %s".formatted(contact.id()),
                  "Take %s away from %s; if something must quench the coil, put it across %s and %s."
                      .formatted(
                          passive.part(), contact.id(), feed.coil().from(), feed.coil().to())));
        }
      }
    }
    return leaks;
  }

  /**
   * What leaking contacts leave on a direct-voltage coil if each leaks its whole current whatever
   * the coil resists: more than a leak that is a resistance would, and no less than any other.
   *
   * @return volts; 0 where the coil's resistance is not written or nothing leaks
   */
  static double mostVolts(CoilFeed feed, State state) {
    if (feed.isAlternating() || feed.spec().resistance().isEmpty()) {
      return 0;
    }
    double ohms = feed.spec().resistance().get().value().high();
    double most = 0;
    for (Path way : feed.ways()) {
      double supply =
          CoilFeed.sourcesOf(way).stream()
              .flatMap(source -> source.volts().stream())
              .mapToDouble(Quantity::high)
              .max()
              .orElse(0);
      double amps = supply / ohms;
      for (Branch branch : way.branches()) {
        if (branch instanceof Contact contact && !feed.study().contact(contact, state).closed()) {
          amps = Math.min(amps, leakage(contact));
        }
      }
      most = Math.max(most, amps * ohms);
    }
    return most;
  }

  private static double leakage(Contact contact) {
    return contact
        .spec()
        .flatMap(Part.ContactSpec::leakage)
        .map(leakage -> leakage.value().high())
        .orElse(0.0);
  }
}
