package org.coilwright.rules;

import java.util.Map;
import java.util.Optional;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Rating;

/**
 * What a relay or contactor is made for, by the least of what it states.
 *
 * @param category such as {@code AC-1} or {@code mechanical}
 * @param written operations and the current they hold at
 */
public record ContactLife(String category, Written<Rating> written) {

  /** The least of what the part states; empty if it states nothing. */
  public static Optional<ContactLife> of(Part.Relay relay) {
    Optional<ContactLife> least = Optional.empty();
    for (Map.Entry<String, Written<Rating>> entry : relay.life().entrySet()) {
      ContactLife life = new ContactLife(entry.getKey(), entry.getValue());
      if (least.isEmpty() || life.operations() < least.get().operations()) {
        least = Optional.of(life);
      }
    }
    return least;
  }

  /** How often it may operate. */
  public double operations() {
    return written.value().amount().nominal();
  }

  /** What the figure holds for: {@code AC-1 at 16 A}. */
  public String words() {
    String at = written.value().at().map(q -> " at " + Printed.amps(q.nominal())).orElse("");
    return category + at;
  }
}
