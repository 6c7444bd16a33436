package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Numbers the sections and rows and puts the hold points between the stages. */
final class Plan {
  /** Rows of a part of a topic that is too long for one section; two of these fit on a page. */
  private static final int PART_ROWS = 5;

  private final Cautions.Chosen cautions;
  private final Texts texts;
  private final List<Step> steps = new ArrayList<>();
  private final Set<String> names = new HashSet<>();
  private final List<Placed> placed = new ArrayList<>();
  private int sections;

  /** A row and how it was printed. */
  record Placed(Row row, TestRow printed) {}

  Plan(Cautions.Chosen cautions, Texts texts) {
    this.cautions = cautions;
    this.texts = texts;
  }

  /** Adds what is to be done while one stage lasts; a topic without rows is left out. */
  void add(List<Topic> topics) {
    List<Topic> joined = joined(topics);
    Set<String> keys = new HashSet<>();
    joined.forEach(topic -> keys.addAll(topic.keys()));
    for (Topic topic : joined) {
      List<Row> rows = topic.rows();
      // Parts of like size, and small: ten rows become five and five, which share a page.
      int parts = rows.size() <= Section.MOST_ROWS ? 1 : (rows.size() + PART_ROWS - 1) / PART_ROWS;
      for (int part = 0; part < parts; part++) {
        int from = part * rows.size() / parts;
        int to = (part + 1) * rows.size() / parts;
        String title =
            parts == 1 ? topic.title() : texts.of("section.part", topic.title(), part + 1);
        section(topic, title, rows.subList(from, to), keys);
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

  private void section(Topic topic, String title, List<Row> rows, Set<String> keys) {
    sections++;
    List<TestRow> numbered = new ArrayList<>();
    for (int i = 0; i < rows.size(); i++) {
      Row row = rows.get(i);
      TestRow printed = row.numbered(sections + "." + (i + 1), Names.free(row.name(), names));
      numbered.add(printed);
      placed.add(new Placed(row, printed));
    }
    steps.add(
        new Section(
            String.valueOf(sections),
            title,
            topic.stage(),
            cautions.before(topic, keys),
            topic.beginWith(),
            numbered));
  }

  void hold(String name, String title, List<String> conditions) {
    steps.add(new Hold(name, title, conditions));
  }

  /** Every row so far, in order. */
  List<Placed> rows() {
    return List.copyOf(placed);
  }

  /** Number of the last section so far. */
  int sections() {
    return sections;
  }

  List<Step> steps() {
    return List.copyOf(steps);
  }
}
