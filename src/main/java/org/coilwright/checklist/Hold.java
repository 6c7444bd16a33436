package org.coilwright.checklist;

import java.util.List;

/**
 * A point nobody passes without a signature.
 *
 * @param title what it stands before
 * @param conditions what must be so
 */
public record Hold(String title, List<String> conditions) implements Step {
  /** Copies the list. */
  public Hold {
    conditions = List.copyOf(conditions);
  }
}
