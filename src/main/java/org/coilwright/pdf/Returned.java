package org.coilwright.pdf;

import java.util.Map;
import org.coilwright.checklist.Blank;
import org.coilwright.checklist.FilledIn;

/** What came of opening a PDF that somebody gave back. */
public sealed interface Returned {
  /**
   * It could be read.
   *
   * @param fields kind of every form field, by full name; a text of several lines counts as {@code
   *     LINE}; none if it has no form
   * @param filledIn what was filled in
   * @param files the attached files, by name
   * @param keywords of the document information; may be empty
   */
  record Sheet(
      Map<String, Blank.Kind> fields, FilledIn filledIn, Map<String, byte[]> files, String keywords)
      implements Returned {
    /** Copies them. */
    public Sheet {
      fields = Map.copyOf(fields);
      files = Map.copyOf(files);
    }
  }

  /**
   * It could not, or must not be.
   *
   * @param what why, one sentence without its full stop
   * @param remedy what to do, same form
   */
  record Unusable(String what, String remedy) implements Returned {}
}
