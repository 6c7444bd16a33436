package org.coilwright.pdf;

import java.io.IOException;
import java.io.OutputStream;
import org.coilwright.checklist.Checklist;

/**
 * Draws a checklist on pages. The same checklist gives the same bytes: no clock, no random
 * identifier.
 */
public final class ChecklistPdf {
  private ChecklistPdf() {}

  /**
   * Writes a PDF. The stream is not closed.
   *
   * @throws IOException if the stream refuses the bytes
   */
  public static void write(Checklist checklist, OutputStream out) throws IOException {
    Faces faces = Faces.load();
    Layout layout = Layout.of(checklist, faces);
    new DocumentWriter(faces).write(checklist.title(), layout, out);
  }
}
