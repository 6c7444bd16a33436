package org.coilwright.checklist;

import java.util.List;
import org.coilwright.checklist.Checklist.Caution;

/**
 * A few rows that belong together and can be begun and left on their own.
 *
 * @param number such as {@code 5}
 * @param title what it is about
 * @param stage what is live while it is done
 * @param readFirst the cautions that stand before its first row
 * @param beginWith the state the circuit must be in
 * @param rows one to nine
 */
public record Section(
    String number,
    String title,
    Stage stage,
    List<Caution> readFirst,
    String beginWith,
    List<TestRow> rows)
    implements Step {

  /** Fewer than ten rows a pause point: longer lists are lost track of. */
  public static final int MOST_ROWS = 9;

  /**
   * Copies the lists.
   *
   * @throws IllegalArgumentException if it has no rows or too many
   */
  public Section {
    readFirst = List.copyOf(readFirst);
    rows = List.copyOf(rows);
    if (rows.isEmpty() || rows.size() > MOST_ROWS) {
      throw new IllegalArgumentException(
          "section " + number + " has " + rows.size() + " rows; one to nine are allowed");
    }
  }

  /** Of this section alone, after the row it ends with: {@code section-K1.coil-resistance}. */
  public String name() {
    return "section-" + rows.get(rows.size() - 1).name();
  }

  /** What is live. The order is the order of the work. */
  public enum Stage {
    DEAD,
    /** The mains is measured where it comes in, everything behind it off. */
    INCOMING,
    /** The control supply is on and itself fed by the mains, which is live at its protection. */
    CONTROL,
    /** The control supply is on, and no mains anywhere. */
    ELV,
    MAINS,
    SETTINGS;

    /** As printed in a language. */
    public String title(Texts texts) {
      return texts.of("stage." + Texts.key(this));
    }

    /** The stage between two holds: whatever is done with the load still off is one. */
    Stage phase() {
      return this == INCOMING || this == CONTROL ? ELV : this;
    }

    /** True if the mains is on at the load circuit. */
    public boolean live() {
      return this == MAINS;
    }
  }
}
