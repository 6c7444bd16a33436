package org.coilwright.behaviour;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.jspecify.annotations.Nullable;

/**
 * Runs the settings against the plant, row by row.
 *
 * <p>In each row the contact is decided from the meter's reading of the row before; then the load,
 * the battery and the meter follow. The inner loop works on local variables and allocates nothing,
 * so that a year of seconds is a matter of moments.
 */
public final class Rehearsal {
  private static final int BLOCK = 4096;
  private static final double SECONDS_PER_HOUR = 3600;

  /** A first-order step is 95 % worked off after three time constants. */
  private static final double TIME_CONSTANTS_TO_SETTLE = 3;

  /** A time that is a whole number of rows but for rounding is that number. */
  private static final double ROUNDING = 1e-9;

  private final int stepMillis;
  private final Settings settings;
  private final @Nullable Water water;
  private final @Nullable Trace trace;
  private final Clock clock;

  // the plant, in the loop's own units
  private final double hours;
  private final double perHours;
  private final double loadWatts;
  private final double capacity;
  private final double floor;
  private final double discharge;
  private final double charge;
  private final double nearFloor;
  private final double nearFull;
  private final boolean ramp;
  private final double[] ring;
  private final double ringShare;
  private final double alpha;
  private final boolean hasWater;
  private final double target;
  private final double closesAt;
  private final double kelvinPerWatt;
  private final double loss;
  private final double room;

  // the settings, in rows
  private final double exportAbove;
  private final double importAbove;
  private final double levelBelow;
  private final long startRows;
  private final long stopRows;
  private final long shortestRows;
  private final long longestRows;

  // what moves
  private long step;
  private boolean inWindow;
  private boolean closed;
  private boolean heating = true;
  private long exportRun;
  private long importRun;
  private boolean trueSurplusSeen;
  private long onRows;
  private long dayOnRows;
  private double grid;
  private double battery;
  private double ringSum;
  private int ringAt;
  private double level;
  private double celsius;

  // what is counted
  private final List<Run> runs = new ArrayList<>();
  private long runStart;
  private boolean runByWindow;
  private boolean runFalse;
  private double runPv;
  private double runBattery;
  private double runGrid;
  private long closedRows;
  private double pvSum;
  private double otherSum;
  private double loadSum;
  private double importSum;
  private double exportSum;
  private double dischargeSum;
  private double chargeSum;
  private double unusedSum;
  private double lowest;
  private double hottest;
  private long targetStep = -1;

  /** About to begin at the first row of a feed, whose rows are then given to {@link #accept}. */
  Rehearsal(Feed feed, Plant plant, Settings settings, @Nullable Trace trace) {
    this.stepMillis = feed.stepMillis();
    this.settings = settings;
    this.trace = trace;
    this.water = plant.water().orElse(null);
    double dt = feed.stepMillis() / (double) Clock.MILLIS;
    this.clock = new Clock(feed.firstMillisOfDay(), feed.stepMillis(), settings, plant);
    hours = dt / SECONDS_PER_HOUR;
    perHours = SECONDS_PER_HOUR / dt;
    loadWatts = plant.loadWatts();
    Battery b = plant.battery().orElse(null);
    capacity = b == null ? 0 : b.capacityWh();
    floor = b == null ? 0 : b.floorFraction() * capacity;
    discharge = b == null ? 0 : b.dischargeWatts();
    charge = b == null ? 0 : b.chargeWatts();
    nearFloor = floor + discharge * hours;
    nearFull = capacity - charge * hours;
    level = b == null ? 0 : b.startFraction() * capacity;
    ramp = b == null || b.settling() == Battery.Settling.RAMP;
    double settles = b == null ? 0 : b.settlesInSeconds();
    ring = new double[(int) Math.max(1, Math.round(settles / dt))];
    ringShare = 1.0 / ring.length;
    alpha = settles == 0 ? 1 : 1 - Math.exp(-dt * TIME_CONSTANTS_TO_SETTLE / settles);
    hasWater = water != null;
    if (water != null) {
      target = water.targetCelsius();
      closesAt = target - water.differentialKelvin();
      kelvinPerWatt = dt / water.joulesPerKelvin();
      loss = water.lossWattsPerKelvin();
      room = water.roomCelsius();
      celsius = water.startCelsius();
    } else {
      target = 0;
      closesAt = 0;
      kelvinPerWatt = 0;
      loss = 0;
      room = 0;
    }
    hottest = celsius;
    lowest = level;
    exportAbove = settings.exportAboveWatts().orElse(Double.POSITIVE_INFINITY);
    importAbove = settings.importAboveWatts().orElse(Double.POSITIVE_INFINITY);
    levelBelow = b == null ? -1 : settings.batteryBelowFraction().orElse(-1) * capacity;
    startRows = Math.max(1, rows(settings.startAfterSeconds(), dt));
    stopRows = Math.max(1, rows(settings.stopAfterSeconds(), dt));
    shortestRows = rows(settings.shortestRunSeconds(), dt);
    longestRows =
        settings.longestPerDaySeconds().isPresent()
            ? rows(settings.longestPerDaySeconds().getAsDouble(), dt)
            : Long.MAX_VALUE;
  }

  /**
   * Runs the feed from its first row to its end.
   *
   * @param trace sees every row, or null
   */
  public static Tally run(Feed feed, Plant plant, Settings settings, @Nullable Trace trace) {
    feed.rewind();
    Rehearsal rehearsal = new Rehearsal(feed, plant, settings, trace);
    float[] pv = new float[BLOCK];
    float[] other = new float[BLOCK];
    for (int n = feed.next(pv, other); n > 0; n = feed.next(pv, other)) {
      rehearsal.accept(pv, other, n);
    }
    return rehearsal.end();
  }

  private static long rows(double seconds, double dt) {
    return (long) Math.ceil(seconds / dt - ROUNDING);
  }

  /** Runs the next {@code n} rows. */
  void accept(float[] pv, float[] other, int n) {
    int i = 0;
    while (i < n) {
      atTheClock();
      int end = Math.min(n, i + clock.rowsToNextEvent());
      rows(pv, other, i, end);
      clock.advance(end - i);
      i = end;
    }
  }

  /** After the last row. */
  Tally end() {
    if (closed) {
      endRun(step);
    }
    return tally();
  }

  private void atTheClock() {
    if (clock.isNow(0)) {
      dayOnRows = 0;
    }
    int now = clock.second();
    inWindow = settings.windows().stream().anyMatch(w -> w.holds(now));
    if (water != null) {
      for (Water.DrawOff d : water.drawOffs()) {
        if (clock.isNow(d.secondOfDay())) {
          celsius += (d.coldCelsius() - celsius) * d.litres() / water.litres();
        }
      }
    }
  }

  private boolean decide(double nowLevel) {
    boolean stop = importRun >= stopRows || nowLevel < levelBelow;
    if (dayOnRows >= longestRows) {
      return false;
    }
    if (inWindow) {
      return true;
    }
    if (closed && onRows < shortestRows) {
      return true;
    }
    if (stop) {
      return false;
    }
    return closed || exportRun >= startRows;
  }

  /** Rows {@code from} to {@code to} with nothing happening by the clock in between. */
  private void rows(float[] pvs, float[] others, int from, int to) {
    // Everything that moves in each row is local: the compiler keeps it in registers.
    double lvl = level;
    double batt = battery;
    double g = grid;
    double low = lowest;
    double temp = celsius;
    double pvTotal = 0;
    double otherTotal = 0;
    double gridTotal = 0;
    double gridMoved = 0;
    double batteryTotal = 0;
    double batteryMoved = 0;
    double unusedTotal = 0;
    ringSum = sum(ring);
    for (int i = from; i < to; i++) {
      boolean want = decide(lvl);
      if (want != closed) {
        turn(want);
      }
      double pv = pvs[i];
      double other = others[i];
      double load = closed && heating ? loadWatts : 0;

      double net = other + load - pv;
      // Branches, not min and max: they are foreseen, so that one row need not wait for another.
      double demand = net;
      if (net > discharge) {
        demand = discharge;
      } else if (net < -charge) {
        demand = -charge;
      }
      double chargeRoom = charge;
      if (lvl < nearFloor || lvl > nearFull) {
        chargeRoom = Math.min(charge, (capacity - lvl) * perHours);
        double most = Math.max(0, (lvl - floor) * perHours);
        demand = Math.max(Math.min(demand, most), -chargeRoom);
        batt = Math.max(Math.min(settle(batt, demand), most), -chargeRoom);
      } else {
        batt = settle(batt, demand);
      }
      g = net - batt;
      lvl -= batt * hours;

      if (-g > exportAbove) {
        trueSurplusSeen = (exportRun != 0 && trueSurplusSeen) || pv - other > chargeRoom;
        exportRun++;
      } else {
        exportRun = 0;
      }
      importRun = g > importAbove ? importRun + 1 : 0;

      pvTotal += pv;
      otherTotal += other;
      gridTotal += g;
      gridMoved += Math.abs(g);
      batteryTotal += batt;
      batteryMoved += Math.abs(batt);
      if (lvl < low) {
        low = lvl;
      }
      if (closed) {
        account(load, pv, other, batt);
      } else if (heating && g < 0) {
        unusedTotal -= g;
      }
      temp += (load - loss * (temp - room)) * kelvinPerWatt;
      if (hasWater && (heating ? temp >= target : temp <= closesAt)) {
        thermostat(temp);
      }
      if (trace != null) {
        trace.row(step, closed, load, batt, g, capacity == 0 ? 0 : lvl / capacity, temp);
      }
      step++;
    }
    level = lvl;
    battery = batt;
    grid = g;
    lowest = low;
    celsius = temp;
    hottest = Math.max(hottest, temp);
    pvSum += pvTotal;
    otherSum += otherTotal;
    importSum += (gridMoved + gridTotal) / 2;
    exportSum += (gridMoved - gridTotal) / 2;
    dischargeSum += (batteryMoved + batteryTotal) / 2;
    chargeSum += (batteryMoved - batteryTotal) / 2;
    unusedSum += unusedTotal;
  }

  private double settle(double given, double demand) {
    if (!ramp) {
      return given + (demand - given) * alpha;
    }
    ringSum += demand - ring[ringAt];
    ring[ringAt] = demand;
    ringAt = ringAt + 1 == ring.length ? 0 : ringAt + 1;
    return ringSum * ringShare;
  }

  /** Summed anew for each block, so that no rounding error grows over a year. */
  private static double sum(double[] values) {
    double sum = 0;
    for (double value : values) {
      sum += value;
    }
    return sum;
  }

  private void thermostat(double temp) {
    hottest = Math.max(hottest, temp);
    if (heating && targetStep < 0) {
      targetStep = step;
    }
    heating = !heating;
  }

  /**
   * Who gave what the load took: first what nobody else needed, then the battery, then the grid.
   */
  private void account(double load, double pv, double other, double given) {
    onRows++;
    dayOnRows++;
    closedRows++;
    loadSum += load;
    double fromPv = Math.min(load, Math.max(0, pv - other));
    double fromBattery = Math.min(load - fromPv, Math.max(0, given - Math.max(0, other - pv)));
    runPv += fromPv;
    runBattery += fromBattery;
    runGrid += load - fromPv - fromBattery;
  }

  private void turn(boolean on) {
    if (on) {
      runStart = step;
      runByWindow = inWindow;
      runFalse = !inWindow && !trueSurplusSeen;
      onRows = 0;
    } else {
      endRun(step);
    }
    closed = on;
    exportRun = 0;
    importRun = 0;
  }

  private void endRun(long end) {
    runs.add(
        new Run(
            runStart,
            end,
            runByWindow,
            runFalse,
            runPv * hours,
            runBattery * hours,
            runGrid * hours));
    runPv = 0;
    runBattery = 0;
    runGrid = 0;
  }

  private Tally tally() {
    return new Tally(
        step,
        stepMillis,
        List.copyOf(runs),
        closedRows,
        pvSum * hours,
        otherSum * hours,
        loadSum * hours,
        importSum * hours,
        exportSum * hours,
        dischargeSum * hours,
        chargeSum * hours,
        unusedSum * hours,
        capacity == 0 ? 1 : lowest / capacity,
        capacity == 0 ? 1 : level / capacity,
        hasWater ? OptionalDouble.of(celsius) : OptionalDouble.empty(),
        hasWater ? OptionalDouble.of(hottest) : OptionalDouble.empty(),
        targetStep < 0 ? OptionalLong.empty() : OptionalLong.of(targetStep));
  }
}
