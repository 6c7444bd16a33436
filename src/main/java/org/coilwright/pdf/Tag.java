package org.coilwright.pdf;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** A place in the reading order. Pieces of one paragraph or cell share a tag, also across pages. */
final class Tag {
  /** For what is drawn but not read. */
  static final Tag ARTIFACT = new Tag(Role.ARTIFACT);

  private final Role role;
  private final List<Tag> children = new ArrayList<>();

  private Tag(Role role) {
    this.role = role;
  }

  /** The root of a document. */
  static Tag document() {
    return new Tag(Role.DOCUMENT);
  }

  /** A new last child. */
  Tag child(Role childRole) {
    Tag child = new Tag(childRole);
    children.add(child);
    return child;
  }

  Role role() {
    return role;
  }

  List<Tag> children() {
    return Collections.unmodifiableList(children);
  }
}
