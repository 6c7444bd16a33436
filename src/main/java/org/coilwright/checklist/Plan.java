package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Numbers the sections and rows and puts the hold points between the stages. */
final class Plan {
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

  /** Another one with the same cautions, none of them placed, and nothing in it. */
  Plan empty() {
    return new Plan(cautions.anew(), texts);
  }

  /** Adds what is to be done while one stage lasts; a topic without rows is left out. */
  void add(List<Topic> topics) {
    List<Topic> joined = joined(topics);
    Set<String> keys = new HashSet<>();
    joined.forEach(topic -> keys.addAll(topic.keys()));
    for (Topic topic : joined) {
      List<Row> rows = topic.rows();
      List<List<Row>> parts = parted(rows);
      for (int part = 0; part < parts.size(); part++) {
        String title =
            parts.size() == 1 ? topic.title() : texts.of("section.part", topic.title(), part + 1);
        section(topic, title, parts.get(part), keys);
      }
    }
  }

  /** Parts of like length, each short enough for one section; no line is parted. */
  private static List<List<Row>> parted(List<Row> rows) {
    long counted = Row.lines(rows.stream().filter(row -> !isListed(row)).toList());
    int parts = (int) Math.max(1, (counted + Section.MOST_LINES - 1) / Section.MOST_LINES);
    int most = (int) ((counted + parts - 1) / parts);
    List<List<Row>> all = new ArrayList<>();
    List<Row> open = new ArrayList<>();
    int lines = 0;
    for (int i = 0; i < rows.size(); i++) {
      Row row = rows.get(i);
      boolean next = i == 0 || !row.continues(rows.get(i - 1));
      boolean counts = next && !isListed(row);
      if (counts && lines == most) {
        all.add(List.copyOf(open));
        open.clear();
        lines = 0;
      }
      lines += counts ? 1 : 0;
      open.add(row);
    }
    all.add(List.copyOf(open));
    return all;
  }

  private static boolean isListed(Row row) {
    return !row.form().wire().isEmpty() || Section.isListed(row.form().manner());
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
    String line = "";
    int number = 0;
    for (int i = 0; i < rows.size(); i++) {
      Row row = rows.get(i);
      String name = Names.free(row.name(), names);
      boolean ofWire = !row.form().wire().isEmpty();
      number += ofWire ? 0 : 1;
      if (i == 0 || !row.continues(rows.get(i - 1))) {
        line = name;
      }
      TestRow printed =
          row.numbered(ofWire ? row.form().number() : sections + "." + number, name, line);
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
