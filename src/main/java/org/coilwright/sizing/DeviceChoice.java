package org.coilwright.sizing;

import java.util.Map;
import java.util.Optional;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.table.Cited;

/** The device before a contactor and what drives its coil. */
final class DeviceChoice extends Working {
  private final Question q;

  DeviceChoice(Working begun, Question q) {
    super(begun);
    this.q = q;
  }

  Optional<Cited<Double>> device(Optional<Double> contactor) {
    Optional<Cited<Double>> device;
    String how;
    if (q.nec()) {
      Cited<Double> continuous = tables.figure("sizing.continuous-load");
      double needs = q.nominal() * continuous.value();
      cited.add(continuous);
      device = Series.atLeast(needs, tables);
      how = "%s × %s = %s".formatted(amps(q.nominal()), plain(continuous.value()), amps(needs));
      Cited<Double> from = tables.figure("sizing.appliance-device-from");
      if (q.appliance() && q.nominal() > from.value()) {
        Cited<Double> share = tables.figure("sizing.appliance-device");
        double most = q.nominal() * share.value();
        cited.add(share);
        how +=
            Series.atLeast(most, tables)
                .map(
                    r ->
                        "; at most %s (next above %s × %s = %s)"
                            .formatted(
                                amps(r.value()),
                                amps(q.nominal()),
                                plain(share.value()),
                                amps(most)))
                .orElse("");
      }
    } else {
      Cited<Double> holds =
          tables.lookup("overload-device", Map.of("device", "breaker-60898"), "i1").orElseThrow();
      cited.add(holds);
      device =
          Series.next("breaker-ratings", Math.max(q.nominal(), q.worst() / holds.value()), tables);
      how =
          "at least %s, and %s ÷ %s (what does not trip it)"
              .formatted(amps(q.nominal()), amps(q.worst()), plain(holds.value()));
    }
    if (device.isEmpty()) {
      doesNotFit();
      add("breaker", "breaker", "no standard rating is large enough (%s)".formatted(how));
      return device;
    }
    cited.add(device.get());
    String more =
        contactor.filter(c -> device.get().value() > c).isPresent()
            ? "; larger than the contactor, so ask its maker for the back-up it allows"
            : "; its maker's back-up figure must allow it";
    add(
        "breaker",
        "breaker",
        amps(device.get().value()) + " (" + how + ")" + more,
        device.get().value(),
        "A");
    return device;
  }

  void coil(double rating) {
    Optional<Cited<Double>> holding =
        tables.lookup("contactor-ratings", Map.of(), rating, "holding");
    if (holding.isEmpty()) {
      return;
    }
    cited.add(holding.get());
    double volts = q.nec() ? 120 : 230;
    String coil =
        "%s AC, about %s holding (%s)"
            .formatted(
                Printed.volts(volts),
                Printed.of(holding.get().value(), Dimension.APPARENT_POWER),
                amps(holding.get().value() / volts));
    String drive =
        q.output()
            .map(
                o -> {
                  double at = o.at().map(a -> a.nominal()).orElse(0.0);
                  double may = o.amount().nominal();
                  return at >= volts && may >= holding.get().value() / volts
                      ? "; the output, %s at %s, can drive it if its rating is AC-15 and makes the pick-up current"
                          .formatted(amps(may), Printed.volts(at))
                      : "; the output, %s at %s, cannot: an interposing relay is needed"
                          .formatted(amps(may), Printed.volts(at));
                })
            .orElse("; a volt-free output for extra-low voltage needs an interposing relay");
    add("coil", "coil", coil + drive);
  }
}
