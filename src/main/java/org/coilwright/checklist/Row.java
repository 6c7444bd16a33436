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
    List<Mistake> watched) {

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
        List.of());
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

  Row when(String needed) {
    return new Row(
        name, needed, action, where, expected, otherwise, live, grounds, probing, watched);
  }

  Row live(boolean isLive) {
    return new Row(
        name, condition, action, where, expected, otherwise, isLive, grounds, probing, watched);
  }

  Row reading(Probing what) {
    return new Row(
        name,
        condition,
        action,
        where,
        expected,
        otherwise,
        live,
        grounds,
        Optional.of(what),
        watched);
  }

  /** With a caution for what it cannot tell. */
  Row watching(List<Mistake> mistakes, String caution) {
    String both = condition.isEmpty() ? caution : condition + " " + caution;
    return new Row(
        name, both, action, where, expected, otherwise, live, grounds, probing, mistakes);
  }

  /** True if something is taken off or unplugged for it that has to be put back. */
  boolean takesApart() {
    return probing.filter(p -> !p.lifted().isEmpty() || !p.apart().isEmpty()).isPresent();
  }

  TestRow numbered(String number, String unique) {
    return new TestRow(
        unique, number, condition, action, where, expected, otherwise, live, grounds);
  }
}
