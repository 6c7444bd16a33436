package org.coilwright.solve;

import java.util.BitSet;
import java.util.function.Predicate;
import org.coilwright.circuit.Branch.Source;
import org.jspecify.annotations.Nullable;

/**
 * A zone with everything set as in one state. Where circuits share its feed it is all of them
 * together, so that what is read is exact.
 */
final class ZoneInState {
  final Zone zone;
  private final Situation situation;

  /** Every variable that is true, that of other circuits too; absent where the zone is alone. */
  private final @Nullable BitSet on;

  private ZoneInState(Zone zone, Situation situation, @Nullable BitSet on) {
    this.zone = zone;
    this.situation = situation;
    this.on = on;
  }

  /** A zone on whose feed nothing else hangs. */
  static ZoneInState alone(Zone zone, Situation situation) {
    return new ZoneInState(zone, situation, null);
  }

  /**
   * A zone that is several circuits together.
   *
   * @param situation of one of their groups; no source is at its limit, for else they were one
   * @param on the variables that are true
   */
  static ZoneInState together(Zone zone, Situation situation, BitSet on) {
    return new ZoneInState(zone, situation, on);
  }

  ZoneFlow flow(Corner corner) {
    return on == null ? situation.flow(zone, corner) : zone.solve(corner, joined(on, corner));
  }

  /** Solved afresh, without the elements that {@code present} refuses. */
  ZoneFlow solve(Corner corner, Predicate<Element> present) {
    return on == null
        ? situation.solve(zone, corner, present)
        : zone.solve(corner, joined(on, corner), present);
  }

  /** Share of its voltage that a source keeps: below one when it is at its current limit. */
  double share(Source source, Corner corner) {
    return situation.share(source, corner);
  }

  private Settings joined(BitSet set, Corner at) {
    Settings own = situation.settings(at);
    return new Settings() {
      @Override
      public boolean is(int variable) {
        return set.get(variable);
      }

      @Override
      public boolean isLive(Source source) {
        return own.isLive(source);
      }

      @Override
      public double re(Source source, Corner corner) {
        return own.re(source, corner);
      }

      @Override
      public double im(Source source, Corner corner) {
        return own.im(source, corner);
      }
    };
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof ZoneInState that
        && zone == that.zone
        && (on == null ? situation == that.situation : on.equals(that.on));
  }

  @Override
  public int hashCode() {
    return 31 * System.identityHashCode(zone)
        + (on == null ? System.identityHashCode(situation) : on.hashCode());
  }

  @Override
  public String toString() {
    return "zone " + zone.number + " in " + situation;
  }
}
