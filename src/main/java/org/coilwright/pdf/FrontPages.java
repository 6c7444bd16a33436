package org.coilwright.pdf;

import java.util.ArrayList;
import java.util.List;
import org.coilwright.checklist.Blank;
import org.coilwright.checklist.Blanks;
import org.coilwright.checklist.Checklist;

/** Everything before the tests: title block, verdict, findings, open points, cautions, wires. */
final class FrontPages extends Pages {

  private final SettlingPages settling;
  private final AnnexPages annex;

  FrontPages(Press press) {
    super(press);
    this.settling = new SettlingPages(press);
    this.annex = new AnnexPages(press);
  }

  void draw(Checklist checklist) {
    boolean stopped = checklist.isStopped();
    prose.heading(texts.of(stopped ? "page.mend-title" : "page.title"), Role.HEADING_1, 0);
    titleBlock(checklist.title());
    sheet.down(6);
    verdict(checklist);
    prose.framed(checklist.notice().stream().map(Prose.Line::bold).toList(), 1.2);
    List<Prose.Line> how = new ArrayList<>();
    how.add(Prose.Line.plain(texts.of(stopped ? "mend.note" : "tests.note")));
    if (!texts.of("language.note").isBlank()) {
      how.add(Prose.Line.plain(texts.of("language.note")));
    }
    prose.framed(how, Type.HAIRLINE);
    checklist
        .elsewhere()
        .forEach(
            caution ->
                prose.paragraph(
                    Prose.Line.bold(texts.of("caution.line", caution.number(), caution.title()))));
    if (stopped) {
      annex.findings(checklist.findings());
    } else {
      findings(checklist.findings());
      settling.draw(checklist);
    }
    instruments(checklist.instruments());
  }

  /** One line each; the annex has them in full. */
  private void findings(List<Checklist.FindingEntry> findings) {
    if (findings.isEmpty()) {
      return;
    }
    Grid grid = grid(new Grid.Column("", 15 * MM), new Grid.Column("", 0));
    for (Checklist.FindingEntry finding : findings) {
      grid.tight(
          List.of(
              Cell.bold(finding.weight()),
              Cell.text(texts.of("finding.brief", finding.headline(), finding.at()))
                  .english(!texts.isOfRules())));
    }
    grid.titled(texts.of("page.continued", texts.of("page.findings")));
    prose.heading(texts.of("page.findings"), Role.HEADING_2, grid.beginning());
    grid.draw(document);
  }

  private void titleBlock(Checklist.TitleBlock title) {
    double half = (sheet.width() - 48 * MM) / 2;
    Grid grid =
        grid(
            new Grid.Column("", 24 * MM),
            new Grid.Column("", half),
            new Grid.Column("", 24 * MM),
            new Grid.Column("", 0));
    over(grid, "title.circuit", title.circuit());
    grid.tight(
        List.of(
            Cell.text(texts.of("title.reference")),
            Cell.bold(texts.of("title.revision", title.reference(), title.revision())),
            Cell.text(texts.of("title.prepared-by")),
            Cell.bold(title.preparedBy())));
    grid.tight(
        List.of(
            Cell.text(texts.of("title.date")),
            Cell.bold(title.date()),
            Cell.text(texts.of("title.printed")),
            Cell.bold(texts.of("title.printed-by", title.printed(), title.program()))));
    if (!title.note().isBlank()) {
      over(grid, "title.note", title.note());
    }
    over(grid, "title.netlist", title.file());
    over(grid, "title.sha256", title.sha256());
    grid.draw(document);
  }

  private void over(Grid grid, String key, String value) {
    grid.over(List.of(Cell.text(texts.of(key)), Cell.bold(value)), false, 1, 3);
  }

  private void verdict(Checklist checklist) {
    prose.framed(
        List.of(
            Prose.Line.large(checklist.summary().word()),
            Prose.Line.bold(checklist.summary().sentence()),
            Prose.Line.plain(checklist.summary().counts())),
        2);
    if (!checklist.stopIf().isEmpty()) {
      prose.framed(
          List.of(
              Prose.Line.bold(texts.of("stop-if")),
              Prose.Line.plain(String.join(" ", checklist.stopIf()))),
          Type.HAIRLINE);
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
      grid.tight(
          List.of(
              Cell.text(instrument.text()),
              Cell.EMPTY.andSpace(32 * MM, 18, "", blanks.get(0)),
              Cell.EMPTY.andSpace(32 * MM, 18, "", blanks.get(1)),
              Cell.EMPTY.andSpace(30 * MM, 18, "", blanks.get(2))));
    }
    prose.heading(texts.of("page.instruments"), Role.HEADING_2, grid.height());
    grid.draw(document);
  }
}
