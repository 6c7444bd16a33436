package org.coilwright.checklist;

import java.util.List;

/** What is done before anything is switched on: isolation, markings, resistances. */
final class DeadTopics {
  private static final String BEGIN = "Every supply locked off and proved dead.";

  private final Anatomy anatomy;
  private final Bands bands;

  DeadTopics(Anatomy anatomy, Bands bands) {
    this.anatomy = anatomy;
    this.bands = bands;
  }

  List<Topic> topics() {
    ColdRows cold = new ColdRows(anatomy, bands);
    return List.of(
        topic(
            "isolate and prove dead",
            "Nothing of this circuit has been switched on yet.",
            new IsolationRows(anatomy, bands).rows()),
        topic("parts are the ones listed", BEGIN, new MarkingRows(anatomy).rows()),
        topic("protective conductor", BEGIN, cold.protective()),
        topic("coils", BEGIN, cold.coils()),
        topic("control lines", BEGIN, cold.loops()),
        topic("loads", BEGIN, cold.elements()),
        topic("thermostats and cut-outs", BEGIN + " Vessel cold.", cold.thermals()),
        topic(
            "insulation",
            BEGIN + " Controllers, supply units and suppressors disconnected or joined out.",
            new InsulationRows(anatomy, bands).rows()));
  }

  private static Topic topic(String title, String beginWith, List<Row> rows) {
    return new Topic(Section.Stage.DEAD, title, beginWith, rows);
  }
}
