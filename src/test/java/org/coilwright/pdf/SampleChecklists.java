// Over 250 lines: a checklist of every kind of entry.
package org.coilwright.pdf;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.coilwright.checklist.Checklist;
import org.coilwright.checklist.Coverage;
import org.coilwright.checklist.Expected;
import org.coilwright.checklist.Expected.Band;
import org.coilwright.checklist.Grounds;
import org.coilwright.checklist.Hold;
import org.coilwright.checklist.Manner;
import org.coilwright.checklist.Section;
import org.coilwright.checklist.Section.Stage;
import org.coilwright.checklist.Step;
import org.coilwright.checklist.TestRow;
import org.coilwright.checklist.Texts;
import org.coilwright.drawing.Picture;
import org.coilwright.drawing.Shape;

/** Checklists made by hand, from an ordinary one to ones that strain the page. */
final class SampleChecklists {
  static final String DIGEST = "0123456789abcdef0123456789abcdef0123456789abcdef0123456789abcdef";

  private static final Checklist.Caution CAUTION =
      new Checklist.Caution(
          "C1", "Two supplies", List.of("One is off. The other is not.", "So both."), "practice");

  private SampleChecklists() {}

  static Checklist ordinary() {
    return with("Test bench, kiln room", "K1", 6, Checklist.Paper.A4);
  }

  static Checklist letter() {
    return with("Test bench, kiln room", "K1", 6, Checklist.Paper.LETTER);
  }

  /** Every text far longer than anybody would write, some without a space to break at. */
  static Checklist longNames() {
    String word = "Sammelschienenzwischenverteilerklemmenleistenbezeichnung".repeat(3);
    return with(
        "A title that does not want to end, " + word + " and more ".repeat(60),
        word,
        9,
        Checklist.Paper.A4);
  }

  /** One wire after another. */
  static Checklist manyWires() {
    return with("Long list", "K1", 300, Checklist.Paper.A4);
  }

  /** Every optional text empty, every list that may be empty empty. */
  static Checklist bare() {
    return new Checklist(
        Texts.english(),
        new Checklist.TitleBlock("x", "", "", "", "", "", "", DIGEST, "program", "2026-02-03"),
        Checklist.Paper.A4,
        Checklist.Part.USUAL,
        List.of("Local code decides."),
        new Checklist.Summary("CLEAR", "s", "c"),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        Coverage.NONE,
        List.of(),
        List.of(),
        List.of(),
        List.of(new Checklist.Signer("signer.tested-by", "Tested by")));
  }

  /** Two pictures: a frame with a turned and an upright label, and a dashed line. */
  private static List<Checklist.Figure> figures(String name) {
    List<Shape> shapes =
        List.of(
            Shape.line(10, 10, 390, 10, Shape.Stroke.of(1, 0)),
            Shape.line(10, 290, 390, 290, Shape.Stroke.dashed(1, 0.3, 4, 2)),
            Shape.box(180, 100, 30, 20, 0.8),
            new Shape.Label(
                new Shape.Point(200, 40), "1 kΩ ≤ 2.5 mm²", 10, Shape.Anchor.MIDDLE, false),
            new Shape.Label(new Shape.Point(30, 200), "upwards", 10, Shape.Anchor.START, true));
    return List.of(
        new Checklist.Figure(
            "Circuit diagram",
            "Where " + name + " is joined to the rest.",
            new Picture(400, 300, "diagram", shapes),
            Checklist.Figure.Beside.WIRES),
        new Checklist.Figure(
            "A day",
            "Power over a day.",
            new Picture(700, 300, "day", shapes),
            Checklist.Figure.Beside.SETTINGS));
  }

  private static final Coverage COVERAGE =
      new Coverage(
          List.of(
              new Coverage.Entry(
                  "wire 1 is left out",
                  Coverage.Fate.BEFORE_MAINS,
                  "1.1",
                  "wire-1.continuity",
                  "0 … 1 Ω",
                  "open"),
              new Coverage.Entry(
                  "wire 2 is on X1.3 instead of X1.2", Coverage.Fate.HARMLESS, "", "", "", "")),
          new Coverage.Added(0, 0, true));

  private static Checklist with(String title, String relay, int wires, Checklist.Paper paper) {
    Grounds published =
        new Grounds(
            "computed from U²/P at ±10 %", List.of("A handbook, table 3"), "published", false);
    Grounds memory = new Grounds("", List.of("A standard, clause 4"), "from-memory", true);
    List<Checklist.WireRow> rows = new ArrayList<>();
    for (int i = 1; i <= wires; i++) {
      rows.add(
          new Checklist.WireRow(
              "wire-" + i + ".wired",
              String.valueOf(i),
              relay + ".A1",
              "X1." + i,
              "W1",
              "0.75 mm²",
              "12.5 m",
              "GNYE",
              "ELV",
              i == 1 ? "E" : ""));
    }
    return new Checklist(
        Texts.english(),
        new Checklist.TitleBlock(
            title,
            "KR-7",
            "B",
            "2026-01-02",
            "site electrician",
            "Ω ≤ ≥ ± ² ° µ → ☐ " + relay,
            "kiln.yaml",
            DIGEST,
            "program 1.2.3",
            "2026-02-03"),
        paper,
        Set.of(Checklist.Part.ANNEX, Checklist.Part.ARCHIVE),
        List.of("Local code and the licensed electrician decide; this sheet does not."),
        new Checklist.Summary("FIX", "Mend what is listed before hand-over.", "1 to fix, 0 notes"),
        List.of("a reading is not met", "something smells", "anyone says stop"),
        List.of(
            new Checklist.FindingEntry(
                "finding.coil-too-low",
                "FIX",
                "coil.too-low",
                relay + ", line 18",
                relay + " may not pull in",
                "It gets 9.28 V and needs 9.60 V.",
                "9.28 V",
                "9.60 V",
                "Worst case: supply low.",
                "thicker wire.",
                published),
            new Checklist.FindingEntry(
                "finding.drive-below-least-load",
                "NOTE",
                "drive.below-least-load",
                "U1",
                "Too little current",
                "",
                "",
                "",
                "",
                "another contact.",
                memory)),
        List.of(
            new Checklist.AcceptedEntry(
                "accepted.drive-below-least-load",
                "NOTE",
                "drive.below-least-load",
                "U1",
                "Too little current",
                "the maker confirms 5 mA",
                "site electrician",
                false)),
        List.of(
            new Checklist.OpenPoint(
                "point.size-of-7", "P1", "Size of wire 7 to " + relay, "size is not stated")),
        List.of(CAUTION),
        List.of(CAUTION),
        List.of("Supply locked off."),
        rows,
        figures(relay),
        steps(relay, rows, published, memory),
        COVERAGE,
        List.of(
            new Checklist.SatisfiedEntry(
                "satisfied.coil-too-high",
                "coil.too-high",
                "coil above its range",
                3,
                relay,
                "25.2 V",
                "26.4 V",
                published),
            new Checklist.SatisfiedEntry(
                "satisfied.supply-unfused",
                "supply.unfused",
                "supply without limit",
                1,
                "U1",
                "",
                "",
                memory)),
        List.of(
            new Checklist.BrokenRow(
                "A load stays on", relay + " welds", "E1 is on when it should be off", "B1"),
            new Checklist.BrokenRow(
                "A load stays on", relay + " sticks", "E1 is on when it should be off", "nothing"),
            new Checklist.BrokenRow("Nothing changes", "V1 opens", "nothing changes", "–")),
        List.of(
            new Checklist.Instrument("instrument.voltage-tester", "Two-pole voltage tester"),
            new Checklist.Instrument("instrument.insulation-tester", "Insulation tester")),
        List.of(
            new Checklist.Signer("signer.prepared-by", "Prepared by"),
            new Checklist.Signer("signer.tested-by", "Tested by"),
            new Checklist.Signer("signer.accepted-by", "Accepted by")));
  }

  private static List<Step> steps(
      String relay, List<Checklist.WireRow> wires, Grounds published, Grounds memory) {
    List<Step> steps = new ArrayList<>();
    steps.add(wiring(wires, published));
    steps.add(section("2", "coils", Stage.DEAD, relay, published, memory));
    steps.add(section("3", "control voltage", Stage.ELV, relay, published, memory));
    steps.add(
        new Hold(
            "hold.before-mains",
            "before the mains",
            List.of("Every row above is met.", "Covers are on.")));
    steps.add(section("4", "load", Stage.MAINS, relay, published, memory));
    steps.add(section("5", "settings", Stage.SETTINGS, relay, published, memory));
    return steps;
  }

  /** The wiring list: every second wire is measured, the first with a reading. */
  private static Section wiring(List<Checklist.WireRow> wires, Grounds grounds) {
    List<TestRow> rows = new ArrayList<>();
    rows.add(
        new TestRow(
            "neutral.off",
            "1.1",
            "",
            "Take the incoming neutral off",
            "G0.N",
            new Expected.Seen(Expected.State.OFF),
            "it would be in every reading.",
            false,
            grounds,
            Manner.DONE,
            "",
            "neutral.off",
            ""));
    for (int i = 0; i < wires.size(); i += 2) {
      String name = wires.get(i).name().replace(".wired", ".continuity");
      rows.add(
          new TestRow(
              name,
              "1." + (rows.size() + 1),
              i == 2 ? "By eye: look at both ends." : "",
              "Measure the wire " + wires.get(i).number(),
              "between its ends",
              Band.atMost(0.5, "Ω"),
              "look for a loose clamp.",
              false,
              grounds,
              i == 0 ? Manner.READ : Manner.COMPARED,
              "",
              name,
              wires.get(i).name()));
    }
    return new Section("1", "wires", Stage.DEAD, List.of(CAUTION), "Supply locked off.", rows);
  }

  private static Section section(
      String number, String title, Stage stage, String relay, Grounds published, Grounds memory) {
    List<TestRow> rows = new ArrayList<>();
    List<Expected> expected =
        List.of(
            Band.between(594, 726, "Ω"),
            Band.atLeast(1, "MΩ"),
            Band.atMost(12, "V AC"),
            new Expected.Seen(Expected.State.PULLS_IN),
            new Expected.Setting("3.4 kW"));
    for (int i = 0; i < expected.size(); i++) {
      rows.add(
          new TestRow(
              relay + ".test-" + number + "-" + i,
              number + "." + (i + 1),
              i == 0 ? "" : "Output closed.",
              "Measure the coil of " + relay,
              "between " + relay + ".A1 and " + relay + ".A2",
              expected.get(i),
              "find the loose wire, then repeat the section.",
              stage.live(),
              i == 1 ? memory : published));
    }
    rows.addAll(shared(number, relay, stage, published));
    return new Section(number, title, stage, List.of(CAUTION), "Supply locked off.", rows);
  }

  /** A switching action, then two readings and something seen on one line. */
  private static List<TestRow> shared(String number, String relay, Stage stage, Grounds grounds) {
    String first = relay + ".line-" + number + "-0";
    List<TestRow> rows = new ArrayList<>();
    rows.add(
        new TestRow(
            relay + ".switched-" + number,
            number + ".6",
            "",
            "Switch " + relay + " on",
            "",
            new Expected.Seen(Expected.State.ON),
            "switch off.",
            stage.live(),
            grounds,
            Manner.SWITCHED,
            "",
            relay + ".switched-" + number,
            ""));
    for (int i = 0; i < 3; i++) {
      Expected expected =
          i == 2 ? new Expected.Seen(Expected.State.LETS_GO) : Band.atMost(2.4 + i, "V DC");
      rows.add(
          new TestRow(
              relay + ".line-" + number + "-" + i,
              number + "." + (7 + i),
              "",
              "Measure the line of " + relay,
              "between its pins",
              expected,
              "find the loose wire.",
              stage.live(),
              grounds,
              i == 2 ? Manner.SEEN : Manner.READ,
              "label " + i,
              first,
              ""));
    }
    return rows;
  }
}
