package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.List;

/** What is done before anything is switched on: isolation, markings, resistances. */
final class DeadTopics {
  private final Anatomy anatomy;
  private final Bands bands;
  private final Texts texts;
  private final DeadTests tests;
  private Coverage.Added added = Coverage.NONE.added();

  DeadTopics(DeadTests tests) {
    this.anatomy = tests.anatomy();
    this.bands = tests.bands();
    this.texts = tests.texts();
    this.tests = tests;
  }

  List<Topic> topics() {
    String dead = texts.of("begin.dead");
    String read = dead + " " + texts.of("begin.all-open");
    ColdRows cold = new ColdRows(tests);
    ContinuityRows continuity = new ContinuityRows(tests);
    List<Row> protective = cold.protective();
    List<Topic> topics = new ArrayList<>();
    topics.add(
        topic(
            "isolate",
            texts.of("begin.nothing-on"),
            new IsolationRows(anatomy, bands, texts).rows()));
    topics.add(topic("markings", dead, new MarkingRows(anatomy, texts).rows()));
    topics.add(topic("protective-conductor", read, protective));
    topics.add(topic("wires", read, continuity.rows(protective, false)));
    topics.add(
        topic(
            "thermal-wires",
            dead + " " + texts.of("begin.thermals-open", continuity.opening()),
            continuity.rows(protective, true)));
    topics.add(topic("coils", read, cold.coils()));
    topics.add(topic("diodes", read, cold.diodes()));
    topics.add(topic("loads", read, cold.elements()));
    topics.add(topic("thermals", read + " " + texts.of("begin.vessel-cold"), cold.thermals()));
    Topic insulation =
        topic(
            "insulation",
            read + " " + texts.of("begin.electronics-out"),
            new InsulationRows(tests).rows());
    List<Row> before = new ArrayList<>();
    topics.forEach(topic -> before.addAll(topic.rows()));
    before.addAll(insulation.rows());
    NeighbourRows search = new NeighbourRows(tests);
    List<Row> neighbours = search.rows(before);
    added = search.added();
    topics.add(topic("neighbours", read, neighbours));
    topics.add(insulation);
    before.addAll(neighbours);
    return new EyeCautions(tests).at(topics, tests.mistakes().left(before));
  }

  /** How many rows were chosen for mistakes that the others do not show. */
  Coverage.Added added() {
    return added;
  }

  private Topic topic(String key, String beginWith, List<Row> rows) {
    return Topic.of(key, Section.Stage.DEAD, texts.of("section." + key), beginWith, rows);
  }
}
