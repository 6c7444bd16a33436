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
 * @param rows at least one, on nine lines at most
 */
public record Section(
    String number,
    String title,
    Stage stage,
    List<Caution> readFirst,
    String beginWith,
    List<TestRow> rows)
    implements Step {

  /**
   * Fewer than ten lines a pause point: longer lists are lost track of. Lists that are ticked from
   * top to bottom, of wires, parts and settings, are not counted.
   */
  public static final int MOST_LINES = 9;

  /**
   * Copies the lists.
   *
   * @throws IllegalArgumentException if it has no rows or too many
   */
  public Section {
    readFirst = List.copyOf(readFirst);
    rows = List.copyOf(rows);
    int lines = pauseLines(rows);
    if (rows.isEmpty() || lines > MOST_LINES) {
      throw new IllegalArgumentException(
          "section " + number + " has " + lines + " lines; one to nine are allowed");
    }
  }

  private static int pauseLines(List<TestRow> rows) {
    return (int)
        TestLine.of(rows).stream()
            .filter(line -> line.first().wire().isEmpty() && !isListed(line.first().manner()))
            .count();
  }

  /** True for what stands in a list that is ticked from top to bottom. */
  static boolean isListed(Manner manner) {
    return manner == Manner.LISTED || manner == Manner.COMPARED;
  }

  /** The printed lines of its rows. */
  public List<TestLine> lines() {
    return TestLine.of(rows);
  }

  /** True if the wiring list stands in it. */
  public boolean isWiring() {
    return rows.stream().anyMatch(row -> !row.wire().isEmpty());
  }

  /** True if a limit of it rests on memory: it has one box for all such limits. */
  public boolean confirm() {
    return rows.stream().anyMatch(row -> row.grounds().confirm());
  }

  /** Of this section alone, after the row it ends with: {@code section-K1.coil-resistance}. */
  public String name() {
    return "section-" + rows.get(rows.size() - 1).name();
  }

  /** What is live. The order is the order of the work. */
  public enum Stage {
    DEAD,
    /** The control supply is on, and no mains anywhere. */
    ELV,
    /** The mains is measured where it comes in, everything behind it off. */
    INCOMING,
    /** The control supply is on and itself fed by the mains, which is live at its protection. */
    CONTROL,
    /** Every supply locked off once more. */
    AGAIN,
    MAINS,
    SETTINGS;

    /** As printed in a language. */
    public String title(Texts texts) {
      return texts.of("stage." + Texts.key(this));
    }

    /** The stage between two holds: whatever is done with the load still off is one. */
    Stage phase() {
      return this == INCOMING || this == CONTROL || this == AGAIN ? ELV : this;
    }

    /** True if the mains is on at the load circuit. */
    public boolean live() {
      return this == MAINS;
    }
  }
}
