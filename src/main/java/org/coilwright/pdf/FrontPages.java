package org.coilwright.pdf;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.coilwright.checklist.Blank;
import org.coilwright.checklist.Blanks;
import org.coilwright.checklist.Checklist;
import org.coilwright.checklist.Grounds;
import org.coilwright.checklist.Texts;

/** Everything before the tests: title block, verdict, findings, open points, cautions, wires. */
final class FrontPages extends Pages {

  private final SettlingPages settling;

  FrontPages(Press press) {
    super(press);
    this.settling = new SettlingPages(press);
  }

  void draw(Checklist checklist) {
    prose.heading(texts.of("page.title"), Role.HEADING_1, 0);
    titleBlock(checklist.title());
    sheet.down(8);
    verdict(checklist);
    prose.framed(checklist.notice().stream().map(Prose.Line::bold).toList(), 1.2);
    List<Prose.Line> how = new ArrayList<>();
    how.add(Prose.Line.plain(texts.of("tests.note")));
    if (!texts.of("language.note").isBlank()) {
      how.add(Prose.Line.plain(texts.of("language.note")));
    }
    prose.framed(how, Type.HAIRLINE);
    instruments(checklist.instruments());
    findings(checklist.findings());
    settling.draw(checklist);
    wires(checklist);
  }

  private void titleBlock(Checklist.TitleBlock title) {
    Grid grid = grid(new Grid.Column("", 34 * MM), new Grid.Column("", 0));
    line(grid, texts.of("title.circuit"), title.circuit());
    line(
        grid,
        texts.of("title.reference"),
        texts.of("title.revision", title.reference(), title.revision()));
    line(grid, texts.of("title.date"), title.date());
    line(grid, texts.of("title.prepared-by"), title.preparedBy());
    if (!title.note().isBlank()) {
      line(grid, texts.of("title.note"), title.note());
    }
    line(grid, texts.of("title.netlist"), title.file());
    line(grid, texts.of("title.sha256"), title.sha256());
    line(
        grid,
        texts.of("title.printed"),
        texts.of("title.printed-by", title.printed(), title.program()));
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
    String coverage = checklist.coverage().sentence(checklist.texts());
    if (!coverage.isEmpty()) {
      lines.add(Prose.Line.plain(coverage));
    }
    prose.framed(lines, 2);
    if (!checklist.stopIf().isEmpty()) {
      List<Prose.Line> stop = new ArrayList<>();
      stop.add(Prose.Line.bold(texts.of("stop-if")));
      checklist.stopIf().forEach(text -> stop.add(Prose.Line.plain("–  " + text)));
      prose.framed(stop, Type.HAIRLINE);
    }
  }

  private void instruments(List<Checklist.Instrument> instruments) {
    Grid grid =
        grid(
            new Grid.Column(texts.of("column.instrument"), 0),
            new Grid.Column(texts.of("column.make"), 36 * MM),
            new Grid.Column(texts.of("column.number"), 36 * MM),
            new Grid.Column(texts.of("column.calibrated"), 34 * MM));
    for (Checklist.Instrument instrument : instruments) {
      List<Blank> blanks = Blanks.instrument(instrument);
      grid.row(
          List.of(
              Cell.text(instrument.text()),
              Cell.EMPTY.andSpace(32 * MM, 18, "", blanks.get(0)),
              Cell.EMPTY.andSpace(32 * MM, 18, "", blanks.get(1)),
              Cell.EMPTY.andSpace(30 * MM, 18, "", blanks.get(2))));
    }
    prose.heading(texts.of("page.instruments"), Role.HEADING_2, grid.height());
    grid.draw(document);
  }

  private void findings(List<Checklist.FindingEntry> findings) {
    Grid grid =
        grid(
            new Grid.Column("", 15 * MM),
            new Grid.Column(texts.of("column.finding"), 0),
            new Grid.Column(texts.of("column.value"), 25 * MM),
            new Grid.Column(texts.of("column.limit"), 25 * MM),
            new Grid.Column(texts.of("column.mended"), 18 * MM));
    for (Checklist.FindingEntry finding : findings) {
      Cell text =
          Cell.bold(finding.headline())
              .and(finding.numbers())
              .and(finding.detail())
              .and(finding.remedy().isBlank() ? "" : texts.of("finding.do", finding.remedy()))
              .english(!texts.isOfRules());
      grid.row(
          List.of(
              Cell.bold(finding.weight()),
              text,
              Cell.text(finding.value()),
              Cell.text(finding.limit()),
              Cell.EMPTY.andTick("", Blanks.mended(finding))),
          grounds(
              texts,
              Cell.EMPTY,
              texts.of("finding.rule-at", texts.ruleNamed(finding.rule()), finding.at()),
              finding.grounds(),
              Optional.of(Blanks.confirmed(finding))),
          false);
    }
    grid.titled(texts.of("page.continued", texts.of("page.findings")));
    prose.heading(texts.of("page.findings"), Role.HEADING_2, grid.beginning());
    if (findings.isEmpty()) {
      prose.paragraph(Prose.Line.plain(texts.of("findings.none")));
    } else {
      grid.draw(document);
    }
  }

  /**
   * Adds where a figure comes from, and that it must be confirmed if it rests on memory.
   *
   * @param subject name of what rests on it; may be empty
   * @param confirmed box to tick once it is confirmed
   */
  static Cell grounds(
      Texts texts, Cell cell, String subject, Grounds grounds, Optional<Blank> confirmed) {
    String sources =
        grounds.sources().isEmpty()
            ? ""
            : texts.of(
                subject.isEmpty() ? "grounds.from" : "grounds.subject-from",
                String.join("; ", grounds.sources()),
                texts.standing(grounds.standing()));
    Cell out = cell.and(subject + sources);
    if (!grounds.confirm()) {
      return out;
    }
    String confirm = texts.of("grounds.confirm");
    return confirmed.map(blank -> out.andTick(confirm, blank)).orElseGet(() -> out.and(confirm));
  }

  private void wires(Checklist checklist) {
    CautionBlock cautions =
        new CautionBlock(sheet, faces, document, texts, checklist.beforeWiring());
    Grid grid =
        grid(
            new Grid.Column(texts.of("column.no"), 13 * MM),
            new Grid.Column(texts.of("column.from"), 0),
            new Grid.Column(texts.of("column.to"), 25 * MM),
            new Grid.Column(texts.of("column.run"), 17 * MM),
            new Grid.Column(texts.of("column.size"), 23 * MM),
            new Grid.Column(texts.of("column.length"), 19 * MM),
            new Grid.Column(texts.of("column.colour"), 26 * MM),
            new Grid.Column(texts.of("column.carries"), 18 * MM),
            new Grid.Column(texts.of("column.wired"), 13 * MM));
    for (Checklist.WireRow wire : checklist.wires()) {
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
    grid.titled(texts.of("page.continued", texts.of("page.wires")));
    prose.heading(
        texts.of("page.wires"), Role.HEADING_2, cautions.height() + grid.beginning() + 70);
    cautions.draw();
    checklist.wiringNotes().forEach(note -> prose.paragraph(Prose.Line.plain(note)));
    grid.draw(document);
  }
}
