package org.coilwright.pdf;

import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;

/** A page as grey pixels of half a millimetre and more, so that edges may be smoothed anyhow. */
@SuppressWarnings("ArrayRecordComponent") // never compared as a whole
record PagePicture(int width, int height, double[] light) {
  /** Pixels to the inch. */
  static final int FINE = 36;

  /** Side of a block whose mean light is compared, in pixels. */
  private static final int BLOCK = 10;

  /**
   * Of any block, measured: another smoothing is below 0.035, a missing line or tick above 0.05.
   */
  static final double SMOOTHING = 0.045;

  /** Where the page had to be found on a screen first, half a pixel askew: measured below 0.07. */
  static final double ASKEW = 0.1;

  /** The picture in the size of a page. */
  static PagePicture of(BufferedImage image, int width, int height) {
    double[] light = new double[width * height];
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        light[y * width + x] = mean(image, x, y, width, height);
      }
    }
    return new PagePicture(width, height, light);
  }

  private static double mean(BufferedImage image, int x, int y, int width, int height) {
    int left = x * image.getWidth() / width;
    int right = Math.max(left + 1, (x + 1) * image.getWidth() / width);
    int top = y * image.getHeight() / height;
    int bottom = Math.max(top + 1, (y + 1) * image.getHeight() / height);
    double sum = 0;
    for (int j = top; j < bottom; j++) {
      for (int i = left; i < right; i++) {
        sum += grey(image, i, j);
      }
    }
    return sum / ((right - left) * (bottom - top));
  }

  /** Grey pictures as they are: their values as colours would be bent. */
  private static double grey(BufferedImage image, int x, int y) {
    if (image.getType() == BufferedImage.TYPE_BYTE_GRAY) {
      return image.getRaster().getSample(x, y, 0) / 255.0;
    }
    int rgb = image.getRGB(x, y);
    return (0.3 * (rgb >> 16 & 255) + 0.59 * (rgb >> 8 & 255) + 0.11 * (rgb & 255)) / 255;
  }

  /** The part of a screen that is lit like paper, if it is framed by something dark. */
  static BufferedImage paperIn(BufferedImage screen) {
    int middle = screen.getHeight() / 2;
    int left = 0;
    while (left < screen.getWidth() && grey(screen, left, middle) < 0.5) {
      left++;
    }
    if (left > screen.getWidth() - 4) {
      throw new IllegalStateException("nothing on the screen is lit like paper");
    }
    int right = left;
    while (right < screen.getWidth() && grey(screen, right, 20) >= 0.5) {
      right++;
    }
    int top = 0;
    while (grey(screen, left + 3, top) < 0.5) {
      top++;
    }
    int bottom = top;
    while (bottom < screen.getHeight() && grey(screen, left + 3, bottom) >= 0.5) {
      bottom++;
    }
    return screen.getSubimage(left, top, right - left, bottom - top);
  }

  static PagePicture read(Path png) throws IOException {
    BufferedImage image = ImageIO.read(png.toFile());
    return of(image, image.getWidth(), image.getHeight());
  }

  void write(Path png) throws IOException {
    Files.createDirectories(png.toAbsolutePath().getParent());
    ImageIO.write(image(), "png", png.toFile());
  }

  private BufferedImage image() {
    BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_BYTE_GRAY);
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        image.getRaster().setSample(x, y, 0, (int) Math.round(255 * light[y * width + x]));
      }
    }
    return image;
  }

  private double block(int left, int top) {
    double sum = 0;
    int count = 0;
    for (int y = top; y < Math.min(height, top + BLOCK); y++) {
      for (int x = left; x < Math.min(width, left + BLOCK); x++) {
        sum += light[y * width + x];
        count++;
      }
    }
    return sum / count;
  }

  /** The greatest difference of two blocks, and where; empty if it is no more than smoothing. */
  String difference(PagePicture other, double most) {
    if (width != other.width || height != other.height) {
      return "of another size: " + other.width + " by " + other.height;
    }
    double worst = 0;
    String where = "";
    for (int top = 0; top < height; top += BLOCK) {
      for (int left = 0; left < width; left += BLOCK) {
        double by = Math.abs(block(left, top) - other.block(left, top));
        if (by > worst) {
          worst = by;
          where = "light differs by %.3f at %d, %d".formatted(by, left, top);
        }
      }
    }
    return worst > most ? where : "";
  }

  /** Both side by side, and between them what differs, in black. */
  void writeBeside(PagePicture other, Path png) {
    BufferedImage all =
        new BufferedImage(width * 2 + other.width, height, BufferedImage.TYPE_BYTE_GRAY);
    Graphics2D pen = all.createGraphics();
    pen.setRenderingHint(
        RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_NEAREST_NEIGHBOR);
    pen.drawImage(image(), 0, 0, null);
    pen.drawImage(other.image(), width * 2, 0, null);
    pen.dispose();
    for (int y = 0; y < Math.min(height, other.height); y++) {
      for (int x = 0; x < Math.min(width, other.width); x++) {
        double by = Math.abs(light[y * width + x] - other.light[y * other.width + x]);
        all.getRaster().setSample(width + x, y, 0, (int) Math.round(255 * (1 - by)));
      }
    }
    try {
      Files.createDirectories(png.toAbsolutePath().getParent());
      ImageIO.write(all, "png", png.toFile());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
