package org.coilwright;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.coilwright.cli.Inspection;
import org.coilwright.cli.Inspector;
import org.coilwright.netlist.Includes;
import org.coilwright.netlist.ReadingProblem;
import org.coilwright.rule.Report;

/**
 * The way in for a program that has netlists and wants to know what is wrong with them. It opens no
 * file, prints nothing, and remembers nothing of a netlist; what is kept from one call to the next
 * are the tables, which never change. Any number of threads may call at once: the same netlist
 * gives the same answer, whatever else is being checked.
 *
 * <pre>{@code
 * switch on Coilwright.check(text, Includes.none()):
 *   Judged:   report().verdict(), findings(), satisfied(), undecided()
 *   Unusable: problems(), each with its line and what to do
 * }</pre>
 *
 * <p>No finding does not mean that a circuit is safe. A check that lacks a figure is undecided, and
 * stands in the report as such; who maps a fleet of netlists has to count these as well.
 */
public final class Coilwright {
  /** What a netlist is called in messages where its text alone is given. */
  private static final String UNNAMED = "netlist";

  private Coilwright() {}

  /** Made when first asked for: reading the rules' tables takes a moment. */
  private static final class Held {
    private static final Inspector INSPECTOR = Inspector.standard();
  }

  /** What came of a netlist. */
  public sealed interface Answer {}

  /** It could be read, and every rule was asked. */
  public record Judged(Report report) implements Answer {}

  /** It could not be read, and no rule was asked; at least one problem. */
  public record Unusable(List<ReadingProblem> problems) implements Answer {}

  /**
   * Checks a netlist against every rule.
   *
   * @param text the netlist, YAML
   * @param includes brings what it includes; asked by the calling thread alone. {@link
   *     Includes#none} refuses every include
   * @throws RuntimeException if the program itself is at fault; nothing was judged then
   */
  public static Answer check(String text, Includes includes) {
    return check(UNNAMED, text.getBytes(StandardCharsets.UTF_8), includes);
  }

  /**
   * The same for the bytes of a file, which need not be text, let alone a netlist.
   *
   * @param name what messages call it, and the file that {@code includes} is asked from
   */
  public static Answer check(String name, byte[] bytes, Includes includes) {
    Inspection inspection = Held.INSPECTOR.inspect(name, bytes, includes);
    if (inspection instanceof Inspection.Done done) {
      return new Judged(done.report());
    } else if (inspection instanceof Inspection.Unusable unusable) {
      return new Unusable(unusable.problems());
    }
    throw new IllegalStateException("an inspection of no kind: " + inspection);
  }

  /**
   * The line that {@code coilwright check --as ndjson} prints of a file, without its end. A fault
   * of the program is told in it too, as {@code fault} beside a verdict of {@code null}, so that
   * one netlist among millions stops none of the others.
   *
   * @param name what the line calls it
   */
  public static String line(String name, byte[] bytes, Includes includes) {
    return Held.INSPECTOR.line(name, bytes, includes);
  }
}
