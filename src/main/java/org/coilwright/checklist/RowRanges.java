package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Numbers as printed, such as {@code Row 2.1} or {@code 2.1}, with what follows on written once.
 */
public final class RowRanges {
  private static final Pattern NUMBERED = Pattern.compile("(.*?)((?:\\d+\\.)?)(\\d{1,6})");

  private RowRanges() {}

  /**
   * The same, three or more that follow on one another as {@code Row 2.1–2.6}. What bears no number
   * stays as it is.
   *
   * @param numbers in the order they are to be listed
   */
  public static List<String> of(List<String> numbers) {
    List<String> ranges = new ArrayList<>();
    int start = 0;
    for (int i = 1; i <= numbers.size(); i++) {
      if (i == numbers.size() || !follows(numbers.get(i - 1), numbers.get(i))) {
        ranges.addAll(range(numbers.subList(start, i)));
        start = i;
      }
    }
    return List.copyOf(ranges);
  }

  private static boolean follows(String one, String next) {
    Matcher a = NUMBERED.matcher(one);
    Matcher b = NUMBERED.matcher(next);
    return a.matches()
        && b.matches()
        && a.group(1).equals(b.group(1))
        && a.group(2).equals(b.group(2))
        && Integer.parseInt(a.group(3)) + 1 == Integer.parseInt(b.group(3));
  }

  private static List<String> range(List<String> run) {
    if (run.size() < 3) {
      return run;
    }
    Matcher last = NUMBERED.matcher(run.get(run.size() - 1));
    return last.matches()
        ? List.of(run.get(0) + "–" + last.group(2) + last.group(3))
        : run; // never so: a run is of numbers
  }
}
