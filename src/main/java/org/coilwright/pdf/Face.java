package org.coilwright.pdf;

/** The two cuts that are used. No italics: long slanted text is hard to read. */
enum Face {
  REGULAR,
  BOLD
}
