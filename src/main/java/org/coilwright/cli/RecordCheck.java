package org.coilwright.cli;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.coilwright.checklist.Blanks;
import org.coilwright.checklist.FilledIn;
import org.coilwright.checklist.Judgement;
import org.coilwright.checklist.Oddity;
import org.coilwright.checklist.TestRecord;
import org.coilwright.checklist.Texts;
import org.coilwright.pdf.Look;
import org.coilwright.pdf.LookedOver;
import org.coilwright.pdf.Returned;
import org.coilwright.pdf.SheetReader;

/**
 * Makes a record once more from the filled-in sheet that travels in it, and compares: every row,
 * the verdict, every attached file and every page.
 */
final class RecordCheck {
  private final byte[] bytes;
  private final Returned.Sheet record;
  private final List<String> faults = new ArrayList<>();
  private Optional<String> verdict = Optional.empty();
  private boolean saidToBeSigned;

  private RecordCheck(byte[] bytes, Returned.Sheet record) {
    this.bytes = bytes;
    this.record = record;
  }

  /**
   * What came of it.
   *
   * @param verdict on the filled-in sheet, judged again; empty if that could not be
   * @param signed true if the record says that it is signed
   * @param faults what does not agree, a sentence each; none if all does
   */
  record Checked(Optional<String> verdict, boolean signed, List<String> faults) {}

  /** Checks. */
  static Checked of(byte[] bytes, Returned.Sheet record) {
    RecordCheck check = new RecordCheck(bytes, record);
    check.check();
    return new Checked(check.verdict, check.saidToBeSigned, List.copyOf(check.faults));
  }

  private void check() {
    JsonTree readings = readings();
    JsonTree about = readings.at("record");
    saidToBeSigned = about.text("signed").equals("true");
    byte[] filledIn = record.files().get(SheetFiles.FILLED_IN);
    if (filledIn == null) {
      faults.add("The filled-in sheet is no longer attached.");
      return;
    }
    if (!Digest.of(filledIn).equals(about.text("filled-in-sha256"))) {
      faults.add(
          "The attached filled-in sheet is not the one that was read back: its digest is "
              + Digest.of(filledIn)
              + ", recorded is "
              + (about.text("filled-in-sha256").isEmpty() ? "none" : about.text("filled-in-sha256"))
              + ".");
    }
    Optional<SheetCommand.Sheet> opened = opened(filledIn);
    if (opened.isEmpty()) {
      return;
    }
    SheetCommand.Sheet sheet = opened.get();
    Judgement judgement = new Readback(sheet).judgement();
    verdict = Optional.of(judgement.sentence(Texts.english()));
    TestRecord again =
        FinalRecord.record(sheet, judgement, about.text("read-back"), saidToBeSigned);
    byte[] drawn = FinalRecord.drawn(sheet, again, readings.text("file"));
    if (SheetReader.read(drawn) instanceof Returned.Sheet now) {
      compare(readings, read(now.files().get(SheetFiles.READINGS)));
      attached(now.files());
    }
    pages(about.text("program"), again.program(), Look.of(drawn));
  }

  private JsonTree readings() {
    byte[] json = record.files().get(SheetFiles.READINGS);
    if (json == null) {
      faults.add("The readings are no longer attached (" + SheetFiles.READINGS + ").");
    }
    return read(json);
  }

  private static JsonTree read(byte @org.jspecify.annotations.Nullable [] json) {
    try {
      return JsonTree.read(json == null ? new byte[0] : json);
    } catch (IOException e) {
      return new JsonTree.Text(""); // what is missing in it then shows as different
    }
  }

  /** The filled-in sheet, under the same conditions as when it was read back. */
  private Optional<SheetCommand.Sheet> opened(byte[] filledIn) {
    String what = "The attached filled-in sheet cannot be judged again: ";
    if (SheetReader.read(filledIn) instanceof Returned.Sheet returned) {
      Look look = Look.of(filledIn);
      Remade.Outcome outcome = Remade.from(returned, look);
      if (outcome instanceof Remade.Made made) {
        SheetCommand.Sheet sheet = new SheetCommand.Sheet(filledIn, returned, look, made.remade());
        Optional<Remade.Refused> refused = new Readback(sheet).refusal();
        if (refused.isEmpty()) {
          return Optional.of(sheet);
        }
        faults.add(what + refused.get().what() + ".");
      } else if (outcome instanceof Remade.Refused refused) {
        faults.add(what + refused.what() + ".");
      } else {
        faults.add(what + "its netlist cannot be read by this coilwright.");
      }
    } else if (SheetReader.read(filledIn) instanceof Returned.Unusable unusable) {
      faults.add(what + unusable.what() + ".");
    }
    return Optional.empty();
  }

  private void compare(JsonTree then, JsonTree now) {
    int before = faults.size();
    change("Verdict", then.text("verdict"), now.text("verdict"));
    change("Complete", then.text("complete"), now.text("complete"));
    Map<String, String> rowsThen = rows(then);
    Map<String, String> rowsNow = rows(now);
    for (String name : both(rowsThen, rowsNow)) {
      change(
          "Row " + name,
          rowsThen.getOrDefault(name, "not there"),
          rowsNow.getOrDefault(name, "not there"));
    }
    Map<String, String> remarksThen = remarks(then);
    Map<String, String> remarksNow = remarks(now);
    for (String remark : both(remarksThen, remarksNow)) {
      change(
          "Remark on " + remark,
          remarksThen.getOrDefault(remark, "none"),
          remarksNow.getOrDefault(remark, "none"));
    }
    if (faults.size() == before && !then.equals(now)) {
      faults.add("The attached readings are not what is read back now.");
    }
  }

  private static Set<String> both(Map<String, String> then, Map<String, String> now) {
    Set<String> names = new LinkedHashSet<>(then.keySet());
    names.addAll(now.keySet());
    return names;
  }

  private void change(String what, String then, String now) {
    if (!then.equals(now)) {
      faults.add(
          what
              + ": recorded is "
              + (then.isEmpty() ? "nothing" : then)
              + "; the filled-in sheet gives "
              + (now.isEmpty() ? "nothing" : now)
              + ".");
    }
  }

  private static Map<String, String> rows(JsonTree readings) {
    Map<String, String> rows = new LinkedHashMap<>();
    for (JsonTree row : readings.elements("rows")) {
      String written = row.text("written").isEmpty() ? "" : " \"" + row.text("written") + "\"";
      rows.merge(
          row.text("name"), row.text("state") + written, (first, second) -> first + ", " + second);
    }
    return rows;
  }

  private static Map<String, String> remarks(JsonTree readings) {
    Map<String, String> remarks = new LinkedHashMap<>();
    for (JsonTree remark : readings.elements("remarks")) {
      remarks.merge(
          remark.text("name"),
          remark.text("kind") + " (" + remark.text("message") + ")",
          (first, second) -> first + ", " + second);
    }
    return remarks;
  }

  private void attached(Map<String, byte[]> now) {
    Map<String, byte[]> then = new HashMap<>(record.files());
    for (Map.Entry<String, byte[]> file : now.entrySet()) {
      byte[] there = then.remove(file.getKey());
      boolean told = file.getKey().equals(SheetFiles.READINGS); // row by row already
      if (there == null) {
        faults.add("The attached file " + file.getKey() + " is gone.");
      } else if (!told && !Arrays.equals(there, file.getValue())) {
        faults.add(
            "The attached file " + file.getKey() + " is not the one that the filled-in sheet has.");
      }
    }
    then.keySet().stream()
        .sorted()
        .forEach(name -> faults.add("A file is attached that no record has: " + name + "."));
  }

  private void pages(String then, String now, Look drawn) {
    Look look = Look.of(bytes);
    List<Oddity> oddities =
        new ArrayList<>(
            LookedOver.within(look, FilledIn.NOTHING, List.of(Blanks.recordSignature())));
    if (then.equals(now)) {
      oddities.addAll(LookedOver.against(look, drawn));
    } else {
      oddities.add(Oddity.of(Oddity.Kind.PROGRAM, "pages", then.isEmpty() ? "?" : then));
    }
    oddities.forEach(oddity -> faults.add("Look: " + oddity.sentence(Texts.english())));
  }
}
