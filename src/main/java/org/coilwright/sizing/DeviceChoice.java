package org.coilwright.sizing;

import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
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
    divided();
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

  /** Resistance heating above a limit has to be divided. */
  private void divided() {
    Cited<Double> most = tables.figure("sizing.undivided-element");
    Cited<Double> guard = tables.figure("sizing.undivided-device");
    if (q.nec() && q.nominal() > most.value() * (1 + 1e-9)) {
      cited.add(most);
      cited.add(guard);
      add(
          "divide",
          "divide",
          "%s is above %s: resistance elements of an appliance have to be divided into circuits of at most that, each behind %s at most, unless the vessel is one of the excepted"
              .formatted(amps(q.nominal()), amps(most.value()), amps(guard.value())));
    }
  }

  /** What the coil draws, and whether the given output can drive it. */
  void coil(double rating) {
    Optional<Cited<Double>> usual = tables.lookup("contactor-ratings", Map.of(), rating, "holding");
    if (q.coil().isEmpty() && usual.isEmpty()) {
      return;
    }
    double volts = q.coil().map(Question.Coil::volts).orElse(q.nec() ? 120.0 : 230.0);
    double holding =
        q.coil().map(Question.Coil::holding).orElseGet(() -> usual.orElseThrow().value());
    if (q.coil().isEmpty()) {
      usual.ifPresent(cited::add);
    }
    OptionalDouble given = q.coil().map(Question.Coil::pickUp).orElse(OptionalDouble.empty());
    Cited<Double> multiple = tables.figure("coil.pick-up-multiple");
    if (given.isEmpty()) {
      cited.add(multiple);
    }
    double first = given.orElse(holding * multiple.value()) / volts;
    double holds = holding / volts;
    add(
        "coil",
        "coil",
        "%s AC, %s%s holding (%s), %s to pull in (%s); %s"
            .formatted(
                Printed.volts(volts),
                q.coil().isPresent() ? "" : "about ",
                Printed.of(holding, Dimension.APPARENT_POWER),
                amps(holds),
                given.isPresent()
                    ? Printed.of(given.getAsDouble(), Dimension.APPARENT_POWER)
                    : "up to %s × as much".formatted(plain(multiple.value())),
                amps(first),
                q.outputs().isEmpty()
                    ? "a volt-free output drives it if it is rated AC-15 for that; one for"
                        + " extra-low voltage needs an interposing relay"
                    : new CoilDrive(this, volts, holds, first).through(q.outputs())));
  }
}
