package org.coilwright.pdf;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSNumber;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;

/** Takes down how a PDF looks. What it reads was let through by {@link SheetReader} before. */
final class LookReader {
  private static final int MOST_PAGES = 2_000;
  private static final int DEEPEST = 16;
  private static final int HIDDEN_OR_NO_VIEW = 1 << 1 | 1 << 5;
  private static final COSName OPTIONAL_CONTENT = COSName.getPDFName("OC");
  private static final Pattern STATED = Pattern.compile("SHA-256([0-9a-f]{12,64})");

  private final DrawnDigest digest = new DrawnDigest();
  private final List<Look.Page> pages = new ArrayList<>();
  private final Map<String, List<Look.Place>> places = new HashMap<>();

  private LookReader() {}

  static Look read(byte[] pdf) {
    LookReader reader = new LookReader();
    boolean redrawn = false;
    try (PDDocument document = Loader.loadPDF(pdf)) {
      COSDictionary form =
          document.getDocumentCatalog().getCOSObject().getCOSDictionary(COSName.ACRO_FORM);
      redrawn = form != null && form.getBoolean(COSName.NEED_APPEARANCES, false);
      for (PDPage page : document.getPages()) {
        if (reader.pages.size() >= MOST_PAGES) {
          break;
        }
        reader.page(page);
      }
    } catch (IOException | RuntimeException e) {
      // the library's, at objects of unexpected types: what was not reached looks like nothing
    }
    return new Look(reader.pages, reader.places, redrawn);
  }

  private void page(PDPage page) {
    String drawn;
    try {
      drawn = digest.of(page);
    } catch (IOException | RuntimeException e) { // likewise: a page that looks like no other
      drawn = "";
    }
    List<String> stated = new ArrayList<>();
    Matcher matcher = STATED.matcher(ShownText.of(page).orElse(""));
    while (matcher.find()) {
      stated.add(matcher.group(1));
    }
    List<String> foreign = new ArrayList<>();
    COSArray annotations = page.getCOSObject().getCOSArray(COSName.ANNOTS);
    for (int i = 0; annotations != null && i < annotations.size(); i++) {
      if (annotations.getObject(i) instanceof COSDictionary annotation) {
        if (COSName.WIDGET.equals(annotation.getCOSName(COSName.SUBTYPE))) {
          places
              .computeIfAbsent(name(annotation), n -> new ArrayList<>())
              .add(place(annotation, page));
        } else {
          String kind = annotation.getNameAsString(COSName.SUBTYPE);
          foreign.add(kind == null ? "?" : kind);
        }
      }
    }
    pages.add(new Look.Page(drawn, stated, foreign.stream().distinct().sorted().toList()));
  }

  /** The full name, from the field up to the root. */
  private static String name(COSDictionary widget) {
    String name = "";
    COSDictionary at = widget;
    for (int depth = 0; at != null && depth < DEEPEST; depth++) {
      String part = at.getString(COSName.T);
      if (part != null) {
        name = name.isEmpty() ? part : part + "." + name;
      }
      at = at.getCOSDictionary(COSName.PARENT);
    }
    return name;
  }

  private Look.Place place(COSDictionary widget, PDPage page) {
    boolean hidden =
        (widget.getInt(COSName.F, 0) & HIDDEN_OR_NO_VIEW) != 0
            || widget.containsKey(OPTIONAL_CONTENT);
    List<Long> box = new ArrayList<>();
    COSArray corners = widget.getCOSArray(COSName.RECT);
    for (int i = 0; corners != null && i < corners.size(); i++) {
      box.add(
          corners.getObject(i) instanceof COSNumber number
              ? Math.round(number.floatValue() * 10d)
              : 0L);
    }
    Optional<COSStream> appearance = appearance(widget);
    if (appearance.isEmpty()) {
      return new Look.Place(pages.size(), box, hidden, Optional.empty(), true);
    }
    if (widget.getDictionaryObject(COSName.AS) instanceof COSName) {
      return new Look.Place(pages.size(), box, hidden, Optional.of(ink(appearance.get())), true);
    }
    Optional<String> shown = ShownText.of(new PDFormXObject(appearance.get()), page);
    return new Look.Place(pages.size(), box, hidden, shown, shown.isPresent());
  }

  /** The one that is shown, of several states. */
  private static Optional<COSStream> appearance(COSDictionary widget) {
    COSDictionary appearances = widget.getCOSDictionary(COSName.AP);
    COSBase normal = appearances == null ? null : appearances.getDictionaryObject(COSName.N);
    if (normal instanceof COSStream stream) {
      return Optional.of(stream);
    }
    if (normal instanceof COSDictionary states
        && widget.getDictionaryObject(COSName.AS) instanceof COSName state
        && states.getDictionaryObject(state) instanceof COSStream stream) {
      return Optional.of(stream);
    }
    return Optional.empty();
  }

  /** Something if anything at all is drawn. */
  private static String ink(COSStream appearance) {
    try {
      byte[] bytes = AttachmentReader.unpacked(appearance, 1 << 16);
      return new String(bytes, StandardCharsets.ISO_8859_1).isBlank() ? "" : "x";
    } catch (IOException | RuntimeException | Unfit e) { // drawn with more than any tick needs
      return "x";
    }
  }
}
