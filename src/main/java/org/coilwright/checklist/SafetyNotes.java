package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The cautions as they stand in {@code safety-notes/}, for whoever asks for one by its name. */
public final class SafetyNotes {
  private SafetyNotes() {}

  /** Their names, in the order they are printed. */
  public static List<String> names() {
    return Cautions.NAMES;
  }

  /** A title and the paragraphs behind it; empty if there is none of that name. */
  public static Optional<List<String>> text(String name) {
    if (!Cautions.NAMES.contains(name)) {
      return Optional.empty();
    }
    CautionNote note = Cautions.note(name);
    List<String> lines = new ArrayList<>(List.of(note.title()));
    lines.addAll(note.paragraphs());
    return Optional.of(List.copyOf(lines));
  }
}
