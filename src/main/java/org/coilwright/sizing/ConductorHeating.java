package org.coilwright.sizing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Site;
import org.coilwright.quantity.Comparison;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/**
 * Whether a conductor stands the short-circuits behind its device, whatever the current between the
 * least and the greatest that can flow. Asked in this order, and the first that holds decides: the
 * source cannot give more than the conductor carries (IEC 60364-4-43 clause 436); the device ends
 * every such current as an overload (433.1); it lets less through than the conductor stands
 * (434.5.2); the source ends it by itself. Heat that flows off meanwhile is left out, which errs to
 * the safe side and so proves no failure where the device is slow.
 */
public final class ConductorHeating {
  private final OpeningTimes times;
  private final boolean classes;
  private final Tables tables;

  public ConductorHeating(Site.Practice practice, Tables tables) {
    this.times = new OpeningTimes(practice, tables);
    this.classes = practice != Site.Practice.NEC;
    this.tables = tables;
  }

  /**
   * A conductor and what can flow in it.
   *
   * @param least A at a fault at the far end
   * @param most A at a fault at its beginning; not below {@code least}
   * @param carries A for good, as laid; empty if that is not known
   * @param k A·√s/mm²
   * @param lasts s after which the source has ended a short-circuit by itself; empty if its maker
   *     does not say
   */
  public record Conductor(
      Part device,
      double least,
      double most,
      OptionalDouble carries,
      Cited<Double> k,
      double mm2,
      OptionalDouble lasts) {
    /** k²S², A²s. */
    double stands() {
      return ShortCircuit.stands(k.value(), mm2);
    }
  }

  /** What came of it. */
  public sealed interface Answer {
    /**
     * It stands them.
     *
     * @param value what was compared, in the unit of {@code limit}
     * @param unit {@code A} or {@code A²s}
     */
    record Stands(double value, double limit, String unit, String words, List<Cited<?>> cited)
        implements Answer {}

    /** More passes than it stands, A²s. */
    record Burns(double through, double stands, List<Cited<?>> cited) implements Answer {}

    /**
     * Not proven either way.
     *
     * @param missing a key, or what else would settle it
     * @param words one sentence on why
     * @param through A²s that would have to be stood; empty if it has no end
     * @param settledBy one sentence on who or what settles it where no key can; else empty
     */
    record Open(String missing, String words, OptionalDouble through, String settledBy)
        implements Answer {}
  }

  /** Answers for one conductor. */
  public Answer judge(Conductor wire) {
    Cited<Double> share = tables.figure("sizing.overload-share");
    Opening first = times.at(wire.device(), wire.least());
    if (wire.carries().isPresent() && within(wire.most(), wire.carries().getAsDouble())) {
      return new Answer.Stands(
          wire.most(),
          wire.carries().getAsDouble(),
          "A",
          "the source gives at most %s and it carries %s for good (clause 436)"
              .formatted(amps(wire.most()), amps(wire.carries().getAsDouble())),
          List.of(wire.k()));
    }
    if (first instanceof Opening.Within within
        && wire.carries().isPresent()
        && within(wire.most(), share.value() * wire.carries().getAsDouble())) {
      List<Cited<?>> cited = new ArrayList<>(within.cited());
      cited.add(share);
      return new Answer.Stands(
          wire.most(),
          share.value() * wire.carries().getAsDouble(),
          "A",
          "the source gives at most %s, not above %s × %s, and %s (433.1)"
              .formatted(
                  amps(wire.most()),
                  Printed.of(share.value(), Dimension.COUNT),
                  amps(wire.carries().getAsDouble()),
                  within.words()),
          cited);
    }
    Answer byDevice = byDevice(wire, first);
    if (byDevice instanceof Answer.Stands || wire.lasts().isEmpty()) {
      return byDevice;
    }
    double through = wire.most() * wire.most() * wire.lasts().getAsDouble();
    return within(through, wire.stands())
        ? new Answer.Stands(
            through,
            wire.stands(),
            "A²s",
            "the source ends it within %s"
                .formatted(Printed.of(wire.lasts().getAsDouble(), Dimension.TIME)),
            List.of(wire.k()))
        : byDevice;
  }

  private Answer byDevice(Conductor wire, Opening first) {
    if (first instanceof Opening.Unknown unknown) {
      return new Answer.Open(
          unknown.missing(), unknown.words(), OptionalDouble.empty(), unknown.settledBy());
    }
    List<Cited<?>> cited = new ArrayList<>(List.of(wire.k()));
    Passing slow = new Passing(0, 0, 0);
    Passing fast = slow;
    double release = tables.figure("sizing.magnetic-time").value();
    for (OpeningTimes.Span span : times.between(wire.device(), wire.least(), wire.most())) {
      Passing here = new Passing(span.to(), span.seconds(), span.to() * span.to() * span.seconds());
      cited.addAll(span.cited());
      if (Comparison.exceeds(span.seconds(), release)) {
        slow = here.energy() > slow.energy() ? here : slow;
      } else {
        fast = here;
      }
    }
    Answer atOnce = atOnce(wire, fast, cited);
    if (atOnce instanceof Answer.Burns) {
      return atOnce;
    }
    if (!(first instanceof Opening.Within)) {
      return new Answer.Open(
          "a current that opens " + wire.device().name(),
          "A fault at the far end drives %s, and %s.".formatted(amps(wire.least()), first.words()),
          OptionalDouble.empty(),
          "The netlist cannot settle it: ask the maker of the source for how long it drives a"
              + " short-circuit, or take a smaller device.");
    }
    if (within(slow.energy(), wire.stands())) {
      return atOnce instanceof Answer.Stands stands && slow.energy() > stands.value()
          ? new Answer.Stands(slow.energy(), wire.stands(), "A²s", slow.words(), cited)
          : atOnce;
    }
    return times.within(wire.device(), release) instanceof Found.Unknown<?>
        ? noLetThrough(wire)
        : new Answer.Open(
            "time that %s takes at %s".formatted(wire.device().name(), amps(slow.amps())),
            "%s may take %s at a fault that drives just under %s, as there may be at the far end."
                .formatted(
                    wire.device().name(),
                    Printed.of(slow.seconds(), Dimension.TIME),
                    amps(slow.amps())),
            OptionalDouble.of(slow.energy()),
            "");
  }

  /** What passes at one current, A²s. */
  private record Passing(double amps, double seconds, double energy) {
    String words() {
      return "%s for %s".formatted(Printed.amps(amps), Printed.of(seconds, Dimension.TIME));
    }
  }

  /** From the magnetic release on; where the whole 0.1 s would be too much, the class tells. */
  private Answer atOnce(Conductor wire, Passing fast, List<Cited<?>> cited) {
    if (within(fast.energy(), wire.stands())) {
      return new Answer.Stands(fast.energy(), wire.stands(), "A²s", fast.words(), cited);
    }
    if (wire.device() instanceof Part.Fuse fuse) {
      return fuseAtOnce(wire, fuse);
    }
    Optional<Cited<Double>> limited =
        classes ? ShortCircuit.letThrough(wire.device(), wire.most(), tables) : Optional.empty();
    if (limited.isEmpty()) {
      return noLetThrough(wire);
    }
    double through = limited.get().value();
    List<Cited<?>> rests = List.of(wire.k(), limited.get());
    return within(through, wire.stands())
        ? new Answer.Stands(through, wire.stands(), "A²s", "class 3", rests)
        : new Answer.Burns(through, wire.stands(), rests);
  }

  /**
   * A fuse limits what passes: what melts it, and its arc. More than is stood proves no failure.
   */
  private Answer fuseAtOnce(Conductor wire, Part.Fuse fuse) {
    double release = tables.figure("sizing.magnetic-time").value();
    return times
        .within(fuse, release)
        .known()
        .flatMap(fast -> ShortCircuit.fuseLetsThrough(fuse, fast.amps(), release, tables))
        .filter(limited -> within(limited.value(), wire.stands()))
        .<Answer>map(
            limited ->
                new Answer.Stands(
                    limited.value(),
                    wire.stands(),
                    "A²s",
                    "what melts it and its arc",
                    List.of(wire.k(), limited)))
        .orElseGet(() -> noLetThrough(wire));
  }

  private static Answer noLetThrough(Conductor wire) {
    String device = wire.device().name();
    return new Answer.Open(
        "let-through energy of %s at %s".formatted(device, Printed.amps(wire.most())),
        "No table gives what %s lets through.".formatted(device),
        OptionalDouble.empty(),
        "The netlist cannot settle it: ask the maker of %s for it.".formatted(device));
  }

  private static boolean within(double value, double limit) {
    return !Comparison.exceeds(value, limit);
  }

  private static String amps(double amps) {
    return Printed.of(amps, Dimension.CURRENT);
  }
}
