package org.coilwright.table;

import java.util.ArrayList;
import java.util.List;

/**
 * A published document, named so that anybody can find it. What is not known about it says so in
 * words ({@link #UNKNOWN}); nothing is made up.
 *
 * @param title as printed, with its author or number
 * @param edition edition, date or issue
 * @param publisher who brought it out
 * @param seen how its figures were read: the original, a reprint, a transcription, from memory
 */
public record Reference(String title, String edition, String publisher, String seen) {
  /** Stands for what the page that was read does not tell. */
  public static final String UNKNOWN = "not recorded";

  /** All of it in one line. */
  public String full() {
    List<String> parts = new ArrayList<>();
    parts.add(title.equals(UNKNOWN) ? "title not recorded" : title);
    parts.add(edition.equals(UNKNOWN) ? "edition and date not recorded" : edition);
    parts.add(publisher.equals(UNKNOWN) ? "publisher not recorded" : publisher);
    return String.join("; ", parts) + ". Seen: " + seen + ".";
  }
}
