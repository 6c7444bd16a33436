package org.coilwright.checklist;

import java.util.List;

/** What is done before anything is switched on: isolation, markings, resistances. */
final class DeadTopics {
  private final Anatomy anatomy;
  private final Bands bands;
  private final Texts texts;

  DeadTopics(Anatomy anatomy, Bands bands, Texts texts) {
    this.anatomy = anatomy;
    this.bands = bands;
    this.texts = texts;
  }

  List<Topic> topics() {
    String dead = texts.of("begin.dead");
    ColdRows cold = new ColdRows(anatomy, bands);
    return List.of(
        topic(
            "isolate",
            texts.of("begin.nothing-on"),
            new IsolationRows(anatomy, bands, texts).rows()),
        topic("markings", dead, new MarkingRows(anatomy, texts).rows()),
        topic("protective-conductor", dead, cold.protective()),
        topic("coils", dead, cold.coils()),
        topic("control-lines", dead, cold.loops()),
        topic("loads", dead, cold.elements()),
        topic("thermals", dead + " " + texts.of("begin.vessel-cold"), cold.thermals()),
        topic(
            "insulation",
            dead + " " + texts.of("begin.electronics-out"),
            new InsulationRows(anatomy, bands).rows()));
  }

  private Topic topic(String key, String beginWith, List<Row> rows) {
    return Topic.of(key, Section.Stage.DEAD, texts.of("section." + key), beginWith, rows);
  }
}
