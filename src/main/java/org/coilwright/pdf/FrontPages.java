package org.coilwright.pdf;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.coilwright.checklist.Blank;
import org.coilwright.checklist.Blanks;
import org.coilwright.checklist.Checklist;
import org.coilwright.checklist.Grounds;

/** Everything before the tests: title block, verdict, findings, open points, cautions, wires. */
final class FrontPages {
  private static final double MM = Sheet.MM;

  private final Sheet sheet;
  private final Faces faces;
  private final Prose prose;
  private final Tag document;

  FrontPages(Sheet sheet, Faces faces, Prose prose, Tag document) {
    this.sheet = sheet;
    this.faces = faces;
    this.prose = prose;
    this.document = document;
  }

  void draw(Checklist checklist) {
    prose.heading("Checklist before the first switch-on", Role.HEADING_1, 0);
    titleBlock(checklist.title());
    sheet.down(8);
    verdict(checklist);
    prose.framed(checklist.notice().stream().map(Prose.Line::bold).toList(), 1.2);
    instruments(checklist.instruments());
    findings(checklist.findings());
    accepted(checklist.accepted());
    openPoints(checklist.openPoints());
    cautions(checklist.cautions());
    wires(checklist.wires());
  }

  private void titleBlock(Checklist.TitleBlock title) {
    Grid grid = grid(new Grid.Column("", 34 * MM), new Grid.Column("", 0));
    line(grid, "Circuit", title.circuit());
    line(grid, "Reference", title.reference() + ", revision " + title.revision());
    line(grid, "Date of the netlist", title.date());
    line(grid, "Prepared by", title.preparedBy());
    if (!title.note().isBlank()) {
      line(grid, "Note", title.note());
    }
    line(grid, "Netlist", title.file());
    line(grid, "SHA-256 of it", title.sha256());
    line(grid, "Printed", title.printed() + " by " + title.program());
    grid.draw(document);
  }

  private static void line(Grid grid, String name, String value) {
    grid.tight(List.of(Cell.text(name), Cell.bold(value)));
  }

  private void verdict(Checklist checklist) {
    List<Prose.Line> lines = new ArrayList<>();
    lines.add(Prose.Line.large(checklist.summary().word()));
    lines.add(Prose.Line.bold(checklist.summary().sentence()));
    lines.add(Prose.Line.plain(checklist.summary().counts()));
    prose.framed(lines, 2);
    if (!checklist.stopIf().isEmpty()) {
      List<Prose.Line> stop = new ArrayList<>();
      stop.add(Prose.Line.bold("Anyone may stop the work. Stop at once if"));
      checklist.stopIf().forEach(text -> stop.add(Prose.Line.plain("–  " + text)));
      prose.framed(stop, Type.HAIRLINE);
    }
  }

  private void instruments(List<Checklist.Instrument> instruments) {
    Grid grid =
        grid(
            new Grid.Column("Instrument", 0),
            new Grid.Column("Make", 36 * MM),
            new Grid.Column("Number", 36 * MM),
            new Grid.Column("Calibrated until", 34 * MM));
    for (Checklist.Instrument instrument : instruments) {
      List<Blank> blanks = Blanks.instrument(instrument);
      grid.row(
          List.of(
              Cell.text(instrument.text()),
              Cell.EMPTY.andSpace(32 * MM, 18, "", blanks.get(0)),
              Cell.EMPTY.andSpace(32 * MM, 18, "", blanks.get(1)),
              Cell.EMPTY.andSpace(30 * MM, 18, "", blanks.get(2))));
    }
    prose.heading("Instruments", Role.HEADING_2, grid.height());
    grid.draw(document);
  }

  private void findings(List<Checklist.FindingEntry> findings) {
    Grid grid =
        grid(
            new Grid.Column("", 15 * MM),
            new Grid.Column("Finding", 0),
            new Grid.Column("Value", 25 * MM),
            new Grid.Column("Limit", 25 * MM),
            new Grid.Column("Mended", 18 * MM));
    for (Checklist.FindingEntry finding : findings) {
      Cell text =
          Cell.bold(finding.headline())
              .and(finding.numbers())
              .and(finding.detail())
              .and("Do: " + finding.remedy());
      grid.row(
          List.of(
              Cell.bold(finding.weight()),
              text,
              Cell.text(finding.value()),
              Cell.text(finding.limit()),
              Cell.EMPTY.andTick("", Blanks.mended(finding))),
          grounds(
              Cell.EMPTY,
              finding.rule() + " at " + finding.at(),
              finding.grounds(),
              Optional.of(Blanks.confirmed(finding))),
          false);
    }
    grid.titled("Findings");
    prose.heading("Findings", Role.HEADING_2, grid.beginning());
    if (findings.isEmpty()) {
      prose.paragraph(
          Prose.Line.plain(
              "No rule found anything. That says what was looked for, not that nothing is wrong."));
    } else {
      grid.draw(document);
    }
  }

  private void accepted(List<Checklist.AcceptedEntry> entries) {
    if (entries.isEmpty()) {
      return;
    }
    Grid grid =
        grid(
            new Grid.Column("", 15 * MM),
            new Grid.Column("Accepted deviation", 0),
            new Grid.Column("Initials", 17 * MM));
    for (Checklist.AcceptedEntry entry : entries) {
      Cell text =
          Cell.bold(entry.headline())
              .and(entry.rule() + " at " + entry.at())
              .and("Accepted by " + entry.by() + ", because: " + entry.because())
              .and(entry.counts() ? "It still counts: a STOP cannot be accepted." : "");
      grid.row(
          List.of(
              Cell.bold(entry.weight()),
              text,
              Cell.EMPTY.andSpace(13 * MM, 24, "", Blanks.initials(entry))));
    }
    grid.titled("Accepted deviations");
    prose.heading("Accepted deviations", Role.HEADING_2, grid.beginning() + 20);
    prose.paragraph(
        Prose.Line.plain("Put your own initials beside each only if you accept it, too."));
    grid.draw(document);
  }

  /**
   * Adds where a figure comes from, and that it must be confirmed if it rests on memory.
   *
   * @param subject name of what rests on it; may be empty
   * @param confirmed box to tick once it is confirmed
   */
  static Cell grounds(Cell cell, String subject, Grounds grounds, Optional<Blank> confirmed) {
    String sources =
        grounds.sources().isEmpty()
            ? ""
            : (subject.isEmpty() ? "From: " : ", from: ")
                + String.join("; ", grounds.sources())
                + " ("
                + grounds.standing()
                + ")";
    Cell out = cell.and(subject + sources);
    if (!grounds.confirm()) {
      return out;
    }
    String confirm = "From memory: " + Grounds.CONFIRM;
    return confirmed.map(blank -> out.andTick(confirm, blank)).orElseGet(() -> out.and(confirm));
  }

  private void openPoints(List<Checklist.OpenPoint> points) {
    Grid grid =
        grid(
            new Grid.Column("No", 14 * MM),
            new Grid.Column("Find out on site", 0),
            new Grid.Column("Found", 46 * MM),
            new Grid.Column("Initials", 17 * MM));
    for (Checklist.OpenPoint point : points) {
      grid.row(
          List.of(
              Cell.bold(point.number()),
              Cell.text(point.what()).and(point.why()),
              Cell.EMPTY.andSpace(42 * MM, 24, "", Blanks.found(point)),
              Cell.EMPTY.andSpace(13 * MM, 24, "", Blanks.initials(point))));
    }
    grid.titled("To be settled on site");
    prose.heading("To be settled on site", Role.HEADING_2, grid.beginning());
    if (points.isEmpty()) {
      prose.paragraph(Prose.Line.plain("Nothing was left open by the checks that were made."));
    } else {
      prose.paragraph(
          Prose.Line.plain(
              "These could not be checked from the netlist, or rest on a figure from memory."
                  + " Each must be settled before the mains is switched on."));
      grid.draw(document);
    }
  }

  private void cautions(List<Checklist.Caution> cautions) {
    prose.heading("Cautions for this circuit", Role.HEADING_2, 60);
    Grid grid = grid(new Grid.Column("", 12 * MM), new Grid.Column("", 0));
    grid.titled("Cautions for this circuit");
    for (Checklist.Caution caution : cautions) {
      Cell text = Cell.bold(caution.title());
      for (String paragraph : caution.paragraphs()) {
        text = text.and(paragraph);
      }
      grid.row(List.of(Cell.bold(caution.number()), text.and("From: " + caution.source())));
    }
    grid.draw(document);
  }

  private void wires(List<Checklist.WireRow> wires) {
    Grid grid =
        grid(
            new Grid.Column("No", 13 * MM),
            new Grid.Column("From", 0),
            new Grid.Column("To", 28 * MM),
            new Grid.Column("Run", 15 * MM),
            new Grid.Column("Size", 19 * MM),
            new Grid.Column("Length", 19 * MM),
            new Grid.Column("Colour", 26 * MM),
            new Grid.Column("Carries", 18 * MM),
            new Grid.Column("Wired", 13 * MM));
    for (Checklist.WireRow wire : wires) {
      grid.row(
          List.of(
              Cell.bold(wire.number()),
              Cell.text(wire.from()),
              Cell.text(wire.to()),
              Cell.text(wire.run()),
              Cell.text(wire.size()),
              Cell.text(wire.length()),
              Cell.text(wire.colour()),
              Cell.text(wire.carries()),
              Cell.EMPTY.andTick("", Blanks.wired(wire))));
    }
    grid.titled("Wiring list");
    prose.heading("Wiring list", Role.HEADING_2, grid.beginning() + 40);
    prose.paragraph(
        Prose.Line.plain(
            "Supply locked off. Tick a wire after both its ends are fast and pulled, before the"
                + " next one is begun."));
    grid.draw(document);
  }

  private Grid grid(Grid.Column... columns) {
    return new Grid(sheet, faces, List.of(columns));
  }
}
