package org.coilwright.pdf;

import java.util.ArrayList;
import java.util.List;

/** Headings, paragraphs and framed text, and the bookmarks that headings leave. */
final class Prose {
  private static final double FRAME_PAD = 6;

  private final Sheet sheet;
  private final Faces faces;
  private final Tag document;
  private final List<Bookmark> bookmarks = new ArrayList<>();

  /**
   * A heading to jump to.
   *
   * @param page from 0
   * @param y from the top of the sheet
   */
  record Bookmark(String title, int page, double y) {}

  /** A paragraph and how it is set. */
  record Line(String text, Face face, double size) {
    static Line plain(String text) {
      return new Line(text, Face.REGULAR, Type.BODY);
    }

    static Line bold(String text) {
      return new Line(text, Face.BOLD, Type.BODY);
    }

    static Line large(String text) {
      return new Line(text, Face.BOLD, Type.HEADING);
    }
  }

  private record Set(String text, Face face, double size, int paragraph) {
    double leading() {
      return size * Type.LEADING / Type.BODY;
    }
  }

  Prose(Sheet sheet, Faces faces, Tag document) {
    this.sheet = sheet;
    this.faces = faces;
    this.document = document;
  }

  /**
   * A heading that stays with what follows.
   *
   * @param following how much must fit under it on the same page
   */
  void heading(String title, Role level, double following) {
    double size = level == Role.HEADING_1 ? Type.TITLE : Type.HEADING;
    List<Set> lines = set(List.of(new Line(title, Face.BOLD, size)), sheet.width());
    double height = height(lines) + 8;
    if (height + following > sheet.room()) {
      sheet.freshPage();
    }
    if (sheet.y() > sheet.top()) {
      sheet.down(6);
    }
    bookmarks.add(new Bookmark(faces.bold().printable(title), sheet.page(), sheet.y()));
    draw(lines, List.of(document.child(level)), sheet.left());
    sheet.down(2);
  }

  /** A paragraph over the full width. */
  void paragraph(Line line) {
    List<Set> lines = set(List.of(line), sheet.width());
    draw(lines, List.of(document.child(Role.PARAGRAPH)), sheet.left());
    sheet.down(3);
  }

  /** How high {@link #paragraph} will be. */
  double height(Line line) {
    return height(set(List.of(line), sheet.width())) + 3;
  }

  /** Paragraphs in a frame that is not parted, unless it is taller than a page. */
  void framed(List<Line> paragraphs, double frame) {
    List<Set> lines = set(paragraphs, sheet.width() - 2 * FRAME_PAD);
    double height = height(lines) + 2 * FRAME_PAD;
    if (height > sheet.room()) {
      sheet.freshPage();
    }
    boolean fits = height <= sheet.room();
    if (fits) {
      sheet.add(new Piece.Frame(sheet.left(), sheet.y(), sheet.width(), height, frame));
    }
    List<Tag> tags = paragraphs.stream().map(p -> document.child(Role.PARAGRAPH)).toList();
    sheet.down(FRAME_PAD);
    draw(lines, tags, sheet.left() + FRAME_PAD);
    sheet.down(FRAME_PAD + 5);
  }

  List<Bookmark> bookmarks() {
    return List.copyOf(bookmarks);
  }

  private List<Set> set(List<Line> paragraphs, double width) {
    List<Set> out = new ArrayList<>();
    for (int i = 0; i < paragraphs.size(); i++) {
      Line line = paragraphs.get(i);
      Lettering lettering = faces.of(line.face());
      for (String text : Wrapping.lines(line.text(), lettering, line.size(), width)) {
        out.add(new Set(text, line.face(), line.size(), i));
      }
    }
    return out;
  }

  private static double height(List<Set> lines) {
    return lines.stream().mapToDouble(Set::leading).sum();
  }

  private void draw(List<Set> lines, List<Tag> tags, double x) {
    for (Set line : lines) {
      if (line.leading() > sheet.room()) {
        sheet.newPage();
      }
      double baseline = sheet.y() + line.leading() - 0.32 * line.size();
      if (!line.text().isEmpty()) {
        sheet.add(
            new Piece.Text(
                x, baseline, line.size(), line.face(), line.text(), tags.get(line.paragraph())));
      }
      sheet.down(line.leading());
    }
  }
}
