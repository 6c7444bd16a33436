package org.coilwright.solve;

import java.util.Optional;
import java.util.stream.Stream;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Source;
import org.coilwright.quantity.CurrentKind;

/** Reads off a state what a coil gets. */
final class CoilReadings {
  /** Amperes below this are the rest of a computation, or what a mere meter takes. */
  static final double NOTHING_AMPS = 1e-8;

  private final Lookup lookup;
  private final Sources sources;
  private final Extremes extremes;

  CoilReadings(Lookup lookup, Extremes extremes) {
    this.lookup = lookup;
    this.sources = lookup.model().setup.sources;
    this.extremes = extremes;
  }

  CoilReading of(String relay, State state) {
    Branch.Coil coil =
        lookup.model().setup.circuit.branchesOf(relay).stream()
            .filter(Branch.Coil.class::isInstance)
            .map(Branch.Coil.class::cast)
            .findFirst()
            .orElseThrow(() -> new IllegalArgumentException("no relay " + relay));
    ZoneInState here = lookup.at(coil, state);
    Element element = lookup.elementOf(here.zone, coil);
    ZoneFlow nominal = here.flow(Corner.NOMINAL);
    double direct = nominal.directVolts(element);
    double alternating = nominal.alternatingVolts(element);
    CurrentKind kind =
        Math.max(Math.abs(direct), alternating) < Extremes.NOTHING
            ? CurrentKind.UNSTATED
            : Math.abs(direct) >= alternating ? CurrentKind.DC : CurrentKind.AC;
    Optional<Source> source = sourceOf(nominal, element, kind);
    ZoneInState least = lookup.atWorst(coil, state, z -> -z.flow(Corner.LOWEST).volts(element));
    ZoneInState most = lookup.atWorst(coil, state, z -> z.flow(Corner.HIGHEST).volts(element));
    Extremes.Range range = extremes.of(least, most, element);
    double low = supplyVolts(source, here, range.lowest().corner());
    double high = supplyVolts(source, here, range.highest().corner());
    CurrentKind made = coilKind(relay);
    return new CoilReading(
        kind == CurrentKind.DC ? direct : clean(alternating),
        clean(range.lowest().volts()),
        source.isEmpty() ? "not fed" : extremes.lowestInWords(range.lowest(), low, made),
        clean(range.highest().volts()),
        source.isEmpty() ? "not fed" : extremes.highestInWords(range.highest(), high),
        kind,
        amps(nominal, element),
        amps(here.flow(Corner.PICK_UP), element),
        state.isIn(relay),
        source.map(Source::part),
        low);
  }

  private CurrentKind coilKind(String relay) {
    return Optional.ofNullable(lookup.model().setup.coils.get(relay))
        .map(m -> m.kind)
        .orElse(CurrentKind.UNSTATED);
  }

  private double supplyVolts(Optional<Source> source, ZoneInState here, Corner corner) {
    return source.map(s -> sources.volts(s, corner.supply()) * here.share(s, corner)).orElse(0.0);
  }

  static double clean(double volts) {
    return volts < Extremes.NOTHING ? 0 : volts;
  }

  private static double amps(ZoneFlow flow, Element element) {
    double amps = flow.amps(element);
    return amps < NOTHING_AMPS ? 0 : amps;
  }

  /** The source whose terminal is joined to an end of the element, line or plus before minus. */
  private static Optional<Source> sourceOf(ZoneFlow flow, Element element, CurrentKind kind) {
    Ways ways = Ways.withPassives(flow);
    return Stream.of(element.from(), element.to())
        .flatMap(end -> ways.sourcesAt(end).stream())
        .filter(s -> kind == CurrentKind.UNSTATED || s.isDirect() == (kind == CurrentKind.DC))
        .findFirst();
  }
}
