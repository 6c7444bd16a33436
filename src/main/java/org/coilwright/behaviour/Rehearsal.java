// Over 250 lines: one loop that must stay in one piece to be fast.
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
  private final double coolingShare;
  private final double roomShare;

  // the settings, in rows
  private final double exportAbove;
  private final double importAbove;
  private final double levelBelow;
  private final long startRows;
  private final long stopRows;
  private final long shortestRows;
  private final long longestRows;

  /** True if one row could count as export and as import: with thresholds below zero. */
  private final boolean mayBeBoth;

  // what moves
  private long step;
  private boolean inWindow;
  private boolean closed;
  private boolean heating = true;
  private long exportRun;
  private long importRun;
  private boolean trueSurplusSeen;
  private long dayOnRows;
  private double battery;
  private int ringAt;
  private double level;
  private double celsius;

  // sums over the rows between two events of the clock
  private double pvTotal;
  private double otherTotal;
  private double takenTotal;
  private double gridMoved;
  private double batteryMoved;
  private double unusedTotal;
  private double memorySum;

  // what is counted
  private final List<Run> runs = new ArrayList<>();
  private long runStart;
  private boolean runByWindow;
  private boolean runFalse;
  private double runPv;
  private double runBattery;
  private double runLoad;
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
      coolingShare = 1 - water.lossWattsPerKelvin() * kelvinPerWatt;
      roomShare = water.lossWattsPerKelvin() * water.roomCelsius() * kelvinPerWatt;
      celsius = water.startCelsius();
    } else {
      target = Double.POSITIVE_INFINITY;
      closesAt = Double.NEGATIVE_INFINITY;
      kelvinPerWatt = 0;
      coolingShare = 1;
      roomShare = 0;
    }
    hottest = celsius;
    lowest = level;
    exportAbove = settings.exportAboveWatts().orElse(Double.POSITIVE_INFINITY);
    importAbove = settings.importAboveWatts().orElse(Double.POSITIVE_INFINITY);
    mayBeBoth = !(exportAbove + importAbove >= 0);
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

  private boolean decide(double nowLevel, long now) {
    boolean stop = importRun >= stopRows || nowLevel < levelBelow;
    if (dayOnRows >= longestRows) {
      return false;
    }
    if (inWindow) {
      return true;
    }
    if (closed && now - runStart < shortestRows) {
      return true;
    }
    if (stop) {
      return false;
    }
    return closed || exportRun >= startRows;
  }

  /**
   * Rows {@code from} to {@code to} with nothing happening by the clock in between, one stretch
   * with the contact open or closed after the other. Within a stretch everything that moves in each
   * row is local, so that the compiler keeps it in registers; fields are written only where the
   * contact or the thermostat may turn.
   */
  private void rows(float[] pvs, float[] others, int from, int to) {
    pvTotal = 0;
    otherTotal = 0;
    takenTotal = 0;
    gridMoved = 0;
    batteryMoved = 0;
    unusedTotal = 0;
    memorySum = sum(ring);
    double before = level;
    long first = step - from;
    for (int i = from; i < to; ) {
      i = closed ? whileClosed(pvs, others, i, to, first) : whileOpen(pvs, others, i, to, first);
    }
    step += to - from;
    hottest = Math.max(hottest, celsius);
    pvSum += pvTotal;
    otherSum += otherTotal;
    // what went in and out on balance follows from the books; only the movement must be summed
    double batteryTotal = (before - level) / hours;
    double gridTotal = otherTotal + takenTotal - pvTotal - batteryTotal;
    importSum += (gridMoved + gridTotal) / 2;
    exportSum += (gridMoved - gridTotal) / 2;
    dischargeSum += (batteryMoved + batteryTotal) / 2;
    chargeSum += (batteryMoved - batteryTotal) / 2;
    unusedSum += unusedTotal;
  }

  /**
   * Rows from {@code i} on until the contact closes. How long power has been imported is not
   * counted where no row can be of both: it would be nothing at the moment when that is asked.
   *
   * @param first step of the row 0
   * @return the row in which it closes, or {@code to}
   */
  private int whileOpen(float[] pvs, float[] others, int i, int to, long first) {
    double lvl = level;
    double batt = battery;
    double low = lowest;
    double temp = celsius;
    double heat = roomShare;
    boolean warms = heating;
    long exported = exportRun;
    long imported = importRun;
    boolean surplus = trueSurplusSeen;
    double pvAll = pvTotal;
    double otherAll = otherTotal;
    double gridAll = gridMoved;
    double batteryAll = batteryMoved;
    double unused = unusedTotal;
    double[] memory = ring;
    int memoryAt = ringAt;
    double memoryAll = memorySum;
    Trace seen = trace;
    int at = i;
    for (; at < to; at++) {
      if (exported >= startRows || inWindow) {
        exportRun = exported;
        importRun = imported;
        trueSurplusSeen = surplus;
        if (decide(lvl, first + at)) {
          turn(true, first + at);
          exported = 0;
          imported = 0;
          break;
        }
      }
      double pv = pvs[at];
      double other = others[at];
      double net = other - pv;
      // Branches, not min and max: they are foreseen, so that one row need not wait for another.
      double demand = net;
      if (net > discharge) {
        demand = discharge;
      } else if (net < -charge) {
        demand = -charge;
      }
      boolean atAnEnd = lvl < nearFloor || lvl > nearFull;
      double chargeRoom = charge;
      double most = discharge;
      if (atAnEnd) {
        chargeRoom = chargeRoom(lvl);
        most = most(lvl);
        if (demand > most) {
          demand = most;
        }
        if (demand < -chargeRoom) {
          demand = -chargeRoom;
        }
      }
      if (ramp) {
        memoryAll += demand - memory[memoryAt];
        memory[memoryAt] = demand;
        memoryAt = memoryAt + 1 == memory.length ? 0 : memoryAt + 1;
        batt = memoryAll * ringShare;
      } else {
        batt += (demand - batt) * alpha;
      }
      if (atAnEnd) {
        if (batt > most) {
          batt = most;
        }
        if (batt < -chargeRoom) {
          batt = -chargeRoom;
        }
      }
      double g = net - batt;
      lvl -= batt * hours;
      if (-g > exportAbove) {
        surplus = (exported != 0 && surplus) || pv - other > chargeRoom;
        exported++;
      } else {
        exported = 0;
      }
      if (mayBeBoth) {
        imported = g > importAbove ? imported + 1 : 0;
      }
      pvAll += pv;
      otherAll += other;
      gridAll += Math.abs(g);
      batteryAll += Math.abs(batt);
      if (lvl < low) {
        low = lvl;
      }
      if (g < 0 && warms) {
        unused -= g;
      }
      temp = temp * coolingShare + heat;
      if (seen != null) {
        seen.row(first + at, false, 0, batt, g, capacity == 0 ? 0 : lvl / capacity, temp);
      }
      if (warms ? temp >= target : temp <= closesAt) {
        warms = thermostat(temp, first + at);
      }
    }
    level = lvl;
    battery = batt;
    lowest = low;
    celsius = temp;
    exportRun = exported;
    importRun = imported;
    trueSurplusSeen = surplus;
    pvTotal = pvAll;
    otherTotal = otherAll;
    gridMoved = gridAll;
    batteryMoved = batteryAll;
    unusedTotal = unused;
    ringAt = memoryAt;
    memorySum = memoryAll;
    return at;
  }

  /**
   * Rows from {@code i} on until the contact opens. How long power has been exported is not
   * counted: nothing asks while the contact is closed.
   *
   * @param first step of the row 0
   * @return the row in which it opens, or {@code to}
   */
  private int whileClosed(float[] pvs, float[] others, int i, int to, long first) {
    double lvl = level;
    double batt = battery;
    double low = lowest;
    double temp = celsius;
    boolean warms = heating;
    double taken = warms ? loadWatts : 0;
    double heat = roomShare + taken * kelvinPerWatt;
    long onToday = dayOnRows;
    long imported = importRun;
    double pvAll = pvTotal;
    double otherAll = otherTotal;
    double gridAll = gridMoved;
    double batteryAll = batteryMoved;
    double takenNow = 0;
    double byPv = 0;
    double byBattery = 0;
    double[] memory = ring;
    int memoryAt = ringAt;
    double memoryAll = memorySum;
    Trace seen = trace;
    boolean opens = false;
    int at = i;
    for (; at < to; at++) {
      if (imported >= stopRows || lvl < levelBelow || onToday >= longestRows) {
        dayOnRows = onToday;
        importRun = imported;
        opens = !decide(lvl, first + at);
        if (opens) {
          break;
        }
      }
      double pv = pvs[at];
      double other = others[at];
      double net = other + taken - pv;
      double demand = net;
      if (net > discharge) {
        demand = discharge;
      } else if (net < -charge) {
        demand = -charge;
      }
      boolean atAnEnd = lvl < nearFloor || lvl > nearFull;
      double chargeRoom = charge;
      double most = discharge;
      if (atAnEnd) {
        chargeRoom = chargeRoom(lvl);
        most = most(lvl);
        if (demand > most) {
          demand = most;
        }
        if (demand < -chargeRoom) {
          demand = -chargeRoom;
        }
      }
      if (ramp) {
        memoryAll += demand - memory[memoryAt];
        memory[memoryAt] = demand;
        memoryAt = memoryAt + 1 == memory.length ? 0 : memoryAt + 1;
        batt = memoryAll * ringShare;
      } else {
        batt += (demand - batt) * alpha;
      }
      if (atAnEnd) {
        if (batt > most) {
          batt = most;
        }
        if (batt < -chargeRoom) {
          batt = -chargeRoom;
        }
      }
      double g = net - batt;
      lvl -= batt * hours;
      imported = g > importAbove ? imported + 1 : 0;
      pvAll += pv;
      otherAll += other;
      gridAll += Math.abs(g);
      batteryAll += Math.abs(batt);
      if (lvl < low) {
        low = lvl;
      }
      onToday++;
      takenNow += taken;
      // first what nobody else needed, then the battery, then the grid
      double free = pv - other;
      double foreign = taken;
      double fromBattery = batt;
      if (free > 0) {
        double fromPv = free < taken ? free : taken;
        byPv += fromPv;
        foreign -= fromPv;
      } else {
        fromBattery += free;
      }
      if (fromBattery > foreign) {
        byBattery += foreign;
      } else if (fromBattery > 0) {
        byBattery += fromBattery;
      }
      temp = temp * coolingShare + heat;
      if (seen != null) {
        seen.row(first + at, true, taken, batt, g, capacity == 0 ? 0 : lvl / capacity, temp);
      }
      if (warms ? temp >= target : temp <= closesAt) {
        warms = thermostat(temp, first + at);
        taken = warms ? loadWatts : 0;
        heat = roomShare + taken * kelvinPerWatt;
      }
    }
    account(takenNow, byPv, byBattery);
    takenTotal += takenNow;
    level = lvl;
    battery = batt;
    lowest = low;
    celsius = temp;
    dayOnRows = onToday;
    importRun = imported;
    pvTotal = pvAll;
    otherTotal = otherAll;
    gridMoved = gridAll;
    batteryMoved = batteryAll;
    ringAt = memoryAt;
    memorySum = memoryAll;
    if (opens) {
      turn(false, first + at);
    }
    return at;
  }

  /** What the battery can still take in a row, W. */
  private double chargeRoom(double lvl) {
    double upwards = (capacity - lvl) * perHours;
    return upwards < charge ? upwards : charge;
  }

  /** What it can still give, W. */
  private double most(double lvl) {
    double down = (lvl - floor) * perHours;
    return down < 0 ? 0 : down;
  }

  /** Summed anew for each block, so that no rounding error grows over a year. */
  private static double sum(double[] values) {
    double sum = 0;
    for (double value : values) {
      sum += value;
    }
    return sum;
  }

  /** Turns it; true if it now lets the load heat. */
  private boolean thermostat(double temp, long now) {
    hottest = Math.max(hottest, temp);
    if (heating && targetStep < 0) {
      targetStep = now;
    }
    heating = !heating;
    return heating;
  }

  /** Books what the load took while the contact was closed. */
  private void account(double taken, double byPv, double byBattery) {
    runLoad += taken;
    runPv += byPv;
    runBattery += byBattery;
  }

  private void turn(boolean on, long now) {
    if (on) {
      runStart = now;
      runByWindow = inWindow;
      runFalse = !inWindow && !trueSurplusSeen;
    } else {
      endRun(now);
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
            // a difference of sums: rounding must not make it negative
            Math.max(0, runLoad - runPv - runBattery) * hours));
    closedRows += end - runStart;
    loadSum += runLoad;
    runPv = 0;
    runBattery = 0;
    runLoad = 0;
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
