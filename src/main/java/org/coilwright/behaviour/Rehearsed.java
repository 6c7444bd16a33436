package org.coilwright.behaviour;

import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * A situation with what came of it.
 *
 * @param recording what can be drawn of it
 */
public record Rehearsed(Situation situation, Tally tally, Recording recording) {
  private static final long DAY = 86_400_000;

  /** Runs a situation with the settings of a scene, so that it can be drawn. */
  public static Rehearsed of(Situation situation, Scene scene) {
    Recording recording = new Recording(situation.feed());
    return of(situation, scene, recording, recording);
  }

  /** The same without what can be drawn: of a year of seconds the drawing is half the work. */
  public static Rehearsed undrawn(Situation situation, Scene scene) {
    return of(situation, scene, new Recording(situation.feed()), null);
  }

  private static Rehearsed of(
      Situation situation, Scene scene, Recording recording, @Nullable Trace trace) {
    Plant plant = situation.begin(scene.plant());
    return new Rehearsed(
        situation, Rehearsal.run(recording, plant, scene.settings(), trace), recording);
  }

  /** Time of the day at which a row begins, with the day if there are several: {@code 21:25:03}. */
  public String clock(long step) {
    long millis = recording.firstMillisOfDay() + step * tally.stepMillis();
    long second = millis % DAY / 1000;
    String time =
        String.format(Locale.ROOT, "%02d:%02d:%02d", second / 3600, second / 60 % 60, second % 60);
    return tally.steps() * tally.stepMillis() > DAY
        ? "day %s, %s".formatted(millis / DAY + 1, time)
        : time;
  }

  /** Seconds between two rows. */
  public double secondsPerRow() {
    return tally.stepMillis() / 1000.0;
  }

  /** How long the contact was closed, in seconds. */
  public double closedSeconds() {
    return tally.closedSteps() * secondsPerRow();
  }

  /** What the load took from generation that nobody else needed, Wh. */
  public double pvWh() {
    return tally.runs().stream().mapToDouble(Run::pvWh).sum();
  }

  /** What the load took from the battery, Wh. */
  public double batteryWh() {
    return tally.runs().stream().mapToDouble(Run::batteryWh).sum();
  }

  /** What the load took from the grid, Wh. */
  public double gridWh() {
    return tally.runs().stream().mapToDouble(Run::gridWh).sum();
  }

  /** True if it lasts a day or longer, so that starts a day mean something. */
  public boolean isWholeDays() {
    return tally.steps() * tally.stepMillis() >= DAY;
  }
}
