package org.coilwright.pdf;

import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.Optional;
import org.coilwright.checklist.Checklist;
import org.coilwright.checklist.TestRecord;

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
    new DocumentWriter(faces, Optional.empty()).write(checklist, layout, attachments, out);
  }

  /**
   * Writes the final record: the sheet drawn anew with what was filled in, behind its verdict. The
   * stream is not closed.
   *
   * @param attachments files that travel inside it
   * @throws IOException if the stream refuses the bytes
   */
  public static void writeRecord(
      Checklist checklist, TestRecord record, List<Attachment> attachments, OutputStream out)
      throws IOException {
    Faces faces = Faces.load();
    Optional<TestRecord> drawn = Optional.of(record);
    Layout layout = Layout.of(checklist, faces, drawn);
    new DocumentWriter(faces, drawn).write(checklist, layout, attachments, out);
  }
}
