package org.coilwright.worked;

import static org.coilwright.worked.Formula.number;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.coilwright.behaviour.Feed;
import org.coilwright.behaviour.Plant;
import org.coilwright.behaviour.Rehearsal;
import org.coilwright.behaviour.Settings;
import org.coilwright.behaviour.Trace;
import org.coilwright.behaviour.Water;

/** Examples that a whole rehearsal is run for. */
final class DayFormulas {
  private static final double LITRES = 100;
  private static final double HEAT_CAPACITY = 4186;
  private static final int SECONDS = 60;

  /** Longer than any example takes. */
  private static final int DAY = 86_400;

  private DayFormulas() {}

  static Map<String, Formula> all() {
    Map<String, Formula> byName = new TreeMap<>();
    byName.put("day.minutes-to", number(DayFormulas::minutes));
    return byName;
  }

  /**
   * Minutes until a vessel that has got from one temperature to another in a given time reaches a
   * third one, nothing heating it. The degrees may be of any scale.
   */
  private static double minutes(Inputs in) {
    double from = in.number("from");
    double room = in.number("room");
    double seconds = in.number("after") * SECONDS;
    double loss =
        LITRES * HEAT_CAPACITY * Math.log((from - room) / (in.number("then") - room)) / seconds;
    double to = in.number("to");
    Water water =
        new Water(LITRES, from, Math.max(from, room) + 1, 1, loss, room, List.of(), HEAT_CAPACITY);
    double[] reached = {Double.NaN};
    Trace trace =
        (step, closed, load, battery, grid, level, celsius) -> {
          if (Double.isNaN(reached[0]) && Math.abs(celsius - room) <= Math.abs(to - room)) {
            reached[0] = (step + 1.0) / SECONDS;
          }
        };
    Rehearsal.run(new Quiet(), new Plant(0, Optional.empty(), Optional.of(water)), never(), trace);
    return reached[0];
  }

  private static Settings never() {
    return new Settings(
        OptionalDouble.empty(),
        0,
        OptionalDouble.empty(),
        0,
        OptionalDouble.empty(),
        0,
        OptionalDouble.empty(),
        List.of());
  }

  /** A day of seconds in which nothing is generated and nothing used. */
  private static final class Quiet implements Feed {
    private int handedOut;

    @Override
    public int stepMillis() {
      return 1000;
    }

    @Override
    public int firstMillisOfDay() {
      return 0;
    }

    @Override
    public int next(float[] pv, float[] other) {
      int rows = Math.min(pv.length, DAY - handedOut);
      Arrays.fill(pv, 0, rows, 0f);
      Arrays.fill(other, 0, rows, 0f);
      handedOut += rows;
      return rows;
    }

    @Override
    public void rewind() {
      handedOut = 0;
    }
  }
}
