package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.coilwright.checklist.Checklist.Caution;

/** Numbers the sections and rows and puts the hold points between the stages. */
final class Plan {
  private final Cautions.Chosen cautions;
  private final List<Step> steps = new ArrayList<>();
  private final Set<String> names = new HashSet<>();
  private int sections;

  Plan(Cautions.Chosen cautions) {
    this.cautions = cautions;
  }

  /** Adds what is to be done while one stage lasts; a topic without rows is left out. */
  void add(List<Topic> topics) {
    boolean first = true;
    for (Topic topic : joined(topics)) {
      List<Row> rows = topic.rows();
      // Parts of like size: ten rows become five and five, not nine and one.
      int parts = (rows.size() + Section.MOST_ROWS - 1) / Section.MOST_ROWS;
      for (int part = 0; part < parts; part++) {
        int from = part * rows.size() / parts;
        int to = (part + 1) * rows.size() / parts;
        String title = parts == 1 ? topic.title() : topic.title() + ", part " + (part + 1);
        section(topic, title, rows.subList(from, to), first);
        first = false;
      }
    }
  }

  /** Neighbours that begin alike and together hold few enough rows become one. */
  private static List<Topic> joined(List<Topic> topics) {
    List<Topic> joined = new ArrayList<>();
    for (Topic topic : topics) {
      if (topic.rows().isEmpty()) {
        continue;
      }
      int last = joined.size() - 1;
      if (last >= 0 && joined.get(last).joins(topic)) {
        joined.set(last, joined.get(last).with(topic));
      } else {
        joined.add(topic);
      }
    }
    return joined;
  }

  private void section(Topic topic, String title, List<Row> rows, boolean firstOfStage) {
    sections++;
    List<TestRow> numbered = new ArrayList<>();
    for (int i = 0; i < rows.size(); i++) {
      Row row = rows.get(i);
      numbered.add(row.numbered(sections + "." + (i + 1), Names.free(row.name(), names)));
    }
    List<String> readFirst = new ArrayList<>();
    if (firstOfStage) {
      cautions.before(topic.stage()).stream().map(Caution::number).forEach(readFirst::add);
    }
    steps.add(
        new Section(
            String.valueOf(sections),
            title,
            topic.stage(),
            readFirst,
            topic.beginWith(),
            numbered));
  }

  void hold(String name, String title, List<String> conditions) {
    steps.add(new Hold(name, title, conditions));
  }

  /** Number of the last section so far. */
  int sections() {
    return sections;
  }

  List<Step> steps() {
    return List.copyOf(steps);
  }
}
