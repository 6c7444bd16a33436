package org.coilwright.checklist;

import java.util.List;
import java.util.Optional;
import org.coilwright.circuit.Mistake;
import org.coilwright.solve.Probing;

/**
 * A test row that does not know its number yet.
 *
 * @param name see {@link Names}
 * @param where a whole phrase; may be empty
 * @param probing what is measured, where a reading can be computed for whatever is built
 * @param watched mistakes that no reading tells: this row says where to look
 * @param form how it stands on the page
 */
record Row(
    String name,
    String condition,
    String action,
    String where,
    Expected expected,
    String otherwise,
    boolean live,
    Grounds grounds,
    Optional<Probing> probing,
    List<Mistake> watched,
    Form form) {
  /**
   * How a row stands on the page.
   *
   * @param line rows that follow each other and share this share a line; empty for a line of its
   *     own
   * @param label what stands before its field there
   * @param wire name of its row of the wiring list; empty if it stands in none
   * @param number of that wire, by which the row is told; empty if it stands in none
   */
  record Form(Manner manner, String line, String label, String wire, String number) {}

  /** A row whose reading is not computed for other circuits than the one drawn. */
  Row(
      String name,
      String condition,
      String action,
      String where,
      Expected expected,
      String otherwise,
      boolean live,
      Grounds grounds) {
    this(
        name,
        condition,
        action,
        where,
        expected,
        otherwise,
        live,
        grounds,
        Optional.empty(),
        List.of(),
        new Form(Manner.of(expected), "", "", "", ""));
  }

  /** A row on a dead circuit, without a condition of its own. */
  static Row dead(
      String name,
      String action,
      String where,
      Expected expected,
      String otherwise,
      Grounds grounds) {
    return new Row(name, "", action, where, expected, otherwise, false, grounds);
  }

  /**
   * A row on a dead circuit whose texts are {@code kind.when}, {@code kind.do}, {@code kind.where}
   * and {@code kind.else}, all with the same arguments; the first and the third may be missing.
   */
  static Row of(
      Texts texts,
      String kind,
      String name,
      Expected expected,
      Grounds grounds,
      Object... arguments) {
    return new Row(
        name,
        texts.find(kind + ".when", arguments).orElse(""),
        texts.of(kind + ".do", arguments),
        texts.find(kind + ".where", arguments).orElse(""),
        expected,
        texts.of(kind + ".else", arguments),
        false,
        grounds);
  }

  private Row with(String needed, boolean isLive, Optional<Probing> what, Form how) {
    return new Row(
        name, needed, action, where, expected, otherwise, isLive, grounds, what, watched, how);
  }

  Row when(String needed) {
    return with(needed, live, probing, form);
  }

  Row live(boolean isLive) {
    return with(condition, isLive, probing, form);
  }

  Row reading(Probing what) {
    return with(condition, live, Optional.of(what), form);
  }

  /** Answered otherwise than its expectation would be. */
  Row answered(Manner manner) {
    return with(
        condition,
        live,
        probing,
        new Form(manner, form.line(), form.label(), form.wire(), form.number()));
  }

  /** In one line with its neighbours of the same key, told from them by a label. */
  Row inLine(String line, String label) {
    return with(
        condition, live, probing, new Form(form.manner(), line, label, form.wire(), form.number()));
  }

  /** In the wiring list, told by the number of its wire there. */
  Row ofWire(String wire, String number) {
    return with(condition, live, probing, new Form(form.manner(), "", "", wire, number));
  }

  /** True if it stands in the line of the row before it. */
  boolean continues(Row before) {
    return !form.line().isEmpty() && form.line().equals(before.form().line());
  }

  /** How many lines these rows take. */
  static int lines(List<Row> rows) {
    int lines = 0;
    for (int i = 0; i < rows.size(); i++) {
      if (i == 0 || !rows.get(i).continues(rows.get(i - 1))) {
        lines++;
      }
    }
    return lines;
  }

  /** With a caution for what it cannot tell. */
  Row watching(List<Mistake> mistakes, String caution) {
    String both = condition.isEmpty() ? caution : condition + " " + caution;
    return new Row(
        name, both, action, where, expected, otherwise, live, grounds, probing, mistakes, form);
  }

  /** True if something is taken off or unplugged for it that has to be put back. */
  boolean takesApart() {
    return probing.filter(p -> !p.lifted().isEmpty() || !p.apart().isEmpty()).isPresent();
  }

  /**
   * As printed.
   *
   * @param unique its name
   * @param line name of the first row of its line
   */
  TestRow numbered(String number, String unique, String line) {
    return new TestRow(
        unique,
        number,
        condition,
        action,
        where,
        expected,
        otherwise,
        live,
        grounds,
        form.manner(),
        form.label(),
        line,
        form.wire());
  }
}
