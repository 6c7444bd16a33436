package org.coilwright.pdf;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDMarkInfo;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDMarkedContentReference;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDObjectReference;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureNode;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureTreeRoot;
import org.apache.pdfbox.pdmodel.documentinterchange.taggedpdf.PDLayoutAttributeObject;
import org.apache.pdfbox.pdmodel.documentinterchange.taggedpdf.PDTableAttributeObject;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationWidget;

/** Collects which piece of a page belongs to which tag, and writes the structure tree from it. */
final class ReadingOrder {
  private final Map<Tag, List<Mark>> marks = new HashMap<>();
  private final Map<Tag, Widget> widgets = new HashMap<>();
  private final List<List<Tag>> byPage = new ArrayList<>();
  private final Map<Tag, PDRectangle> boxes = new HashMap<>();

  /** Marked content {@code id} on a page. */
  private record Mark(int page, int id) {}

  /** A form field's place on a page. */
  private record Widget(int page, PDAnnotationWidget annotation) {}

  /** Puts a form field's place under a tag, which is its alone. */
  void widget(Tag tag, int page, PDAnnotationWidget annotation) {
    widgets.put(tag, new Widget(page, annotation));
  }

  /** A new mark on a page for a tag; its number there. */
  int mark(Tag tag, int page) {
    while (byPage.size() <= page) {
      byPage.add(new ArrayList<>());
    }
    List<Tag> onPage = byPage.get(page);
    int id = onPage.size();
    onPage.add(tag);
    marks.computeIfAbsent(tag, t -> new ArrayList<>()).add(new Mark(page, id));
    return id;
  }

  /** Remembers where a figure stands: a reader that enlarges it must know. */
  void box(Piece.Figure figure, double pageHeight) {
    boxes.put(
        figure.tag(),
        new PDRectangle(
            (float) figure.x(),
            (float) (pageHeight - figure.y() - figure.height()),
            (float) figure.width(),
            (float) figure.height()));
  }

  /** Writes the tree under {@code root} into a document whose pages are all there. */
  void write(PDDocument document, Tag root) {
    PDStructureTreeRoot tree = new PDStructureTreeRoot();
    Map<Tag, PDStructureElement> elements = new HashMap<>();
    List<PDPage> pages = new ArrayList<>();
    document.getPages().forEach(pages::add);
    append(root, tree, pages, elements);
    COSArray numbers = new COSArray();
    for (int page = 0; page < pages.size(); page++) {
      pages.get(page).setStructParents(page);
      pages.get(page).getCOSObject().setItem(COSName.getPDFName("Tabs"), COSName.S);
      COSArray parents = new COSArray();
      if (page < byPage.size()) {
        for (Tag tag : byPage.get(page)) {
          parents.add(Objects.requireNonNull(elements.get(tag), "a tag outside the document"));
        }
      }
      numbers.add(COSInteger.get(page));
      numbers.add(parents);
    }
    int key = pages.size();
    for (Tag tag : inOrder(root)) {
      Widget widget = widgets.get(tag);
      if (widget != null) {
        widget.annotation().setStructParent(key);
        numbers.add(COSInteger.get(key));
        numbers.add(Objects.requireNonNull(elements.get(tag), "a tag outside the document"));
        key++;
      }
    }
    COSDictionary parentTree = new COSDictionary();
    parentTree.setItem(COSName.NUMS, numbers);
    tree.getCOSObject().setItem(COSName.PARENT_TREE, parentTree);
    tree.setParentTreeNextKey(key);
    document.getDocumentCatalog().setStructureTreeRoot(tree);
    PDMarkInfo info = new PDMarkInfo();
    info.setMarked(true);
    document.getDocumentCatalog().setMarkInfo(info);
  }

  /** The tags as a tree is walked. A map's own order would differ from run to run. */
  private static List<Tag> inOrder(Tag root) {
    List<Tag> all = new ArrayList<>();
    all.add(root);
    root.children().forEach(child -> all.addAll(inOrder(child)));
    return all;
  }

  private void append(
      Tag tag, PDStructureNode parent, List<PDPage> pages, Map<Tag, PDStructureElement> elements) {
    PDStructureElement element = new PDStructureElement(tag.role().pdfName(), parent);
    elements.put(tag, element);
    if (tag.role() == Role.HEAD_CELL) {
      PDTableAttributeObject scope = new PDTableAttributeObject();
      scope.setScope(PDTableAttributeObject.SCOPE_COLUMN);
      element.addAttribute(scope);
    }
    if (!tag.language().isEmpty()) {
      element.setLanguage(tag.language());
    }
    if (tag.columns() > 1) {
      PDTableAttributeObject span = new PDTableAttributeObject();
      span.setColSpan(tag.columns());
      element.addAttribute(span);
    }
    PDRectangle box = boxes.get(tag);
    if (box != null) {
      PDLayoutAttributeObject place = new PDLayoutAttributeObject();
      place.setPlacement(PDLayoutAttributeObject.PLACEMENT_BLOCK);
      place.setBBox(box);
      element.addAttribute(place);
      element.setAlternateDescription(tag.alternative());
    }
    for (Mark mark : marks.getOrDefault(tag, List.of())) {
      PDMarkedContentReference reference = new PDMarkedContentReference();
      reference.setPage(pages.get(mark.page()));
      reference.setMCID(mark.id());
      element.appendKid(reference);
    }
    Widget widget = widgets.get(tag);
    if (widget != null) {
      PDObjectReference reference = new PDObjectReference();
      reference.setReferencedObject(widget.annotation());
      reference.getCOSObject().setItem(COSName.PG, pages.get(widget.page()));
      element.appendKid(reference);
    }
    for (Tag child : tag.children()) {
      append(child, element, pages, elements);
    }
    parent.appendKid(element);
  }
}
