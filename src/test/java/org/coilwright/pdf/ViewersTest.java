package org.coilwright.pdf;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Pages as different programs draw them. A form that pdf-lib filled in is kept with pictures of its
 * pages, which every program that is installed must draw again, without a warning; of today's form
 * the programs must agree. PDFBox is always there. On failure {@code target/page-differences} shows
 * where; {@code -Daccept=true} writes the pictures anew.
 */
class ViewersTest {
  private static final Path KEPT = Path.of("src/test/resources/filled");
  private static final Path DIFFERENCES = Path.of("target/page-differences");

  /** First page, one of the wiring list, one of tests; the rest would add nothing. */
  private static final List<Integer> PAGES = List.of(0, 2, 4);

  @TempDir Path folder;

  private static List<PagePicture> byPdfBox(byte[] pdf) throws IOException {
    List<PagePicture> pictures = new ArrayList<>();
    try (PDDocument document = Loader.loadPDF(pdf)) {
      PDFRenderer renderer = new PDFRenderer(document);
      for (int page = 0; page < document.getNumberOfPages(); page++) {
        BufferedImage image =
            renderer.renderImageWithDPI(page, 4 * PagePicture.FINE, ImageType.RGB);
        pictures.add(PagePicture.of(image, image.getWidth() / 4, image.getHeight() / 4));
      }
    }
    return pictures;
  }

  private Optional<List<PagePicture>> byPoppler(byte[] pdf, List<PagePicture> like)
      throws IOException, InterruptedException {
    Optional<Tool> poppler = Tool.onPath("pdftoppm");
    if (poppler.isEmpty()) {
      return Optional.empty();
    }
    Path file = Files.write(folder.resolve("form.pdf"), pdf);
    Path pages = Files.createTempDirectory(folder, "pages");
    Tool.Ran ran =
        poppler
            .get()
            .run(
                pages,
                "-r",
                String.valueOf(4 * PagePicture.FINE),
                "-gray",
                "-png",
                file.toString(),
                "p");
    assertEquals(new Tool.Ran(0, ""), ran);
    List<PagePicture> pictures = new ArrayList<>();
    try (Stream<Path> files = Files.list(pages)) {
      for (Path png : files.sorted().toList()) {
        PagePicture size = like.get(pictures.size());
        pictures.add(PagePicture.of(ImageIO.read(png.toFile()), size.width(), size.height()));
      }
    }
    return Optional.of(pictures);
  }

  private Optional<PagePicture> byChromium(byte[] pdf, PagePicture like)
      throws IOException, InterruptedException {
    Optional<Tool> chromium = Tool.onPath("chromium", "chromium-browser", "google-chrome");
    Optional<Tool> node = Tool.onPath("node");
    Optional<Tool> npm = Tool.onPath("npm");
    if (chromium.isEmpty() || node.isEmpty() || npm.isEmpty()) {
      return Optional.empty();
    }
    Path home = Files.createDirectories(Path.of("target/chromium")).toAbsolutePath();
    if (!Files.isDirectory(home.resolve("node_modules/playwright-core"))) {
      Tool.Ran installed =
          npm.get().run(home, "install", "--no-audit", "--no-fund", "playwright-core@1.49.0");
      if (installed.code() != 0) {
        return Optional.empty();
      }
    }
    Path script =
        Files.copy(
            KEPT.resolve("look.mjs"),
            home.resolve("look.mjs"),
            StandardCopyOption.REPLACE_EXISTING);
    Path file = Files.write(folder.resolve("look.pdf"), pdf);
    Path picture = folder.resolve("look.png");
    Tool.Ran ran =
        node.get()
            .run(
                home,
                script.toString(),
                chromium.get().program().toString(),
                file.toString(),
                picture.toString());
    assertEquals(new Tool.Ran(0, ""), ran);
    BufferedImage screen = ImageIO.read(new ByteArrayInputStream(Files.readAllBytes(picture)));
    return Optional.of(PagePicture.of(PagePicture.paperIn(screen), like.width(), like.height()));
  }

  private static void same(String what, PagePicture wanted, PagePicture drawn) {
    boolean screen = what.endsWith("chromium");
    String difference =
        wanted.difference(drawn, screen ? PagePicture.ASKEW : PagePicture.SMOOTHING);
    if (!difference.isEmpty()) {
      wanted.writeBeside(drawn, DIFFERENCES.resolve(what + ".png"));
    }
    assertEquals("", difference, what);
  }

  private static void needed(String what, boolean there) {
    if (!there && System.getenv("COILWRIGHT_LIVE") != null) {
      throw new IllegalStateException(what + " is not there to be tried");
    }
  }

  @Test
  void a_kept_form_is_drawn_as_it_was_by_every_program_that_is_installed() throws Exception {
    byte[] pdf = Files.readAllBytes(KEPT.resolve("pdf-lib.pdf"));
    List<PagePicture> own = byPdfBox(pdf);
    Optional<List<PagePicture>> poppler = byPoppler(pdf, own);
    Optional<PagePicture> chromium = byChromium(pdf, own.get(0));
    needed("poppler", poppler.isPresent());
    needed("Chromium", chromium.isPresent());
    for (int page : PAGES) {
      Path kept = KEPT.resolve("page-" + page + ".png");
      if (Boolean.getBoolean("accept")) {
        own.get(page).write(kept);
      }
      PagePicture wanted = PagePicture.read(kept);
      same("kept-" + page + "-pdfbox", wanted, own.get(page));
      if (poppler.isPresent()) {
        same("kept-" + page + "-poppler", wanted, poppler.get().get(page));
      }
      if (chromium.isPresent() && page == 0) {
        same("kept-" + page + "-chromium", wanted, chromium.get());
      }
    }
  }

  @Test
  void programs_that_are_installed_agree_on_the_form_of_today() throws Exception {
    byte[] pdf = ChecklistPdfTest.bytes(SampleChecklists.ordinary());
    List<PagePicture> own = byPdfBox(pdf);
    Optional<List<PagePicture>> poppler = byPoppler(pdf, own);
    for (int page = 0; poppler.isPresent() && page < own.size(); page++) {
      same("today-" + page + "-poppler", own.get(page), poppler.get().get(page));
    }
    Optional<PagePicture> chromium = byChromium(pdf, own.get(0));
    if (chromium.isPresent()) {
      same("today-0-chromium", own.get(0), chromium.get());
    }
  }

  /** Otherwise the comparison above would prove nothing. */
  @Test
  void a_line_that_is_missing_or_moved_is_seen() throws Exception {
    List<PagePicture> pages = byPdfBox(ChecklistPdfTest.bytes(SampleChecklists.ordinary()));
    PagePicture page = pages.get(0);
    assertFalse(page.difference(pages.get(1), PagePicture.ASKEW).isEmpty());
    double[] light = page.light().clone();
    int band = 6 * page.width();
    int from = darkest(page) * page.width();
    for (int i = from; i < Math.min(light.length, from + band); i++) {
      light[i] = 1;
    }
    assertFalse(
        page.difference(new PagePicture(page.width(), page.height(), light), PagePicture.SMOOTHING)
            .isEmpty());
  }

  private static int darkest(PagePicture page) {
    int darkest = 0;
    double least = Double.MAX_VALUE;
    for (int y = 0; y < page.height(); y++) {
      double sum = 0;
      for (int x = 0; x < page.width(); x++) {
        sum += page.light()[y * page.width() + x];
      }
      if (sum < least) {
        least = sum;
        darkest = y;
      }
    }
    return Math.max(0, darkest - 3);
  }
}
