package org.coilwright.sizing;

import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.coilwright.quantity.Comparison;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.table.Cited;

/** The device before a contactor and what drives its coil. */
final class DeviceChoice extends Working {
  private final Question q;

  /** What the air around it takes from the device, in words. */
  private String warmth = "";

  DeviceChoice(Working begun, Question q) {
    super(begun);
    this.q = q;
  }

  Optional<Cited<Double>> device(Optional<Double> contactor) {
    Optional<Cited<Double>> device;
    String how;
    if (q.supply().isNec()) {
      Cited<Double> continuous = tables.figure("sizing.continuous-load");
      double needs = q.load().nominal() * continuous.value();
      cited.add(continuous);
      device = warm("device-ratings-nec", needs, WarmDevice.Kind.BREAKER_UL);
      how =
          "%s × %s = %s"
              .formatted(amps(q.load().nominal()), plain(continuous.value()), amps(needs));
      Cited<Double> from = tables.figure("sizing.appliance-device-from");
      if (q.load().nominal() > from.value()) {
        Cited<Double> share = tables.figure("sizing.appliance-device");
        double most = q.load().nominal() * share.value();
        cited.add(share);
        how +=
            Series.atLeast(most, tables)
                .map(
                    r ->
                        "; at most %s (next above %s × %s = %s)"
                            .formatted(
                                amps(r.value()),
                                amps(q.load().nominal()),
                                plain(share.value()),
                                amps(most)))
                .orElse("");
      }
    } else {
      Cited<Double> holds =
          tables.lookup("overload-device", Map.of("device", "breaker-60898"), "i1").orElseThrow();
      cited.add(holds);
      device =
          warm(
              "breaker-ratings",
              Math.max(q.load().nominal(), q.load().worst() / holds.value()),
              WarmDevice.Kind.BREAKER_IEC);
      how =
          "at least %s, and %s ÷ %s (what does not trip it)"
              .formatted(amps(q.load().nominal()), amps(q.load().worst()), plain(holds.value()));
    }
    how += warmth;
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

  /** The smallest rating of a series that is enough, and still is in the air it stands in. */
  private Optional<Cited<Double>> warm(String series, double needs, WarmDevice.Kind kind) {
    String air = Printed.of(q.place().air(), Dimension.TEMPERATURE);
    for (Cited<Double> next : Series.from(series, needs, tables).toList()) {
      double rating = next.value();
      Found<Optional<Factor>> found =
          new WarmDevice(kind, rating, OptionalDouble.empty()).in(q.place().air(), tables);
      if (found instanceof Found.Unknown<Optional<Factor>> unknown) {
        warmth = "; what one carries in air of %s is not known: %s".formatted(air, unknown.why());
        return Optional.empty();
      }
      Optional<Factor> factor = found.known().flatMap(f -> f);
      if (factor.isEmpty()) {
        return Optional.of(next);
      }
      double left = rating * factor.get().value().value();
      if (!Comparison.fallsShort(left, q.load().worst())) {
        cited.add(factor.get().value());
        warmth =
            ", and %s × %s = %s left of it for %s%s"
                .formatted(
                    amps(rating),
                    factor.get().words(),
                    amps(left),
                    amps(q.load().worst()),
                    beyond(kind));
        return Optional.of(next);
      }
    }
    return Optional.empty();
  }

  private String beyond(WarmDevice.Kind kind) {
    return WarmDevice.warmest(kind, tables)
        .filter(w -> q.place().air() > w.value())
        .map(
            w ->
                "; outside IEC 60898-1 7.2, whose air ends at %s: ask its maker"
                    .formatted(Printed.of(w.value(), Dimension.TEMPERATURE)))
        .orElse("");
  }

  /** Resistance heating above a limit has to be divided. */
  private void divided() {
    Cited<Double> most = tables.figure("sizing.undivided-element");
    Cited<Double> guard = tables.figure("sizing.undivided-device");
    if (q.supply().isNec() && Comparison.exceeds(q.load().nominal(), most.value())) {
      cited.add(most);
      cited.add(guard);
      add(
          "divide",
          "divide",
          "%s is above %s: resistance elements of an appliance have to be divided into circuits of at most that, each behind %s at most, unless the vessel is one of the excepted"
              .formatted(amps(q.load().nominal()), amps(most.value()), amps(guard.value())));
    }
  }

  /** What the coil draws, and whether the given output can drive it. */
  void coil(double rating) {
    if (q.drive().coil().filter(Question.Coil::direct).isPresent()) {
      direct(q.drive().coil().get());
      return;
    }
    Optional<Cited<Double>> usual = tables.lookup("contactor-ratings", Map.of(), rating, "holding");
    if (q.drive().coil().isEmpty() && usual.isEmpty()) {
      return;
    }
    double volts =
        q.drive().coil().map(Question.Coil::volts).orElse(q.supply().isNec() ? 120.0 : 230.0);
    double holding =
        q.drive().coil().map(Question.Coil::holding).orElseGet(() -> usual.orElseThrow().value());
    if (q.drive().coil().isEmpty()) {
      usual.ifPresent(cited::add);
    }
    OptionalDouble given =
        q.drive().coil().map(Question.Coil::pickUp).orElse(OptionalDouble.empty());
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
                q.drive().coil().isPresent() ? "" : "about ",
                Printed.of(holding, Dimension.APPARENT_POWER),
                amps(holds),
                given.isPresent()
                    ? Printed.of(given.getAsDouble(), Dimension.APPARENT_POWER)
                    : "up to %s × as much".formatted(plain(multiple.value())),
                amps(first),
                q.drive().outputs().isEmpty()
                    ? "a volt-free output drives it if it is rated AC-15 for that; one for"
                        + " extra-low voltage needs an interposing relay"
                    : new CoilDrive(this, volts, holds, first).through(q.drive().outputs())));
  }

  /** A coil on direct voltage, which has no more to pull in with than it holds with. */
  private void direct(Question.Coil coil) {
    double amps = coil.holding() / coil.volts();
    add(
        "coil",
        "coil",
        coil.holding() <= 0
            ? "%s DC; what it draws is open: neither its resistance nor its power is written"
                .formatted(Printed.volts(coil.volts()))
            : "%s DC, %s (%s); %s"
                .formatted(
                    Printed.volts(coil.volts()),
                    Printed.of(coil.holding(), Dimension.POWER),
                    amps(amps),
                    q.drive().outputs().isEmpty()
                        ? "an output drives it if it is rated DC-13 for that"
                        : new CoilDrive(this, coil.volts(), amps).through(q.drive().outputs())));
  }
}
