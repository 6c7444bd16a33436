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

  /** Rows at most until they are summed: what they draw then still lies in the nearest cache. */
  private static final int PIECE = 1024;

  /** Rows from which on it pays to say what the water comes to, and not to go there row by row. */
  private static final int LEAP = 32;

  /** Rows from which on it pays to leave out what only matters where the battery is at an end. */
  private static final int CALM = 64;

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

  private double memorySum;

  // what the rows of a stretch draw, W
  private final double[] given = new double[PIECE];
  private final double[] grid = new double[PIECE];

  // or what that comes to, where nobody asks for single rows
  private boolean isSummed;
  private double givenSize;
  private double gridSize;
  private double gridAll;

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

  private boolean decide() {
    boolean stop = importRun >= stopRows || level < levelBelow;
    if (dayOnRows >= longestRows) {
      return false;
    }
    if (inWindow) {
      return true;
    }
    if (closed && step - runStart < shortestRows) {
      return true;
    }
    if (stop) {
      return false;
    }
    return closed || exportRun >= startRows;
  }

  /**
   * Rows {@code from} to {@code to} with nothing happening by the clock in between, one stretch
   * after the other in which neither the contact nor the thermostat turns. What each row draws from
   * the battery and the grid is put down and summed afterwards: the step itself then has few enough
   * values to stay in registers.
   */
  private void rows(float[] pvs, float[] others, int from, int to) {
    double before = level;
    double gridMoved = 0;
    double batteryMoved = 0;
    double taken = 0;
    for (int i = from; i < to; ) {
      if (decide() != closed) {
        turn(!closed);
      }
      boolean warms = heating;
      int at = stretch(pvs, others, i, Math.min(to, i + PIECE));
      double exportAndImport = isSummed ? gridSize : moved(grid, at - i);
      gridMoved += exportAndImport;
      batteryMoved += isSummed ? givenSize : moved(given, at - i);
      if (closed) {
        dayOnRows += at - i;
        if (warms) {
          taken += loadWatts * (at - i);
          shareOut(pvs, others, i, at);
        }
      } else if (warms) {
        unusedSum += (exportAndImport - (isSummed ? gridAll : sum(grid, at - i))) / 2;
      }
      i = at;
    }
    hottest = Math.max(hottest, celsius);
    double pvTotal = sum(pvs, from, to);
    double otherTotal = sum(others, from, to);
    pvSum += pvTotal;
    otherSum += otherTotal;
    // what went in and out on balance follows from the books; only the movement must be summed
    double batteryTotal = (before - level) / hours;
    double gridTotal = otherTotal + taken - pvTotal - batteryTotal;
    importSum += (gridMoved + gridTotal) / 2;
    exportSum += (gridMoved - gridTotal) / 2;
    dischargeSum += (batteryMoved + batteryTotal) / 2;
    chargeSum += (batteryMoved - batteryTotal) / 2;
  }

  /**
   * Rows from {@code i} on, at least one, until the contact or the thermostat may turn. Only what
   * can turn the contact as it stands is asked after each row, and for how long power has been
   * exported and imported only where that is: it would be nothing at the moment when it is asked.
   *
   * @return the row after the last
   */
  private int stretch(float[] pvs, float[] others, int i, int to) {
    boolean mayClose = !closed && dayOnRows < longestRows;
    boolean mayOpen = closed && !inWindow && step - runStart >= shortestRows;
    double exporting = closed ? Double.POSITIVE_INFINITY : exportAbove;
    boolean counts = closed || mayBeBoth;
    long closesAfter = mayClose ? startRows : Long.MAX_VALUE;
    long opensAfter = mayOpen ? stopRows : Long.MAX_VALUE;
    double opensBelow = mayOpen ? levelBelow : Double.NEGATIVE_INFINITY;
    int end = closed ? i + (int) Math.min(to - i, rowsSurelyClosed(mayOpen)) : to;
    double hotAt = heating ? target : Double.POSITIVE_INFINITY;
    double coldAt = heating ? Double.NEGATIVE_INFINITY : closesAt;
    double taken = closed && heating ? loadWatts : 0;
    double heat = roomShare + taken * kelvinPerWatt;
    double temp = celsius;
    int far = trace == null ? rowsTo(heating ? hotAt : coldAt, temp, heat, end - i) : 0;
    boolean near = far < LEAP;
    if (!near) {
      end = i + far;
    }
    if (!near && !counts && ramp && trace == null) {
      int calm = rowsSurelyCalm(end - i);
      if (calm >= CALM) {
        int at = calm(pvs, others, i, i + calm, closesAfter);
        celsius = after(at - i, temp, heat);
        return at;
      }
    }
    isSummed = false;
    double lvl = level;
    double batt = battery;
    double low = lowest;
    long exported = exportRun;
    long imported = importRun;
    boolean surplus = trueSurplusSeen;
    double[] memory = ring;
    int memoryAt = ringAt;
    double memoryAll = i == 0 ? sum(ring, ring.length) : memorySum;
    Trace seen = trace;
    boolean turns = false;
    int at = i;
    while (at < end) {
      double pv = pvs[at];
      double other = others[at];
      double net = other + taken - pv;
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
      if (atAnEnd && batt > most) {
        // then it is at its floor, or was below: said, not calculated, so that no row waits for it
        batt = most;
        lvl = lvl > floor ? floor : lvl;
      } else if (atAnEnd && batt < -chargeRoom) {
        batt = -chargeRoom;
        lvl = chargeRoom < charge ? capacity : lvl + charge * hours;
      } else {
        lvl -= batt * hours;
      }
      double g = net - batt;
      given[at - i] = batt;
      grid[at - i] = g;
      if (lvl < low) {
        low = lvl;
      }
      if (near) {
        temp = temp * coolingShare + heat;
      }
      if (seen != null) {
        seen.row(step + at - i, closed, taken, batt, g, capacity == 0 ? 0 : lvl / capacity, temp);
      }
      if (-g > exporting) {
        surplus = (exported != 0 && surplus) || pv - other > chargeRoom;
        exported++;
      } else {
        exported = 0;
      }
      if (counts) {
        imported = g > importAbove ? imported + 1 : 0;
      }
      at++;
      if (near && (temp >= hotAt || temp <= coldAt)) {
        turns = true;
        break;
      }
      if ((exported >= closesAfter && lvl >= levelBelow)
          || imported >= opensAfter
          || lvl < opensBelow) {
        break;
      }
    }
    level = lvl;
    battery = batt;
    lowest = low;
    celsius = near ? temp : after(at - i, temp, heat);
    exportRun = exported;
    importRun = imported;
    trueSurplusSeen = surplus;
    ringAt = memoryAt;
    memorySum = memoryAll;
    step += at - i;
    if (turns) {
      thermostat();
    }
    return at;
  }

  /** For so many rows, at most {@code most}, the battery surely comes to no end of its own. */
  private int rowsSurelyCalm(int most) {
    double down = (level - nearFloor) / (discharge * hours);
    double up = (nearFull - level) / (charge * hours);
    double rows = Math.min(down, up) - 2;
    return rows > 0 ? (int) Math.min(most, rows) : 0;
  }

  /**
   * The same step as in {@link #stretch} while the contact is open and the battery at no end: it
   * takes and gives whatever it is asked for. No load takes part, so the rows are summed at once.
   *
   * @return the row after the last
   */
  private int calm(float[] pvs, float[] others, int i, int end, long closesAfter) {
    double lvl = level;
    double batt = battery;
    double low = lowest;
    long exported = exportRun;
    boolean surplus = trueSurplusSeen;
    double[] memory = ring;
    int memoryAt = ringAt;
    double memoryAll = i == 0 ? sum(ring, ring.length) : memorySum;
    double most = discharge;
    double room = charge;
    double exporting = exportAbove;
    double share = ringShare;
    double perRow = hours;
    double moves = 0;
    double passes = 0;
    double balance = 0;
    int at = i;
    while (at < end) {
      double net = (double) others[at] - pvs[at];
      double demand = net;
      if (net > most) {
        demand = most;
      } else if (net < -room) {
        demand = -room;
      }
      memoryAll += demand - memory[memoryAt];
      memory[memoryAt] = demand;
      memoryAt = memoryAt + 1 == memory.length ? 0 : memoryAt + 1;
      batt = memoryAll * share;
      lvl -= batt * perRow;
      double g = net - batt;
      moves += Math.abs(batt);
      passes += Math.abs(g);
      balance += g;
      at++;
      if (lvl < low) {
        low = lvl;
      }
      if (-g > exporting) {
        surplus = (exported != 0 && surplus) || -net > room;
        exported++;
        if (exported >= closesAfter && lvl >= levelBelow) {
          break;
        }
      } else {
        exported = 0;
      }
    }
    level = lvl;
    battery = batt;
    lowest = low;
    exportRun = exported;
    trueSurplusSeen = surplus;
    ringAt = memoryAt;
    memorySum = memoryAll;
    step += at - i;
    isSummed = true;
    givenSize = moves;
    gridSize = passes;
    gridAll = balance;
    return at;
  }

  /**
   * For so many rows, at most {@code most}, the water surely does not come to {@code limit}: with
   * the same heat all along its way is an exponential, or a straight line where it loses nothing.
   */
  private int rowsTo(double limit, double temp, double heat, int most) {
    double rows;
    if (coolingShare == 1) {
      rows = (limit - temp) / heat;
    } else {
      double rest = heat / (1 - coolingShare);
      rows = Math.log((limit - rest) / (temp - rest)) / Math.log(coolingShare);
    }
    // it never comes there: nothing heats, it moves away, or it rests before
    if (!(rows >= 0)) {
      rows = (heating ? temp < limit : temp > limit) ? most : 0;
    }
    return (int) Math.max(0, Math.min(most, rows - 2));
  }

  private double after(int rows, double temp, double heat) {
    if (coolingShare == 1) {
      return temp + rows * heat;
    }
    double rest = heat / (1 - coolingShare);
    return rest + (temp - rest) * Math.pow(coolingShare, rows);
  }

  /** For so many rows nothing but the meter, the battery and the clock can open it. */
  private long rowsSurelyClosed(boolean mayOpen) {
    long today = longestRows - dayOnRows;
    long shortest = runStart + shortestRows - step;
    return mayOpen || inWindow ? today : Math.min(today, shortest);
  }

  /** Books where the load's power came from: what nobody else needed, the battery, the grid. */
  private void shareOut(float[] pvs, float[] others, int from, int to) {
    double byPv = 0;
    double byBattery = 0;
    for (int at = from; at < to; at++) {
      double free = (double) pvs[at] - others[at];
      double foreign = loadWatts;
      double fromBattery = given[at - from];
      if (free > 0) {
        double fromPv = free < loadWatts ? free : loadWatts;
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
    }
    runLoad += loadWatts * (to - from);
    runPv += byPv;
    runBattery += byBattery;
  }

  /** What the battery can still take in a row, W. */
  private double chargeRoom(double lvl) {
    if (lvl == capacity) {
      return 0;
    }
    double upwards = (capacity - lvl) * perHours;
    return upwards < charge ? upwards : charge;
  }

  /** What it can still give, W. */
  private double most(double lvl) {
    return lvl <= floor ? 0 : (lvl - floor) * perHours;
  }

  /** Four sums, so that one addition need not wait for the one before. */
  private static double sum(double[] values, int n) {
    double a = 0;
    double b = 0;
    double c = 0;
    double d = 0;
    int i = 0;
    for (; i < n - 3; i += 4) {
      a += values[i];
      b += values[i + 1];
      c += values[i + 2];
      d += values[i + 3];
    }
    for (; i < n; i++) {
      a += values[i];
    }
    return a + b + (c + d);
  }

  private static double moved(double[] values, int n) {
    double a = 0;
    double b = 0;
    double c = 0;
    double d = 0;
    int i = 0;
    for (; i < n - 3; i += 4) {
      a += Math.abs(values[i]);
      b += Math.abs(values[i + 1]);
      c += Math.abs(values[i + 2]);
      d += Math.abs(values[i + 3]);
    }
    for (; i < n; i++) {
      a += Math.abs(values[i]);
    }
    return a + b + (c + d);
  }

  private static double sum(float[] values, int from, int to) {
    double a = 0;
    double b = 0;
    double c = 0;
    double d = 0;
    int i = from;
    for (; i < to - 3; i += 4) {
      a += values[i];
      b += values[i + 1];
      c += values[i + 2];
      d += values[i + 3];
    }
    for (; i < to; i++) {
      a += values[i];
    }
    return a + b + (c + d);
  }

  /** Turns it at the end of a row. */
  private void thermostat() {
    hottest = Math.max(hottest, celsius);
    if (heating && targetStep < 0) {
      targetStep = step - 1;
    }
    heating = !heating;
  }

  private void turn(boolean on) {
    if (on) {
      runStart = step;
      runByWindow = inWindow;
      runFalse = !inWindow && !trueSurplusSeen;
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
