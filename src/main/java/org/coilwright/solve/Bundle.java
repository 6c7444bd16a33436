package org.coilwright.solve;

import java.util.List;
import java.util.function.Supplier;
import org.coilwright.circuit.Branch;
import org.jspecify.annotations.Nullable;

/** Circuits that share a feed: explored apart, and read together. */
final class Bundle {
  final List<Branch> branches;
  final List<Zone> circuits;
  private final Supplier<Zone> joined;
  private @Nullable Zone together;

  /**
   * Keeps what was parted.
   *
   * @param joined makes the zone that all of them are
   */
  Bundle(List<Branch> branches, List<Zone> circuits, Supplier<Zone> joined) {
    this.branches = branches;
    this.circuits = List.copyOf(circuits);
    this.joined = joined;
  }

  /** All of them as one zone, made when first asked for. */
  Zone together() {
    Zone made = together;
    if (made == null) {
      made = joined.get();
      together = made;
    }
    return made;
  }
}
