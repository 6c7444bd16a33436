package org.coilwright.drawing;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.stream.Collectors;

/** Writes a picture as SVG text. */
public final class Svg {
  private final StringBuilder out = new StringBuilder();
  private final Letters letters = Letters.load();

  private Svg() {}

  /** The picture as a whole file. */
  public static String of(Picture picture) {
    Svg svg = new Svg();
    svg.write(picture);
    return svg.out.toString();
  }

  private void write(Picture picture) {
    String width = number(picture.width());
    String height = number(picture.height());
    out.append(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%spt\" height=\"%spt\""
                .formatted(width, height))
        .append(" viewBox=\"0 0 %s %s\" role=\"img\"".formatted(width, height))
        .append(" font-family=\"'DejaVu Sans Condensed', 'DejaVu Sans', sans-serif\"")
        .append(" font-stretch=\"condensed\">\n")
        .append("<title>")
        .append(escaped(picture.title()))
        .append("</title>\n")
        .append("<rect width=\"100%\" height=\"100%\" fill=\"#ffffff\"/>\n");
    picture.shapes().forEach(this::shape);
    out.append("</svg>\n");
  }

  private void shape(Shape shape) {
    if (shape instanceof Shape.Path path) {
      path(path);
    } else if (shape instanceof Shape.Area area) {
      out.append(
          "<polygon points=\"%s\" fill=\"%s\"/>\n"
              .formatted(points(area.points()), grey(area.grey())));
    } else if (shape instanceof Shape.Label label) {
      label(label);
    }
  }

  private void path(Shape.Path path) {
    Shape.Stroke stroke = path.stroke();
    String dashes =
        stroke.dashes().isEmpty()
            ? ""
            : " stroke-dasharray=\"%s\""
                .formatted(
                    stroke.dashes().stream().map(Svg::number).collect(Collectors.joining(" ")));
    out.append(
        "<polyline points=\"%s\" fill=\"none\" stroke=\"%s\" stroke-width=\"%s\"%s/>\n"
            .formatted(points(path.points()), grey(stroke.grey()), number(stroke.width()), dashes));
  }

  private void label(Shape.Label label) {
    String anchor =
        switch (label.anchor()) {
          case START -> "start";
          case MIDDLE -> "middle";
          case END -> "end";
        };
    String x = number(label.at().x());
    String y = number(label.at().y());
    String turned = label.turned() ? " transform=\"rotate(-90 %s %s)\"".formatted(x, y) : "";
    // the width is given, so that a viewer with other letters keeps the text in its place
    String width = number(letters.width(label.text(), label.size()));
    out.append(
        "<text x=\"%s\" y=\"%s\" font-size=\"%s\" text-anchor=\"%s\" textLength=\"%s\"%s>%s</text>\n"
            .formatted(
                x,
                y,
                number(label.size()),
                anchor,
                width,
                " lengthAdjust=\"spacingAndGlyphs\"" + turned,
                escaped(label.text())));
  }

  private static String points(List<Shape.Point> points) {
    return points.stream()
        .map(p -> number(p.x()) + "," + number(p.y()))
        .collect(Collectors.joining(" "));
  }

  private static String grey(double grey) {
    int level = (int) Math.round(Math.max(0, Math.min(1, grey)) * 255);
    return "#%02x%02x%02x".formatted(level, level, level);
  }

  private static String number(double value) {
    BigDecimal rounded =
        BigDecimal.valueOf(value).setScale(2, RoundingMode.HALF_UP).stripTrailingZeros();
    return rounded.signum() == 0 ? "0" : rounded.toPlainString();
  }

  /** Characters that XML gives a meaning are written as entities; those it forbids are left out. */
  private static String escaped(String text) {
    StringBuilder escaped = new StringBuilder();
    text.codePoints()
        .filter(c -> c >= 0x20 && c != 0x7f && !(c >= 0xd800 && c <= 0xdfff) && c < 0xfffe)
        .forEach(
            c -> {
              switch (c) {
                case '<' -> escaped.append("&lt;");
                case '>' -> escaped.append("&gt;");
                case '&' -> escaped.append("&amp;");
                case '"' -> escaped.append("&quot;");
                default -> escaped.appendCodePoint(c);
              }
            });
    return escaped.toString();
  }
}
