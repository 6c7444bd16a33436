package org.coilwright.pdf;

import java.util.List;
import org.coilwright.checklist.Blank;
import org.coilwright.checklist.Blanks;
import org.coilwright.checklist.Checklist;

/** What was mended and done again, remarks, and who signs. */
final class SignOffPages extends Pages {
  SignOffPages(Press press) {
    super(press);
  }

  void draw(Checklist checklist) {
    Grid again =
        grid(
            new Grid.Column(texts.of("column.row"), 28 * MM),
            new Grid.Column(texts.of("column.mended"), 0),
            new Grid.Column(texts.of("column.new-reading"), 34 * MM),
            new Grid.Column(texts.of("column.initials"), 20 * MM));
    for (int line = 1; line <= Blanks.AGAIN_LINES; line++) {
      List<Blank> blanks = Blanks.again(line);
      double wide = sheet.width() - 86 * MM;
      again.tight(
          List.of(
              Cell.EMPTY.andSpace(24 * MM, 24, "", blanks.get(0)),
              Cell.EMPTY.andSpace(wide, 24, "", blanks.get(1)),
              Cell.EMPTY.andSpace(30 * MM, 24, "", blanks.get(2)),
              Cell.EMPTY.andSpace(14 * MM, 24, "", blanks.get(3))));
    }
    Cell remarks = Cell.text(texts.of("sign-off.remarks"));
    Grid room =
        grid(new Grid.Column("", 0))
            .row(List.of(remarks.andSpace(sheet.width() - 5, 54, "", Blanks.remarks())));
    Grid people =
        grid(
            new Grid.Column("", 29 * MM),
            new Grid.Column(texts.of("column.name"), 0),
            new Grid.Column(texts.of("column.licence"), 38 * MM),
            new Grid.Column(texts.of("column.date"), 28 * MM),
            new Grid.Column(texts.of("column.signature"), 44 * MM));
    for (Checklist.Signer signer : checklist.signers()) {
      List<Blank> blanks = Blanks.signer(signer);
      people.row(
          List.of(
              Cell.bold(signer.text()),
              Cell.EMPTY.andSpace(35 * MM, 26, "", blanks.get(0)),
              Cell.EMPTY.andSpace(34 * MM, 26, "", blanks.get(1)),
              Cell.EMPTY.andSpace(24 * MM, 26, "", blanks.get(2)),
              Cell.EMPTY.andSpace(40 * MM, 26, "", blanks.get(3))));
    }
    prose.heading(
        texts.of("page.sign-off"),
        Role.HEADING_2,
        Math.min(again.height() + room.height() + people.height() + 30, sheet.fullRoom() / 2));
    again.draw(document);
    sheet.down(4);
    room.draw(document);
    sheet.down(4);
    Prose.Line notice = Prose.Line.plain(checklist.notice().get(0));
    Prose.Line end =
        Prose.Line.bold(
            texts.of(
                "page.end",
                checklist.wires().size(),
                checklist.rows().size(),
                checklist.openPoints().size(),
                checklist.findings().size()));
    if (people.height() + prose.height(notice) + prose.height(end) > sheet.room()) {
      sheet.freshPage();
    }
    people.draw(document);
    prose.paragraph(notice);
    prose.paragraph(end);
  }
}
