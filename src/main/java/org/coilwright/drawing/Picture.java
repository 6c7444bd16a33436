package org.coilwright.drawing;

import java.util.List;

/**
 * A picture in greys on white.
 *
 * @param width in points
 * @param height in points
 * @param title what it is, for those who do not see it
 * @param shapes from the lowest to the topmost
 */
public record Picture(double width, double height, String title, List<Shape> shapes) {
  /** Its shapes, moved. */
  public List<Shape> moved(double dx, double dy) {
    return shapes.stream().map(s -> s.moved(dx, dy)).toList();
  }
}
