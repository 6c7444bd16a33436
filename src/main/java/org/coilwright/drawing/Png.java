package org.coilwright.drawing;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.FontFormatException;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.geom.Path2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.zip.CRC32;
import javax.imageio.ImageIO;

/** Draws a picture into a PNG, two dots a point. The letters come with the program. */
public final class Png {
  private static final double DOTS_PER_POINT = 2;
  private static final double POINTS_PER_METRE = 72 / 0.0254;
  private static final byte[] PHYS = "pHYs".getBytes(StandardCharsets.US_ASCII);

  /** Signature, and the first chunk: its length, name, 13 bytes, checksum. */
  private static final int BEHIND_HEADER = 8 + 4 + 4 + 13 + 4;

  private static final String FONT = "/fonts/DejaVuSansCondensed.subset.ttf";

  private final Graphics2D ink;
  private final Font font;

  private Png(Graphics2D ink, Font font) {
    this.ink = ink;
    this.font = font;
  }

  /** The picture as a whole file. */
  public static byte[] of(Picture picture) {
    ImageIO.setUseCache(false);
    BufferedImage image =
        new BufferedImage(
            (int) Math.ceil(picture.width() * DOTS_PER_POINT),
            (int) Math.ceil(picture.height() * DOTS_PER_POINT),
            BufferedImage.TYPE_BYTE_GRAY);
    Graphics2D ink = image.createGraphics();
    ink.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    ink.setRenderingHint(
        RenderingHints.KEY_FRACTIONALMETRICS, RenderingHints.VALUE_FRACTIONALMETRICS_ON);
    ink.setColor(Color.WHITE);
    ink.fillRect(0, 0, image.getWidth(), image.getHeight());
    ink.scale(DOTS_PER_POINT, DOTS_PER_POINT);
    try (ByteArrayOutputStream out = new ByteArrayOutputStream()) {
      Png png = new Png(ink, font());
      picture.shapes().forEach(png::shape);
      ImageIO.write(image, "png", out);
      return withSize(out.toByteArray());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } finally {
      ink.dispose();
    }
  }

  /** Says how many dots make a metre, so that it prints in its true size (PNG, chunk pHYs). */
  private static byte[] withSize(byte[] png) {
    int perMetre = (int) Math.round(DOTS_PER_POINT * POINTS_PER_METRE);
    ByteBuffer chunk = ByteBuffer.allocate(4 + PHYS.length + 13);
    chunk.putInt(9).put(PHYS).putInt(perMetre).putInt(perMetre).put((byte) 1);
    CRC32 check = new CRC32();
    check.update(chunk.array(), 4, PHYS.length + 9);
    chunk.putInt((int) check.getValue());
    return ByteBuffer.allocate(png.length + chunk.capacity())
        .put(png, 0, BEHIND_HEADER)
        .put(chunk.array())
        .put(png, BEHIND_HEADER, png.length - BEHIND_HEADER)
        .array();
  }

  private static Font font() throws IOException {
    try (InputStream in = Png.class.getResourceAsStream(FONT)) {
      if (in == null) {
        throw new IOException("the font is missing: " + FONT);
      }
      return Font.createFont(Font.TRUETYPE_FONT, in);
    } catch (FontFormatException e) {
      throw new IOException("the font cannot be read: " + FONT, e);
    }
  }

  private void shape(Shape shape) {
    if (shape instanceof Shape.Path path) {
      ink.setColor(grey(path.stroke().grey()));
      ink.setStroke(stroke(path.stroke()));
      ink.draw(outline(path.points()));
    } else if (shape instanceof Shape.Area area) {
      ink.setColor(grey(area.grey()));
      Path2D outline = outline(area.points());
      outline.closePath();
      ink.fill(outline);
    } else if (shape instanceof Shape.Label label) {
      label(label);
    }
  }

  /** Letters are drawn as shapes, so that a picture does not depend on the screen's settings. */
  private void label(Shape.Label label) {
    var glyphs =
        font.deriveFont((float) label.size())
            .createGlyphVector(ink.getFontRenderContext(), label.text());
    double width = glyphs.getLogicalBounds().getWidth();
    double left =
        switch (label.anchor()) {
          case START -> 0;
          case MIDDLE -> -width / 2;
          case END -> -width;
        };
    AffineTransform before = ink.getTransform();
    ink.translate(label.at().x(), label.at().y());
    if (label.turned()) {
      ink.rotate(-Math.PI / 2);
    }
    ink.setColor(Color.BLACK);
    ink.fill(glyphs.getOutline((float) left, 0));
    ink.setTransform(before);
  }

  private static Path2D outline(List<Shape.Point> points) {
    Path2D outline = new Path2D.Double();
    outline.moveTo(points.get(0).x(), points.get(0).y());
    points.stream().skip(1).forEach(p -> outline.lineTo(p.x(), p.y()));
    return outline;
  }

  private static BasicStroke stroke(Shape.Stroke stroke) {
    float width = (float) stroke.width();
    if (stroke.dashes().isEmpty()) {
      return new BasicStroke(width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND);
    }
    float[] dashes = new float[stroke.dashes().size()];
    for (int i = 0; i < dashes.length; i++) {
      dashes[i] = stroke.dashes().get(i).floatValue();
    }
    return new BasicStroke(width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, dashes, 0);
  }

  private static Color grey(double grey) {
    float level = (float) Math.max(0, Math.min(1, grey));
    return new Color(level, level, level);
  }
}
