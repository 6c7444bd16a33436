package org.coilwright.pdf;

import java.util.List;
import org.coilwright.checklist.Blanks;
import org.coilwright.checklist.Judgement;
import org.coilwright.checklist.Judgement.State;
import org.coilwright.checklist.Remark;
import org.coilwright.checklist.TestRecord;

/**
 * What stands before the sheet in the final record: the verdict, and all that is not as it should.
 */
final class RecordPages extends Pages {

  RecordPages(Press press) {
    super(press);
  }

  void draw(TestRecord record) {
    prose.heading(texts.of("record.title"), Role.HEADING_1, 0);
    Judgement judgement = record.judgement();
    String word =
        judgement.isStopped()
            ? "record.stop"
            : judgement.isComplete() ? "record.complete" : "record.incomplete";
    prose.framed(
        List.of(
            Prose.Line.large(texts.of(word)),
            Prose.Line.bold(judgement.sentence(texts)),
            Prose.Line.plain(texts.of("record.meaning"))),
        2);
    Grid facts = grid(new Grid.Column("", 60 * MM), new Grid.Column("", 0));
    for (State state : State.values()) {
      String key = "record.rows." + state.word().replace(' ', '-');
      line(facts, texts.of(key), String.valueOf(judgement.count(state)));
    }
    line(
        facts,
        texts.of("record.read-back"),
        texts.of("title.printed-by", record.readBack(), record.program()));
    line(facts, texts.of("record.sha256"), record.sha256());
    String signing = record.signed() ? "record.to-be-signed" : "record.not-signed";
    line(facts, texts.of("record.certificate"), texts.of(signing));
    facts.draw(document);
    sheet.down(8);
    Grid signature = grid(new Grid.Column("", 60 * MM), new Grid.Column("", 0));
    signature.row(
        List.of(
            Cell.text(texts.of("record.signature")),
            Cell.EMPTY.andField(80 * MM, 40, Blanks.recordSignature())));
    signature.draw(document);
    remarks(judgement.remarks());
    sheet.freshPage();
  }

  private static void line(Grid grid, String name, String value) {
    grid.tight(List.of(Cell.text(name), Cell.bold(value)));
  }

  private void remarks(List<Remark> remarks) {
    Grid grid =
        grid(
            new Grid.Column(texts.of("record.kind"), 34 * MM),
            new Grid.Column(texts.of("record.what"), 0));
    for (Remark.Kind kind : Remark.Kind.values()) {
      for (Remark remark : remarks) {
        if (remark.kind() == kind) {
          Cell what = Cell.bold(remark.where()).and(remark.sentence());
          for (String guess : remark.guesses(texts)) {
            what = what.and(guess);
          }
          grid.tight(List.of(Cell.text(texts.of("record.kind." + kind.word())), what));
        }
      }
    }
    String title = texts.of("record.remarks");
    grid.titled(texts.of("page.continued", title));
    prose.heading(title, Role.HEADING_2, grid.beginning());
    if (remarks.isEmpty()) {
      prose.paragraph(Prose.Line.plain(texts.of("record.no-remarks")));
    } else {
      grid.draw(document);
    }
  }
}
