package org.coilwright.pdf;

import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.Optional;
import org.coilwright.checklist.Checklist;

/**
 * Draws a checklist on pages. The same checklist gives the same bytes: no clock, no random
 * identifier.
 */
public final class ChecklistPdf {
  private ChecklistPdf() {}

  /**
   * Writes a form to print or to fill in on a screen. The stream is not closed.
   *
   * @param attachments files that travel inside it
   * @throws IOException if the stream refuses the bytes
   */
  public static void write(Checklist checklist, List<Attachment> attachments, OutputStream out)
      throws IOException {
    Faces faces = Faces.load();
    Layout layout = Layout.of(checklist, faces, Optional.empty());
    new DocumentWriter(faces).write(checklist, layout, attachments, out);
  }
}
