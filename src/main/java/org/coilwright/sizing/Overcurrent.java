package org.coilwright.sizing;

import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.coilwright.circuit.Actuator;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Circuit;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Site;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Quantity;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/** Fuses and circuit-breakers; a residual-current device without their release is none. */
public final class Overcurrent {
  private Overcurrent() {}

  /** The device that a contact is a pole of, if it opens on overcurrent. */
  public static Optional<Part> device(Circuit circuit, Branch branch) {
    if (!(branch instanceof Branch.Contact contact)
        || contact.actuator().kind() != Actuator.Kind.PROTECTIVE
        || contact.neutralPole()) {
      return Optional.empty();
    }
    return Optional.ofNullable(circuit.netlist().parts().get(contact.part()))
        .filter(
            part ->
                part instanceof Part.Fuse
                    || (part instanceof Part.Protective breaker && !breaker.isRcd()));
  }

  /** Its rating as written. */
  public static Optional<Written<Quantity>> written(Part device) {
    return device instanceof Part.Fuse fuse
        ? fuse.rating()
        : device instanceof Part.Protective breaker ? breaker.rating() : Optional.empty();
  }

  /** Its rating, A. */
  public static OptionalDouble rating(Part device) {
    return written(device).stream().mapToDouble(w -> w.value().nominal()).findFirst();
  }

  /** How many times its rating surely opens it within the conventional time. */
  public static Optional<Cited<Double>> surelyOpensAt(
      Part device, Site.Practice practice, Tables tables) {
    return tables.lookup("overload-device", Map.of("device", row(device, practice, tables)), "i2");
  }

  /** How many times its rating it surely carries without opening. */
  public static Optional<Cited<Double>> surelyHolds(
      Part device, Site.Practice practice, Tables tables) {
    return tables.lookup("overload-device", Map.of("device", row(device, practice, tables)), "i1");
  }

  private static String row(Part device, Site.Practice practice, Tables tables) {
    if (device instanceof Part.Protective breaker) {
      return switch (new OpeningTimes(practice, tables).standard(breaker)) {
        case "IEC 60947-2" -> "breaker-60947-2";
        case "UL 489" -> "breaker-489";
        default -> "breaker-60898";
      };
    }
    double rating = rating(device).orElse(0);
    return rating <= 4
        ? "fuse-gg-up-to-4"
        : rating < 16 ? "fuse-gg-4-to-16" : "fuse-gg-16-and-more";
  }
}
