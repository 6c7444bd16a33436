package org.coilwright.bench;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.coilwright.behaviour.Battery;
import org.coilwright.behaviour.Battery.Settling;
import org.coilwright.behaviour.Feed;
import org.coilwright.behaviour.Plant;
import org.coilwright.behaviour.Settings;
import org.coilwright.behaviour.Water;

/** Thirty days of seconds with clouds and large loads, handed out again and again. */
final class Months implements Feed {
  private static final int DAY = 86_400;
  private static final int MONTH = 30 * DAY;

  private final long rows;
  private final float[] pv = new float[MONTH];
  private final float[] other = new float[MONTH];
  private long at;

  Months(int days) {
    rows = (long) days * DAY;
    Random random = new Random(365);
    double cloud = 1;
    double load = 400;
    for (int i = 0; i < MONTH; i++) {
      if (random.nextInt(400) == 0) {
        cloud = random.nextBoolean() ? 1 : 0.25;
      }
      if (random.nextInt(900) == 0) {
        load = random.nextInt(8) == 0 ? 7000 : 250 + random.nextInt(900);
      }
      double sun = Math.sin(Math.PI * (i % DAY - 21_600) / 50_400);
      pv[i] = (float) Math.max(0, 9000 * sun * cloud);
      other[i] = (float) load;
    }
  }

  static Plant plant() {
    Battery battery = new Battery(10_000, 6000, 5000, 6, Settling.RAMP, 0.15, 0.6);
    List<Water.DrawOff> drawOffs =
        List.of(new Water.DrawOff(25_200, 75, 12), new Water.DrawOff(68_400, 75, 12));
    Water water = new Water(300, 12, 60, 5, 2.4, 20, drawOffs, 4186);
    return new Plant(3000, Optional.of(battery), Optional.of(water));
  }

  static Settings settings() {
    return new Settings(
        OptionalDouble.of(3400),
        60,
        OptionalDouble.of(300),
        20,
        OptionalDouble.of(0.4),
        600,
        OptionalDouble.of(18_000),
        List.of());
  }

  @Override
  public int stepMillis() {
    return 1000;
  }

  @Override
  public int firstMillisOfDay() {
    return 0;
  }

  @Override
  public int next(float[] pvOut, float[] otherOut) {
    int from = (int) (at % MONTH);
    int n = (int) Math.min(Math.min(pvOut.length, MONTH - from), rows - at);
    System.arraycopy(pv, from, pvOut, 0, n);
    System.arraycopy(other, from, otherOut, 0, n);
    at += n;
    return n;
  }

  @Override
  public void rewind() {
    at = 0;
  }
}
