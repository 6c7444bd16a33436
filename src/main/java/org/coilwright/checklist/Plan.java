package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.List;
import org.coilwright.checklist.Checklist.Caution;

/** Numbers the sections and rows and puts the hold points between the stages. */
final class Plan {
  private final Cautions.Chosen cautions;
  private final List<Step> steps = new ArrayList<>();
  private int sections;

  Plan(Cautions.Chosen cautions) {
    this.cautions = cautions;
  }

  /** Adds what is to be done while one stage lasts; a topic without rows is left out. */
  void add(List<Topic> topics) {
    boolean first = true;
    for (Topic topic : topics) {
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

  private void section(Topic topic, String title, List<Row> rows, boolean firstOfStage) {
    sections++;
    List<TestRow> numbered = new ArrayList<>();
    for (int i = 0; i < rows.size(); i++) {
      numbered.add(rows.get(i).numbered(sections + "." + (i + 1)));
    }
    List<String> readFirst = new ArrayList<>();
    if (firstOfStage) {
      for (Caution caution : cautions.before(topic.stage())) {
        readFirst.add(caution.number() + " " + caution.title());
      }
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

  void hold(String title, List<String> conditions) {
    steps.add(new Hold(title, conditions));
  }

  /** Number of the last section so far. */
  int sections() {
    return sections;
  }

  List<Step> steps() {
    return List.copyOf(steps);
  }
}
