package org.coilwright.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.coilwright.checklist.Checklist;
import org.coilwright.checklist.Judgement;
import org.coilwright.checklist.Remark;
import org.coilwright.checklist.RowRanges;
import org.coilwright.checklist.Texts;

/** What {@code readback} prints for a person. */
final class ReadbackText {
  private static final int WORD = 15;

  private ReadbackText() {}

  static String of(String file, Checklist checklist, Judgement judgement, Style style) {
    StringBuilder out = new StringBuilder();
    Checklist.TitleBlock title = checklist.title();
    Lines.wrap(
        out,
        "",
        file
            + ": "
            + title.circuit()
            + ", "
            + title.reference()
            + ", "
            + title.revision()
            + ", printed "
            + title.printed()
            + "; netlist SHA-256 "
            + title.shortDigest()
            + " …",
        style.width());
    out.append('\n');
    for (Remark.Kind kind : Remark.Kind.values()) {
      grouped(judgement.remarks(), kind)
          .forEach((remark, where) -> remark(out, remark, where, checklist.texts(), style));
    }
    Lines.wrap(out, "", TextReport.CAUTION, style.width());
    Lines.wrap(out, "", judgement.sentence(checklist.texts()), style.width());
    return out.toString();
  }

  /** Remarks that say the same of several places are said once. */
  private static Map<Remark, List<String>> grouped(List<Remark> remarks, Remark.Kind kind) {
    Map<String, Remark> first = new LinkedHashMap<>();
    Map<Remark, List<String>> grouped = new LinkedHashMap<>();
    for (Remark remark : remarks) {
      if (remark.kind() == kind) {
        Remark like = first.computeIfAbsent(remark.sentence(), s -> remark);
        grouped.computeIfAbsent(like, r -> new ArrayList<>()).add(remark.where());
      }
    }
    return grouped;
  }

  private static void remark(
      StringBuilder out, Remark remark, List<String> where, Texts texts, Style style) {
    String word = texts.of("record.kind." + remark.kind().word()).toUpperCase(Locale.ROOT);
    boolean bad = remark.kind() != Remark.Kind.MISSING;
    StringBuilder text = new StringBuilder();
    Lines.wrap(
        text, Lines.padded(word, WORD), String.join("; ", RowRanges.of(where)), style.width());
    out.append(bad ? style.bad(word) : style.mend(word)).append(text.substring(word.length()));
    String indent = " ".repeat(WORD);
    Lines.wrap(out, indent, remark.sentence(), style.width());
    for (String guess : remark.guesses(texts)) {
      Lines.wrap(out, indent, guess, style.width());
    }
    out.append('\n');
  }
}
