package org.coilwright.diagram;

import java.util.List;
import org.coilwright.drawing.Picture;
import org.coilwright.drawing.Shape;

/** A sheet as the pieces it is made of. */
record Sheet(double width, double height, String title, List<Item> items) {
  Picture picture() {
    List<Shape> shapes = items.stream().flatMap(i -> i.shapes().stream()).toList();
    return new Picture(width, height, title, shapes);
  }
}
