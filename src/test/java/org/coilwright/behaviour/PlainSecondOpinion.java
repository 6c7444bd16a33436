package org.coilwright.behaviour;

import java.util.ArrayList;
import java.util.List;

/**
 * The same settings and plant written a second time, as plainly as possible and from the
 * description alone: whole histories are kept and looked back over, nothing is counted along.
 */
final class PlainSecondOpinion {
  final List<Boolean> closed = new ArrayList<>();
  final List<Double> grid = new ArrayList<>();
  final List<Double> level = new ArrayList<>();
  final List<Long> starts = new ArrayList<>();
  final List<Long> falseStarts = new ArrayList<>();
  private final List<Double> demand = new ArrayList<>();
  private final List<Boolean> trueSurplus = new ArrayList<>();

  PlainSecondOpinion(Columns feed, Plant plant, Settings s) {
    double dt = feed.stepMillis() / 1000.0;
    Battery b = plant.battery().orElseThrow();
    double stored = b.startFraction() * b.capacityWh();
    double floor = b.floorFraction() * b.capacityWh();
    for (int k = 0; k < feed.rows(); k++) {
      double secondOfDay = k * dt % 86_400;
      boolean before = k > 0 && closed.get(k - 1);
      boolean now = decide(k, dt, secondOfDay, before, stored / b.capacityWh(), s);
      if (now && !before) {
        starts.add((long) k);
        int needed = Math.max(1, (int) Math.ceil(s.startAfterSeconds() / dt - 1e-9));
        boolean window = s.windows().stream().anyMatch(w -> w.holds((int) secondOfDay));
        if (!window && trueSurplus.subList(streakStart(k, s), k).stream().noneMatch(t -> t)) {
          falseStarts.add((long) k);
        }
        if (k < needed && !window) {
          throw new IllegalStateException("started before it could have confirmed");
        }
      }
      closed.add(now);
      double load = now ? plant.loadWatts() : 0;
      double net = feed.other(k) + load - feed.pv(k);
      double canTake = Math.min(b.chargeWatts(), (b.capacityWh() - stored) * 3600 / dt);
      double canGive = Math.max(0, (stored - floor) * 3600 / dt);
      double wanted =
          Math.max(
              -Math.min(b.chargeWatts(), canTake),
              Math.min(Math.min(b.dischargeWatts(), canGive), net));
      demand.add(wanted);
      int memory = (int) Math.max(1, Math.round(b.settlesInSeconds() / dt));
      double given = 0;
      for (int j = Math.max(0, k - memory + 1); j <= k; j++) {
        given += demand.get(j) / memory;
      }
      given = Math.max(-canTake, Math.min(canGive, given));
      trueSurplus.add(feed.pv(k) - feed.other(k) - canTake > 0);
      grid.add(net - given);
      stored -= given * dt / 3600;
      level.add(stored / b.capacityWh());
    }
  }

  private int streakStart(int k, Settings s) {
    int start = k;
    while (start > 0
        && -grid.get(start - 1) > s.exportAboveWatts().orElseThrow()
        && (start == k || closed.get(start - 1).equals(closed.get(k - 1)))) {
      start--;
    }
    return start;
  }

  private boolean decide(
      int k, double dt, double secondOfDay, boolean before, double levelNow, Settings s) {
    if (s.longestPerDaySeconds().isPresent()) {
      int sinceMidnight = (int) Math.min(k, Math.round(secondOfDay / dt));
      long closedToday = closed.subList(k - sinceMidnight, k).stream().filter(c -> c).count();
      if (closedToday * dt >= s.longestPerDaySeconds().getAsDouble() - 1e-6) {
        return false;
      }
    }
    if (s.windows().stream().anyMatch(w -> w.holds((int) secondOfDay))) {
      return true;
    }
    int run = 0;
    while (run < k && closed.get(k - 1 - run)) {
      run++;
    }
    if (before && run * dt < s.shortestRunSeconds() - 1e-6) {
      return true;
    }
    if (levelNow < s.batteryBelowFraction().orElse(-1)
        || lasted(k, dt, s.stopAfterSeconds(), g -> g > s.importAboveWatts().orElseThrow())) {
      return false;
    }
    return before
        || lasted(k, dt, s.startAfterSeconds(), g -> -g > s.exportAboveWatts().orElseThrow());
  }

  /** True if the readings since the last change of the contact hold for long enough up to now. */
  private boolean lasted(int k, double dt, double seconds, java.util.function.DoublePredicate p) {
    int count = 0;
    while (count < k
        && p.test(grid.get(k - 1 - count))
        && closed.get(k - 1 - count).equals(closed.get(k - 1))) {
      count++;
    }
    return count >= Math.max(1, Math.ceil(seconds / dt - 1e-9));
  }
}
