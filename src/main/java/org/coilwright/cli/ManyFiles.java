package org.coilwright.cli;

import java.util.Iterator;
import java.util.List;
import java.util.function.Consumer;
import org.coilwright.rule.Report;
import org.coilwright.rule.Weight;

/**
 * Judges files one after the other, one of them in memory at a time. A fault of the program in one
 * file is told as such and does not lose the others.
 *
 * @param tell says what stands in the way of reading a file
 */
record ManyFiles(Inspector inspector, Console console, Consumer<Inspection.Unusable> tell) {
  /** A fault that many files meet is told of the first few: each leaves a file with its trace. */
  private static final int FAULTS_TOLD = 10;

  /**
   * Judges all of them.
   *
   * @param lightest the lightest finding that ends with 1
   * @return the exit code: that of the worst file
   */
  int judge(List<String> files, Account account, Weight lightest) {
    return judge(files.iterator(), files.size() == 1, account, lightest);
  }

  /**
   * Judges files whose names come one after the other.
   *
   * @param alone true if there is one and no other
   * @return the exit code: that of the worst file; that nothing was judged if there is none, or if
   *     what is told reaches nobody any more
   */
  int judge(Iterator<String> files, boolean alone, Account account, Weight lightest) {
    int code = files.hasNext() ? Exit.NOTHING_FOUND : Exit.UNUSABLE;
    int faults = 0;
    while (files.hasNext()) {
      int one = judge(files.next(), alone, account, lightest, faults < FAULTS_TOLD);
      faults += one == Exit.DEFECT ? 1 : 0;
      code = Math.max(code, one);
      if (console.out().checkError()) {
        return Math.max(code, Exit.UNUSABLE);
      }
    }
    account.end();
    return code;
  }

  private int judge(
      String file, boolean alone, Account account, Weight lightest, boolean isFaultTold) {
    try {
      Inspection inspection = inspector.inspect(file, console);
      if (inspection instanceof Inspection.Unusable unusable) {
        tell.accept(unusable);
      }
      account.add(inspection);
      return code(inspection, lightest);
    } catch (OutOfMemoryError tooLarge) {
      Inspection.Unusable unusable =
          new Inspection.Unusable(file, List.of(Room.ofProcess().exhausted(file)));
      tell.accept(unusable);
      account.add(unusable);
      return Exit.UNUSABLE;
    } catch (RuntimeException | Error fault) {
      account.add(new Inspection.Faulted(file, fault.toString()));
      if (!isFaultTold) {
        return Exit.DEFECT;
      }
      return alone ? Defect.tell(console, fault) : Defect.tell(console, file, fault);
    }
  }

  private static int code(Inspection inspection, Weight lightest) {
    if (inspection instanceof Inspection.Done done) {
      return fails(done.report(), lightest) ? Exit.FINDINGS : Exit.NOTHING_FOUND;
    }
    return Exit.UNUSABLE;
  }

  private static boolean fails(Report report, Weight lightest) {
    return report.findings().stream()
        .anyMatch(f -> report.counts(f) && f.weight().compareTo(lightest) <= 0);
  }
}
