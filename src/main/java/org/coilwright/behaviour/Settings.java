package org.coilwright.behaviour;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The switching settings, in watts and seconds.
 *
 * <p>What wins, strongest first: longest per day is reached (open); a fixed window (closed); the
 * shortest run is not over (stays closed); a stop condition (open, and no start); the start
 * condition (closed); otherwise the contact stays as it is. A threshold is crossed strictly above
 * or below it; a step that does not cross it resets its timer; a time of 0 acts at the first
 * reading.
 *
 * @param exportAboveWatts start above this export; empty: never starts on surplus
 * @param startAfterSeconds that the export must last
 * @param importAboveWatts stop above this import; empty: never stops on import
 * @param stopAfterSeconds that the import must last
 * @param batteryBelowFraction stop below this level; empty: never
 * @param shortestRunSeconds once closed it stays closed this long
 * @param longestPerDaySeconds closed at most this long a day; empty: no limit
 * @param windows fixed times in which the contact is closed
 */
public record Settings(
    OptionalDouble exportAboveWatts,
    double startAfterSeconds,
    OptionalDouble importAboveWatts,
    double stopAfterSeconds,
    OptionalDouble batteryBelowFraction,
    double shortestRunSeconds,
    OptionalDouble longestPerDaySeconds,
    List<Window> windows) {

  /**
   * A time of the day, end not included; {@code to} before {@code from} passes midnight.
   *
   * @param from second of the day, 0 to 86399
   * @param to second of the day, 0 to 86400
   */
  public record Window(int from, int to) {
    private static final int DAY = 86_400;

    private static final Pattern WRITTEN =
        Pattern.compile("\\s*(\\d{1,2}):(\\d{2})\\s*-\\s*(\\d{1,2}):(\\d{2})\\s*");

    /** Reads {@code 13:00-14:00}; empty if it is not that. {@code 24:00} ends a day. */
    public static Optional<Window> parse(String text) {
      Matcher m = WRITTEN.matcher(text);
      if (!m.matches()) {
        return Optional.empty();
      }
      int from = second(m.group(1), m.group(2));
      int to = second(m.group(3), m.group(4));
      boolean inADay = from >= 0 && from < DAY && to >= 0 && to <= DAY && from != to;
      return inADay ? Optional.of(new Window(from, to)) : Optional.empty();
    }

    private static int second(String hour, String minute) {
      int minutes = Integer.parseInt(minute);
      return minutes > 59 ? -1 : Integer.parseInt(hour) * 3600 + minutes * 60;
    }

    /** How long it lasts, in seconds. */
    public int seconds() {
      return Math.floorMod(to - from - 1, DAY) + 1;
    }

    /** Its beginning as it is written: {@code 13:00}. */
    public String fromWords() {
      return words(from);
    }

    /** Its end as it is written: {@code 14:00}. */
    public String toWords() {
      return words(to);
    }

    private static String words(int second) {
      return String.format(Locale.ROOT, "%02d:%02d", second / 3600, second / 60 % 60);
    }

    /** True if the second of the day lies in it. */
    public boolean holds(int secondOfDay) {
      return from <= to
          ? secondOfDay >= from && secondOfDay < to
          : secondOfDay >= from || secondOfDay < to;
    }
  }

  /** The same settings with another start. */
  public Settings withStart(double exportAbove, double afterSeconds) {
    return new Settings(
        OptionalDouble.of(exportAbove),
        afterSeconds,
        importAboveWatts,
        stopAfterSeconds,
        batteryBelowFraction,
        shortestRunSeconds,
        longestPerDaySeconds,
        windows);
  }

  /** The same settings with another level of the battery below which they stop, 0 to 1. */
  public Settings withBatteryBelow(double fraction) {
    return new Settings(
        exportAboveWatts,
        startAfterSeconds,
        importAboveWatts,
        stopAfterSeconds,
        OptionalDouble.of(fraction),
        shortestRunSeconds,
        longestPerDaySeconds,
        windows);
  }
}
