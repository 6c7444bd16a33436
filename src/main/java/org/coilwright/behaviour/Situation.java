package org.coilwright.behaviour;

import java.util.List;
import java.util.Random;
import java.util.function.IntToDoubleFunction;

/**
 * A stretch of time that shows what settings are worth. The shapes are our own; only the figures of
 * the netlist go into them.
 *
 * @param name a few words
 * @param tells one sentence about what happens
 * @param feed a second a row
 * @param startLevel battery level to begin with, 0 to 1
 * @param passing true if clouds take the sun away from a load that has just begun, whatever the
 *     settings
 */
public record Situation(String name, String tells, Feed feed, double startLevel, boolean passing) {
  /** Name of {@link #eveningStep}. */
  static final String EVENING_STEP = "evening step";

  private static final int DAY = 86_400;
  private static final int HOUR = 3600;
  private static final int SUNRISE = 6 * HOUR;
  private static final int SUNSET = 20 * HOUR;
  private static final double MIDDLE = 0.6;
  private static final double HIGH = 0.8;

  /** How much a passing cloud leaves, and how long clouds and gaps last at most, in seconds. */
  private static final double UNDER_CLOUD = 0.25;

  private static final int LONGEST_CLOUD = 900;

  /** The same clouds each time. */
  private static final long CLOUD_SEED = 4711;

  /** All the built-in situations for a scene. */
  public static List<Situation> of(Scene scene) {
    double base = scene.baseLoadWatts();
    double step = scene.largestStepWatts();
    List<Situation> steady = steadyDays(scene);
    return List.of(
        steady.get(0),
        brokenCloud(scene),
        eveningStep(scene),
        evening(
            "short load",
            "After dark the largest load runs for forty seconds.",
            t -> t >= 600 && t < 640 ? base + step : base),
        evening(
            "two in a row",
            "After dark the largest load runs for three minutes, twice, a minute apart.",
            t -> (t >= 600 && t < 780) || (t >= 840 && t < 1020) ? base + step : base),
        steady.get(1),
        steady.get(2));
  }

  /** Those of a whole day whose sun does not come and go. */
  public static List<Situation> steadyDays(Scene scene) {
    double peak = scene.pvPeakWatts();
    double base = scene.baseLoadWatts();
    double floor = scene.plant().battery().map(Battery::floorFraction).orElse(0.0);
    IntToDoubleFunction clear = t -> peak * sun(t);
    IntToDoubleFunction house = t -> base * livedIn(t);
    return List.of(
        day(
            "clear day",
            "Sun from six in the morning to eight in the evening, the house as usual.",
            clear,
            house,
            MIDDLE),
        batteryFull(clear, house),
        day(
            "battery empty",
            "A clear day that begins with the battery at its floor.",
            clear,
            house,
            floor));
  }

  /**
   * A day from the moment on at which the sun covers the house. Begun at midnight, a full battery
   * would be drained by morning and would never meet a sun that rises slowly, which is what shows
   * whether a load starts on less than it draws.
   */
  private static Situation batteryFull(IntToDoubleFunction pv, IntToDoubleFunction other) {
    int covers = SUNRISE;
    while (covers < SUNSET && pv.applyAsDouble(covers) < other.applyAsDouble(covers)) {
      covers++;
    }
    int first = covers < SUNSET ? covers : SUNRISE;
    return new Situation(
        "battery full",
        "A day and a night from when the sun covers the house, with the battery full by then.",
        Computed.of(
            DAY,
            first,
            t -> pv.applyAsDouble((first + t) % DAY),
            t -> other.applyAsDouble((first + t) % DAY)),
        1,
        false);
  }

  /** A day of clouds that pass: what asks most of the contacts. */
  public static Situation brokenCloud(Scene scene) {
    float[] clouds = clouds();
    return new Situation(
        "broken cloud",
        "The same day with clouds that pass within minutes.",
        Computed.of(
            DAY,
            0,
            t -> scene.pvPeakWatts() * sun(t) * clouds[t],
            t -> scene.baseLoadWatts() * livedIn(t)),
        MIDDLE,
        true);
  }

  /** The largest load stops after dark: what a battery that settles slowly is seen by. */
  public static Situation eveningStep(Scene scene) {
    double base = scene.baseLoadWatts();
    double step = scene.largestStepWatts();
    return evening(
        EVENING_STEP,
        "After dark the largest load runs for a quarter of an hour and stops at once.",
        t -> t >= 600 && t < 1500 ? base + step : base);
  }

  /** What was measured, begun with the battery neither full nor near its floor. */
  public static Situation measured(String name, Feed feed) {
    return new Situation(name, "As measured.", feed, MIDDLE, false);
  }

  /** The scene's plant as this situation begins with it. */
  public Plant begin(Plant plant) {
    return new Plant(
        plant.loadWatts(), plant.battery().map(b -> b.startingAt(startLevel)), plant.water());
  }

  private static Situation day(
      String name,
      String tells,
      IntToDoubleFunction pv,
      IntToDoubleFunction other,
      double startLevel) {
    return new Situation(name, tells, Computed.of(DAY, 0, pv, other), startLevel, false);
  }

  /** From nine until midnight: the battery has settled long before anything happens. */
  private static Situation evening(String name, String tells, IntToDoubleFunction other) {
    return new Situation(name, tells, Computed.of(3 * HOUR, 21 * HOUR, t -> 0, other), HIGH, false);
  }

  private static double sun(int second) {
    if (second <= SUNRISE || second >= SUNSET) {
      return 0;
    }
    return Math.sin(Math.PI * (second - SUNRISE) / (SUNSET - SUNRISE));
  }

  /** More in the morning, at noon and in the evening. */
  private static double livedIn(int second) {
    int hour = second / HOUR;
    boolean busy = (hour >= 6 && hour < 8) || hour == 12 || (hour >= 18 && hour < 22);
    return busy ? 2 : 1;
  }

  private static float[] clouds() {
    Random random = new Random(CLOUD_SEED);
    float[] share = new float[DAY];
    int t = 0;
    boolean covered = false;
    while (t < DAY) {
      int until = Math.min(DAY, t + 30 + random.nextInt(LONGEST_CLOUD));
      java.util.Arrays.fill(share, t, until, covered ? (float) UNDER_CLOUD : 1);
      covered = !covered;
      t = until;
    }
    return share;
  }

  /** Rows of one second from functions of the row. */
  private static final class Computed implements Feed {
    private final float[] pv;
    private final float[] other;
    private final int firstSecond;
    private int at;

    private Computed(float[] pv, float[] other, int firstSecond) {
      this.pv = pv;
      this.other = other;
      this.firstSecond = firstSecond;
    }

    static Computed of(
        int rows, int firstSecond, IntToDoubleFunction pv, IntToDoubleFunction other) {
      float[] a = new float[rows];
      float[] b = new float[rows];
      for (int i = 0; i < rows; i++) {
        a[i] = (float) pv.applyAsDouble(i);
        b[i] = (float) other.applyAsDouble(i);
      }
      return new Computed(a, b, firstSecond);
    }

    @Override
    public int stepMillis() {
      return Clock.MILLIS;
    }

    @Override
    public int firstMillisOfDay() {
      return firstSecond * Clock.MILLIS;
    }

    @Override
    public int next(float[] pvOut, float[] otherOut) {
      int n = Math.min(pvOut.length, pv.length - at);
      System.arraycopy(pv, at, pvOut, 0, n);
      System.arraycopy(other, at, otherOut, 0, n);
      at += n;
      return n;
    }

    @Override
    public void rewind() {
      at = 0;
    }
  }
}
