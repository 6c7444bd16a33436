// Over 250 lines: the two charts of a situation and what stands along their edge, drawn as one.
package org.coilwright.behaviour;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.coilwright.behaviour.Recording.Moment;
import org.coilwright.drawing.Chart;
import org.coilwright.drawing.Chart.Axis;
import org.coilwright.drawing.Chart.Mark;
import org.coilwright.drawing.Chart.Series;
import org.coilwright.drawing.Chart.Tick;
import org.coilwright.drawing.Picture;
import org.coilwright.drawing.Shape;
import org.coilwright.drawing.Shape.Anchor;
import org.coilwright.drawing.Shape.Point;
import org.coilwright.drawing.Shape.Stroke;

/** Draws rehearsed situations: power over time, and below it water and battery. */
public final class RehearsalPicture {
  /** Width and heights for a screen, in points. */
  private static final Size SCREEN = new Size(760, 280, 170);

  /** The same for a page of a checklist. */
  private static final Size PAGE = new Size(504, 230, 150);

  private static final double HEADING = 30;
  private static final double TEXT_SIZE = 12;
  private static final double SECONDS_PER_HOUR = 3600;
  private static final double HOURS_PER_DAY = 24;
  private static final double PER_KILO = 1000;

  /** Runs nearer to each other than this share of the picture are one mark that counts them. */
  private static final double APART = 1.0 / 120;

  /** The share of the picture that the words at a mark take. */
  private static final double WORDS = 0.2;

  private RehearsalPicture() {}

  private record Size(double width, double power, double level) {}

  /** The situations of {@link #shown}, one below the other. */
  public static Picture of(Stage stage, List<Rehearsed> all) {
    List<Rehearsed> shown = shown(all);
    List<Shape> shapes = new ArrayList<>();
    double y = 0;
    for (Rehearsed r : shown) {
      y = draw(shapes, y, stage, r, SCREEN);
    }
    return picture(stage, shown, shapes, SCREEN, y);
  }

  /** The same situations, each on a picture of its own that fits a page. */
  public static List<Picture> onPages(Stage stage, List<Rehearsed> all) {
    List<Picture> pictures = new ArrayList<>();
    for (Rehearsed r : shown(all)) {
      List<Shape> shapes = new ArrayList<>();
      double height = draw(shapes, 0, stage, r, PAGE);
      pictures.add(picture(stage, List.of(r), shapes, PAGE, height));
    }
    return pictures;
  }

  /**
   * The situations that are drawn: the first, and one more with a false start if there is one. The
   * large load that stops in the evening comes before all others, as it is what can be tried on
   * site.
   */
  public static List<Rehearsed> shown(List<Rehearsed> all) {
    List<Rehearsed> shown = new ArrayList<>(List.of(all.get(0)));
    List<Rehearsed> falsely =
        all.stream().skip(1).filter(r -> !r.tally().falseStarts().isEmpty()).toList();
    falsely.stream()
        .filter(r -> r.situation().name().equals(Situation.EVENING_STEP))
        .findFirst()
        .or(() -> falsely.stream().findFirst())
        .ifPresent(shown::add);
    return shown;
  }

  private static Picture picture(
      Stage stage, List<Rehearsed> shown, List<Shape> shapes, Size size, double height) {
    String names = String.join(", ", shown.stream().map(r -> r.situation().name()).toList());
    String title = "%s rehearsed: %s".formatted(stage.output(), names);
    return new Picture(size.width(), height, title, List.copyOf(shapes));
  }

  /** What a picture shows, in a few words. */
  public static String words(Stage stage, Rehearsed r) {
    int starts = r.tally().runs().size();
    return "%s: %s of %s, %s false"
        .formatted(
            r.situation().name(),
            starts == 1 ? "1 start" : starts + " starts",
            stage.output(),
            r.tally().falseStarts().size());
  }

  private static double draw(List<Shape> shapes, double top, Stage stage, Rehearsed r, Size size) {
    shapes.add(
        new Shape.Label(new Point(8, top + 20), words(stage, r), TEXT_SIZE, Anchor.START, false));
    double y = top + HEADING;
    List<Moment> moments = r.recording().moments();
    power(r, moments).draw(shapes, 0, y, size.width(), size.power());
    y += size.power();
    Optional<Chart> levels = levels(stage, r, moments);
    if (levels.isPresent()) {
      levels.get().draw(shapes, 0, y, size.width(), size.level());
      y += size.level();
    }
    return y + 10;
  }

  private static Chart power(Rehearsed r, List<Moment> moments) {
    double high = 0;
    double low = 0;
    for (Moment m : moments) {
      high =
          Math.max(high, Math.max(Math.max(m.pv(), m.other()), Math.max(m.load(), m.mostImport())));
      low = Math.min(low, -m.mostExport());
    }
    List<Series> series = new ArrayList<>();
    band(r, moments).ifPresent(series::add);
    series.addAll(
        List.of(
            series(r, moments, "controlled load", Moment::load, Stroke.of(1, 0.82), true),
            series(r, moments, "sun", Moment::pv, Stroke.of(1.6, 0.1), false),
            series(r, moments, "other load", Moment::other, Stroke.dashed(1.2, 0.1, 5, 2), false),
            series(
                r,
                moments,
                "import +, export −",
                RehearsalPicture::meter,
                Stroke.of(0.8, 0.45),
                false),
            series(
                r,
                moments,
                "battery gives +",
                Moment::battery,
                Stroke.dashed(1, 0.45, 1, 2),
                false)));
    return new Chart(
        time(r),
        Axis.round("power, kW", low / PER_KILO, high / PER_KILO),
        Optional.empty(),
        series,
        marks(r));
  }

  /** A short spike of export is what matters here: a mean would hide it. */
  private static double meter(Moment m) {
    return m.mostExport() > 0 && m.mostImport() == 0 ? -m.mostExport() : m.grid();
  }

  /** Where import and export alternate within a moment, from the one to the other. */
  private static Optional<Series> band(Rehearsed r, List<Moment> moments) {
    List<Point> points = new ArrayList<>();
    boolean any = false;
    for (Moment m : moments) {
      double at = clock(r, m.seconds());
      boolean both = m.mostExport() > 0 && m.mostImport() > 0;
      any |= both;
      points.add(new Point(at, (both ? -m.mostExport() : meter(m)) / PER_KILO));
      if (both) {
        points.add(new Point(at, m.mostImport() / PER_KILO));
      }
    }
    return any
        ? Optional.of(
            new Series("import and export in turn", points, Stroke.of(0.8, 0.8), false, false))
        : Optional.empty();
  }

  private static List<Mark> marks(Rehearsed r) {
    double apart = APART * r.tally().steps();
    List<List<Run>> together = new ArrayList<>();
    for (Run run : r.tally().runs()) {
      List<Run> last = together.isEmpty() ? List.of() : together.get(together.size() - 1);
      if (last.isEmpty() || run.startStep() - last.get(last.size() - 1).endStep() > apart) {
        together.add(new ArrayList<>());
      }
      together.get(together.size() - 1).add(run);
    }
    List<Mark> marks = new ArrayList<>();
    double room = Double.NEGATIVE_INFINITY;
    for (List<Run> runs : together) {
      long falsely = runs.stream().filter(Run::falseStart).count();
      boolean first = marks.isEmpty() || (falsely > 0 && marks.stream().noneMatch(Mark::pointed));
      String text = falsely > 0 ? "false start" : "contact closed";
      if (runs.size() > 1) {
        text =
            "%s starts%s"
                .formatted(runs.size(), falsely > 0 ? ", %s false".formatted(falsely) : "");
      }
      boolean worded = (first || runs.size() > 1) && runs.get(0).startStep() >= room;
      if (worded) {
        room = runs.get(0).startStep() + WORDS * r.tally().steps();
      }
      marks.add(
          new Mark(
              hours(r, runs.get(0).startStep()),
              hours(r, runs.get(runs.size() - 1).endStep()),
              worded ? text : "",
              falsely > 0 ? 0 : 0.35,
              falsely > 0,
              runs.size() > 1));
    }
    return marks;
  }

  private static Optional<Chart> levels(Stage stage, Rehearsed r, List<Moment> moments) {
    boolean water = stage.scene().plant().water().isPresent();
    boolean battery = stage.scene().plant().battery().isPresent();
    if (!water && !battery) {
      return Optional.empty();
    }
    Axis percent = Axis.round("battery level, %", 0, 100);
    List<Series> series = new ArrayList<>();
    double hottest = 0;
    if (water) {
      hottest = moments.stream().mapToDouble(Moment::celsius).max().orElse(1);
      series.add(
          series(r, moments, "water", m -> m.celsius() * PER_KILO, Stroke.of(1.6, 0.1), false));
    }
    if (battery) {
      Series level =
          series(
              r,
              moments,
              "battery",
              m -> m.level() * 100 * PER_KILO,
              Stroke.dashed(1.2, 0.35, 5, 2),
              false);
      series.add(new Series(level.name(), level.points(), level.stroke(), water, false));
    }
    return Optional.of(
        new Chart(
            time(r),
            water ? Axis.round("water, °C", 0, hottest) : percent,
            water && battery ? Optional.of(percent) : Optional.empty(),
            List.copyOf(series),
            List.of()));
  }

  private static Series series(
      Rehearsed r,
      List<Moment> moments,
      String name,
      ToDoubleFunction<Moment> value,
      Stroke stroke,
      boolean filled) {
    List<Point> points =
        moments.stream()
            .map(m -> new Point(clock(r, m.seconds()), value.applyAsDouble(m) / PER_KILO))
            .toList();
    return new Series(name, points, stroke, false, filled);
  }

  private static double hours(Rehearsed r, long step) {
    return clock(r, step * r.secondsPerRow());
  }

  private static double clock(Rehearsed r, double seconds) {
    return (r.recording().firstMillisOfDay() / PER_KILO + seconds) / SECONDS_PER_HOUR;
  }

  /** Hours of the day, or days where there are more than two. */
  private static Axis time(Rehearsed r) {
    double from = hours(r, 0);
    double to = hours(r, r.tally().steps());
    boolean days = to - from > 2 * HOURS_PER_DAY;
    double[] steps = {0.25, 0.5, 1, 2, 3, 6, 12, 24, 48, 120, 240, 720, 1440};
    double step = steps[steps.length - 1];
    for (int i = steps.length - 1; i >= 0; i--) {
      if ((to - from) / steps[i] <= 14) {
        step = steps[i];
      }
    }
    List<Tick> ticks = new ArrayList<>();
    for (double at = Math.floor(from / step + 1e-9) * step; at < to + step - 1e-9; at += step) {
      ticks.add(
          new Tick(
              at,
              days
                  ? String.format(Locale.ROOT, "%.0f", at / HOURS_PER_DAY)
                  : String.format(
                      Locale.ROOT,
                      "%02d:%02d",
                      (int) (at % HOURS_PER_DAY),
                      (int) Math.round(at % 1 * 60))));
    }
    return new Axis(days ? "days since the first midnight" : "time of day, h:min", ticks);
  }
}
