package org.coilwright.netlist;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.coilwright.quantity.Words;

/** Gathers what is wrong, each thing once, and not without end. */
final class Problems {
  /** More than a person reads in one go. */
  private static final int MOST = 100;

  private final String file;
  private final Map<String, List<String>> lines = new HashMap<>();
  private final List<ReadingProblem> found = new ArrayList<>();
  private final Set<List<Object>> seen = new HashSet<>();
  private int more;
  private int reports;

  /**
   * Starts with none.
   *
   * @param file the netlist itself, for problems without a place
   */
  Problems(String file) {
    this.file = file;
  }

  /** Makes a file's lines known, for excerpts. */
  void knows(FileText text) {
    lines.put(text.file(), text.lines());
  }

  void add(Mark mark, String what, String remedy) {
    add(Optional.of(mark), what, remedy);
  }

  void add(Refusal refusal) {
    add(refusal.mark(), refusal.what(), refusal.remedy());
  }

  void add(Optional<Mark> mark, String what, String remedy) {
    reports++;
    if (!seen.add(List.of(mark, what))) {
      return;
    }
    if (isFull()) {
      more++;
      return;
    }
    String where = mark.map(Mark::file).orElse(file);
    found.add(
        new ReadingProblem(
            where,
            mark,
            FileText.harmless(what),
            FileText.harmless(remedy),
            mark.flatMap(this::excerpt)));
  }

  /** Counts problems that nobody would read. */
  void addUnlisted(int count) {
    more += count;
  }

  /** True once further problems are only counted; a caller may then spare itself the search. */
  boolean isFull() {
    return found.size() >= MOST;
  }

  /** How often something has been found wrong, repetitions counted. */
  int reports() {
    return reports;
  }

  boolean isEmpty() {
    return found.isEmpty();
  }

  /** Every problem in the order of the files and lines. */
  List<ReadingProblem> all() {
    List<ReadingProblem> all = new ArrayList<>(found);
    all.sort((a, b) -> order(a) - order(b));
    if (more > 0) {
      all.add(
          new ReadingProblem(
              file,
              Optional.empty(),
              more + " further problems are not listed",
              "mend the first ones and read the file again",
              Optional.empty()));
    }
    return List.copyOf(all);
  }

  /** A word out of the file, short and harmless enough to stand in a message. */
  static String shown(String word) {
    return FileText.excerpt(Words.shortened(word).replace('\n', ' ').replace('\r', ' '));
  }

  private int order(ReadingProblem problem) {
    boolean own = problem.file().equals(file);
    return problem.mark().map(m -> own ? m.line() : LargestFile.BYTES + m.line()).orElse(0);
  }

  private Optional<String> excerpt(Mark mark) {
    List<String> text = lines.getOrDefault(mark.file(), List.of());
    return mark.line() > text.size()
        ? Optional.empty()
        : Optional.of(FileText.excerpt(text.get(mark.line() - 1)));
  }
}
