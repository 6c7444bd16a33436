package org.coilwright.diagram;

import java.util.List;
import org.coilwright.drawing.Picture;
import org.coilwright.drawing.Shape;

/**
 * A sheet as the pieces it is made of.
 *
 * @param shows what is on it, a line an area
 */
record DrawnSheet(String title, List<String> shows, List<Item> items) {
  Picture picture() {
    List<Shape> shapes = items.stream().flatMap(i -> i.shapes().stream()).toList();
    return new Picture(Diagram.WIDTH, Diagram.HEIGHT, title, shapes);
  }
}
