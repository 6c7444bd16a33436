package org.coilwright.pdf;

/** Both cuts of the typeface. */
record Faces(Lettering regular, Lettering bold) {
  static Faces load() {
    return new Faces(Lettering.of(Face.REGULAR), Lettering.of(Face.BOLD));
  }

  Lettering of(Face face) {
    return face == Face.BOLD ? bold : regular;
  }
}
