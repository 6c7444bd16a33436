package org.coilwright.pdf;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationWidget;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAppearanceDictionary;
import org.apache.pdfbox.pdmodel.interactive.form.PDAcroForm;
import org.apache.pdfbox.pdmodel.interactive.form.PDCheckBox;
import org.apache.pdfbox.pdmodel.interactive.form.PDField;
import org.apache.pdfbox.pdmodel.interactive.form.PDNonTerminalField;
import org.apache.pdfbox.pdmodel.interactive.form.PDSignatureField;
import org.apache.pdfbox.pdmodel.interactive.form.PDTerminalField;
import org.apache.pdfbox.pdmodel.interactive.form.PDTextField;
import org.coilwright.checklist.Blank;
import org.coilwright.checklist.Texts;

/**
 * Makes form fields of the places to fill in. Every one has its appearance from the start: archival
 * rules forbid leaving that to the viewer, also for a signature that is not there yet.
 */
final class FormWriter {
  /** State of a box that is ticked. */
  static final String ON = "Yes";

  private static final String FONT = "Form";
  private static final COSName OFF = COSName.Off;

  private final PDDocument document;
  private final Texts texts;
  private final PDAcroForm form;
  private final Map<String, Branch> branches = new HashMap<>();
  private final List<Branch> roots = new ArrayList<>();
  private final List<PDField> fields = new ArrayList<>();
  private final COSDictionary tickStates = new COSDictionary();
  private boolean signatures;

  /** A part of a name that several fields share. */
  private record Branch(PDNonTerminalField field, List<PDField> children) {}

  /**
   * For one document.
   *
   * @param font embedded whole, for nobody knows yet what will be typed
   */
  FormWriter(PDDocument document, PDFont font, Texts texts) throws IOException {
    this.document = document;
    this.texts = texts;
    this.form = new PDAcroForm(document);
    PDResources resources = new PDResources();
    resources.put(COSName.getPDFName(FONT), font);
    form.setDefaultResources(resources);
    form.setDefaultAppearance(look());
    double side = Item.TICK;
    PDFormXObject cross = appearance((float) side, (float) side, cross(side));
    tickStates.setItem(COSName.getPDFName(ON), cross);
    tickStates.setItem(OFF, appearance((float) side, (float) side, ""));
    // behind a reference, poppler takes it for a drawing and shows no tick
    tickStates.setDirect(true);
  }

  private static String look() {
    return "/" + FONT + " " + (int) Type.BODY + " Tf 0 g";
  }

  private static String cross(double side) {
    double low = 0.2 * side;
    double high = side - low;
    return "1.4 w 0 G %s %s m %s %s l %s %s m %s %s l S"
        .formatted(low, low, high, high, low, high, high, low);
  }

  /** Makes a field of a place; its widget is on the page already. */
  PDAnnotationWidget add(Piece.Entry entry, PDPage page, double pageHeight) throws IOException {
    PDTerminalField field = field(entry.blank());
    field.setAlternateFieldName(entry.blank().tip(texts));
    PDAnnotationWidget widget = field.getWidgets().get(0);
    PDRectangle place =
        new PDRectangle(
            (float) entry.x(),
            (float) (pageHeight - entry.y() - entry.height()),
            (float) entry.width(),
            (float) entry.height());
    widget.setRectangle(place);
    widget.setPage(page);
    widget.setPrinted(true);
    PDAppearanceDictionary appearance = new PDAppearanceDictionary();
    if (entry.blank().kind() == Blank.Kind.TICK) {
      appearance.getCOSObject().setItem(COSName.N, tickStates);
      widget.getCOSObject().setItem(COSName.AS, OFF);
      field.getCOSObject().setItem(COSName.V, OFF);
    } else {
      // one each: a viewer may write the value into it
      appearance
          .getCOSObject()
          .setItem(COSName.N, appearance(place.getWidth(), place.getHeight(), ""));
    }
    widget.setAppearance(appearance);
    page.getAnnotations().add(widget);
    hang(entry.blank().name(), field);
    return widget;
  }

  private PDTerminalField field(Blank blank) throws IOException {
    return switch (blank.kind()) {
      case LINE, LINES -> {
        PDTextField text = new PDTextField(form);
        text.setMultiline(blank.kind() == Blank.Kind.LINES);
        text.setDefaultAppearance(look());
        yield text;
      }
      case TICK -> new PDCheckBox(form);
      case SIGNATURE -> {
        signatures = true;
        yield new PDSignatureField(form);
      }
    };
  }

  private PDFormXObject appearance(float width, float height, String drawing) throws IOException {
    PDFormXObject appearance = new PDFormXObject(document);
    appearance.setBBox(new PDRectangle(width, height));
    appearance.setResources(new PDResources());
    try (OutputStream out = appearance.getStream().createOutputStream()) {
      out.write(drawing.getBytes(StandardCharsets.US_ASCII));
    }
    return appearance;
  }

  /** A name with points is a path of fields; each part stands once. */
  private void hang(String name, PDTerminalField field) {
    int last = name.lastIndexOf('.');
    field.setPartialName(name.substring(last + 1));
    if (last < 0) {
      fields.add(field);
      return;
    }
    Branch branch = branch(name.substring(0, last));
    field.getCOSObject().setItem(COSName.PARENT, branch.field());
    branch.children().add(field);
  }

  private Branch branch(String path) {
    Branch known = branches.get(path);
    if (known != null) {
      return known;
    }
    PDNonTerminalField field = new PDNonTerminalField(form);
    Branch branch = new Branch(field, new ArrayList<>());
    branches.put(path, branch);
    roots.add(branch);
    int last = path.lastIndexOf('.');
    field.setPartialName(path.substring(last + 1));
    if (last < 0) {
      fields.add(field);
    } else {
      Branch above = branch(path.substring(0, last));
      field.getCOSObject().setItem(COSName.PARENT, above.field());
      above.children().add(field);
    }
    return branch;
  }

  /** Hangs the form into the document. */
  void finish() {
    roots.forEach(branch -> branch.field().setChildren(branch.children()));
    form.setFields(fields);
    form.setSignaturesExist(signatures);
    document.getDocumentCatalog().setAcroForm(form);
  }
}
