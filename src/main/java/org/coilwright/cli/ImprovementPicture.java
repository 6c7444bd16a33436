package org.coilwright.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.coilwright.behaviour.Improvement;
import org.coilwright.behaviour.Improvement.Cell;
import org.coilwright.behaviour.Stage;
import org.coilwright.drawing.Chart;
import org.coilwright.drawing.Chart.Axis;
import org.coilwright.drawing.Chart.Series;
import org.coilwright.drawing.Chart.Tick;
import org.coilwright.drawing.Picture;
import org.coilwright.drawing.Shape;
import org.coilwright.drawing.Shape.Anchor;
import org.coilwright.drawing.Shape.Point;
import org.coilwright.drawing.Shape.Stroke;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;

/** Draws false starts against surplus left unused, over the confirm time, a line a threshold. */
final class ImprovementPicture {
  private static final double WIDTH = 760;
  private static final double HEIGHT = 240;
  private static final double HEADING = 30;
  private static final double TEXT_SIZE = 12;
  private static final double PER_KILO = 1000;

  private static final List<Stroke> STROKES =
      List.of(
          Stroke.of(2, 0.1),
          Stroke.dashed(1.6, 0.1, 7, 3),
          Stroke.dashed(1.6, 0.1, 2, 2),
          Stroke.of(1.2, 0.55),
          Stroke.dashed(1.2, 0.4, 9, 3, 2, 3),
          Stroke.dashed(1.2, 0.55, 4, 4));

  private ImprovementPicture() {}

  static Picture of(Stage stage, Improvement improvement) {
    List<Shape> shapes = new ArrayList<>();
    String heading = "%s: other settings in the same situations".formatted(stage.output());
    shapes.add(new Shape.Label(new Point(8, 20), heading, TEXT_SIZE, Anchor.START, false));
    chart(stage, improvement, "false starts", c -> c.falseStarts())
        .draw(shapes, 0, HEADING, WIDTH, HEIGHT);
    chart(stage, improvement, "surplus left unused, kWh", c -> c.unusedWh() / PER_KILO)
        .draw(shapes, 0, HEADING + HEIGHT, WIDTH, HEIGHT);
    return new Picture(WIDTH, HEADING + 2 * HEIGHT + 10, heading, List.copyOf(shapes));
  }

  /** Confirm times stand evenly, as in the table: the short ones are those that matter. */
  private static Chart chart(
      Stage stage, Improvement improvement, String label, ToDoubleFunction<Cell> value) {
    List<Double> thresholds = ImprovementText.shown(stage, improvement);
    List<Tick> ticks = new ArrayList<>();
    for (int i = 0; i < improvement.confirms().size(); i++) {
      ticks.add(new Tick(i, seconds(improvement.confirms().get(i))));
    }
    List<Series> series = new ArrayList<>();
    double high = 0;
    for (int t = 0; t < thresholds.size(); t++) {
      List<Point> points = new ArrayList<>();
      for (int i = 0; i < ticks.size(); i++) {
        Cell cell = improvement.cell(improvement.confirms().get(i), thresholds.get(t));
        double y = value.applyAsDouble(cell);
        points.add(new Point(i, y));
        high = Math.max(high, y);
      }
      String name = "above " + Printed.of(thresholds.get(t), Dimension.POWER);
      series.add(new Series(name, points, STROKES.get(t % STROKES.size()), false, false));
    }
    return new Chart(
        new Axis("confirm time, s", ticks),
        Axis.round(label, 0, Math.max(high, 1)),
        Optional.empty(),
        List.copyOf(series),
        List.of());
  }

  private static String seconds(double seconds) {
    return seconds == Math.rint(seconds) ? Long.toString((long) seconds) : Double.toString(seconds);
  }
}
