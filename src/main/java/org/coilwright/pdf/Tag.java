package org.coilwright.pdf;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** A place in the reading order. Pieces of one paragraph or cell share a tag, also across pages. */
final class Tag {
  /** For what is drawn but not read. */
  static final Tag ARTIFACT = new Tag(Role.ARTIFACT, 1, "");

  private final Role role;
  private final List<Tag> children = new ArrayList<>();

  private final int columns;
  private final String alternative;
  private final String language;

  private Tag(Role role, int columns, String alternative) {
    this(role, columns, alternative, "");
  }

  private Tag(Role role, int columns, String alternative, String language) {
    this.language = language;
    this.role = role;
    this.columns = columns;
    this.alternative = alternative;
  }

  /** The root of a document. */
  static Tag document() {
    return new Tag(Role.DOCUMENT, 1, "");
  }

  /** A new last child. */
  Tag child(Role childRole) {
    Tag child = new Tag(childRole, 1, "");
    children.add(child);
    return child;
  }

  /** A new last child that is a table cell over several columns. */
  Tag cellOver(int spanned) {
    Tag child = new Tag(Role.CELL, spanned, "");
    children.add(child);
    return child;
  }

  /** A new last child that is a picture, with the text that stands for it. */
  Tag figure(String described) {
    Tag child = new Tag(Role.FIGURE, 1, described);
    children.add(child);
    return child;
  }

  /** A new last child for words in another language than the document's. */
  Tag inLanguage(String other) {
    Tag child = new Tag(Role.SPAN, 1, "", other);
    children.add(child);
    return child;
  }

  /** Language of its words if it is not the document's; else empty. */
  String language() {
    return language;
  }

  /** What stands for a picture; empty for everything else. */
  String alternative() {
    return alternative;
  }

  /** How many columns of a table it takes. */
  int columns() {
    return columns;
  }

  Role role() {
    return role;
  }

  List<Tag> children() {
    return Collections.unmodifiableList(children);
  }
}
