package org.coilwright.checklist;

import java.util.List;

/**
 * A point nobody passes without a signature.
 *
 * @param name of this hold alone: {@code hold.before-any-supply}
 * @param title what it stands before
 * @param conditions what must be so
 */
public record Hold(String name, String title, List<String> conditions) implements Step {
  /** Copies the list. */
  public Hold {
    conditions = List.copyOf(conditions);
  }
}
