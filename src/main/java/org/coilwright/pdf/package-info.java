/**
 * Draws a checklist on pages; knows no electricity. May import checklist and drawing; the only one
 * that knows PDFBox.
 */
@org.jspecify.annotations.NullMarked
package org.coilwright.pdf;
