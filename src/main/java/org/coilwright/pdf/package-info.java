/**
 * Draws a checklist on pages and reads one that was filled in; knows no electricity. May import
 * checklist and drawing; the only one that knows PDFBox and Bouncy Castle.
 */
@org.jspecify.annotations.NullMarked
package org.coilwright.pdf;
