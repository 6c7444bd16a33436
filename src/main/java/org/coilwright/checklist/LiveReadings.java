package org.coilwright.checklist;

import java.util.List;
import java.util.Optional;
import org.coilwright.checklist.Expected.Band;
import org.coilwright.circuit.Mistake;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Terminal;
import org.coilwright.solve.CoilReading;
import org.coilwright.solve.Span;
import org.coilwright.solve.State;
import org.coilwright.solve.Study;

/**
 * What the voltmeter at a coil shows of a mistake once a supply is on, from the states of the
 * circuit that was really built. Asked only about what no dead test tells.
 */
final class LiveReadings {
  /** Each one is a whole circuit to be solved; beyond this many the eye has to do. */
  static final int MOST = 48;

  private final DeadTests tests;

  LiveReadings(DeadTests tests) {
    this.tests = tests;
  }

  /** The volts that a row would read, and the row. */
  record Shown(Plan.Placed placed, Span volts) {}

  /** The first of these rows whose reading surely leaves its band. */
  Optional<Shown> first(List<Plan.Placed> rows, Mistake mistake) {
    if (isOnElectronics(mistake)) {
      return Optional.empty();
    }
    Study built =
        tests.bands().study(mistake.in(tests.anatomy().netlist()), tests.anatomy().circuit());
    for (Plan.Placed placed : rows) {
      if (placed.row().expected() instanceof Band band) {
        Optional<Shown> shown =
            volts(placed.row(), built).filter(v -> leaves(v, band)).map(v -> new Shown(placed, v));
        if (shown.isPresent()) {
          return shown;
        }
      }
    }
    return Optional.empty();
  }

  /** What a pin for another use gives a coil that is wired to it, nobody can say. */
  private boolean isOnElectronics(Mistake mistake) {
    return mistake.laid().stream()
        .anyMatch(laid -> isReserved(laid.from()) || isReserved(laid.to()));
  }

  private boolean isReserved(Terminal pin) {
    return tests.anatomy().netlist().parts().get(pin.part()) instanceof Part.Controller controller
        && controller.reserved().containsKey(pin.pin());
  }

  private Optional<Span> volts(Row row, Study built) {
    for (Part.Relay relay : tests.anatomy().parts(Part.Relay.class)) {
      boolean on = row.name().equals(Names.of(relay.name(), "coil-voltage-on"));
      if (on || row.name().equals(Names.of(relay.name(), "coil-voltage-off"))) {
        return tests
            .anatomy()
            .stateWith(relay.name(), on)
            .flatMap(state -> volts(relay.name(), state, built));
      }
    }
    return Optional.empty();
  }

  /** Between the least and the most of every steady state with the same hands on the contacts. */
  private Optional<Span> volts(String relay, State drawn, Study built) {
    List<State> same =
        built.states().stream()
            .filter(
                state ->
                    built.columns().stream()
                        .allMatch(c -> state.isOperated(c) == drawn.isOperated(c)))
            .toList();
    if (same.isEmpty() || same.stream().anyMatch(built::isShorted)) {
      return Optional.empty();
    }
    double low = Double.POSITIVE_INFINITY;
    double high = 0;
    for (State state : same) {
      CoilReading reading = built.coil(relay, state);
      low = Math.min(low, Math.min(reading.lowest(), reading.highest()));
      high = Math.max(high, Math.max(reading.lowest(), reading.highest()));
    }
    return low >= 0 && high >= low
        ? Optional.of(tests.readings().onVoltmeter(new Span(low, high)))
        : Optional.empty();
  }

  private static boolean leaves(Span volts, Band band) {
    return (band.max().isPresent() && volts.low() > band.max().getAsDouble())
        || volts.high() < band.min().orElse(0);
  }
}
