package org.coilwright.cli;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.stream.Collectors;
import org.coilwright.checklist.Checklist;
import org.coilwright.checklist.Diagnosis;
import org.coilwright.checklist.Texts;
import org.coilwright.pdf.Attachment;
import org.coilwright.pdf.Look;
import org.coilwright.pdf.Returned;

/**
 * A sheet made once more from the netlist that travels in it.
 *
 * @param origin what the sheet says about itself
 * @param done what this program finds
 * @param checklist what this program would print
 * @param tables what this program's results rest on
 * @param files the files that would travel in it, with the results that do
 * @param diagnosis what readings outside their bands on it probably mean
 */
record Remade(
    Origin origin,
    Inspection.Done done,
    Checklist checklist,
    SortedMap<String, String> tables,
    List<Attachment> files,
    Diagnosis diagnosis) {

  /** What came of it. */
  sealed interface Outcome {}

  /** It could be made. */
  record Made(Remade remade) implements Outcome {}

  /** It could not. Both without a full stop. */
  record Refused(String what, String remedy) implements Outcome {}

  /** The netlist in the sheet can no longer be read. */
  record Unreadable(Inspection.Unusable unusable) implements Outcome {}

  private static final String AGAIN = "use the sheet as coilwright wrote it";

  /** Makes it. */
  static Outcome from(Returned.Sheet sheet, Look look) {
    Map<String, byte[]> files = sheet.files();
    byte[] results = files.get(SheetFiles.RESULTS);
    if (results == null) {
      return new Refused("it is no checklist of coilwright: its results are not attached", AGAIN);
    }
    Optional<Origin> read = Origin.of(results);
    if (read.isEmpty()) {
      return new Refused("its attached results cannot be read", AGAIN);
    }
    Origin origin = read.get();
    byte[] netlist = files.get(origin.netlist().attached());
    if (netlist == null) {
      return new Refused("its netlist is no longer attached", AGAIN);
    }
    Optional<Refused> changed = changed(origin, sheet, look, netlist);
    if (changed.isPresent()) {
      return changed.get();
    }
    Inspector inspector = Inspector.standard();
    KeptIncludes includes = new KeptIncludes(origin.among(files));
    InputFile.Bytes input = new InputFile.Bytes(origin.netlist().file(), netlist, includes);
    Inspection inspection = inspector.inspectForSheet(input);
    if (inspection instanceof Inspection.Done done) {
      SheetFiles attached = new SheetFiles(input, includes.all()).with(results);
      return made(origin, inspector, done, attached);
    } else if (inspection instanceof Inspection.Unusable unusable) {
      return new Unreadable(unusable);
    }
    throw new IllegalStateException("an inspection of no kind: " + inspection);
  }

  private static Outcome made(
      Origin origin, Inspector inspector, Inspection.Done done, SheetFiles attached) {
    if (!Texts.LANGUAGES.contains(origin.language())) {
      return new Refused(
          "it is in a language this coilwright does not have", "use " + origin.program());
    }
    Optional<Checklist.Paper> paper =
        Arrays.stream(Checklist.Paper.values())
            .filter(p -> p.toString().equals(origin.paper()))
            .findFirst();
    if (paper.isEmpty()) {
      return new Refused("it is on paper this coilwright does not have", "use " + origin.program());
    }
    Set<Checklist.Part> parts =
        Arrays.stream(Checklist.Part.values())
            .filter(part -> origin.parts().contains(part.toString()))
            .collect(Collectors.toSet());
    if (parts.size() != origin.parts().size()) {
      return new Refused("it has parts this coilwright does not have", "use " + origin.program());
    }
    Texts texts = Texts.in(origin.language());
    Checklist checklist =
        inspector.checklist(done, origin.printed(), texts).on(paper.get()).with(parts);
    SortedMap<String, String> tables = inspector.tables();
    return new Made(
        new Remade(
            origin,
            done,
            checklist,
            tables,
            attached.of(done, checklist, tables),
            new LateDiagnosis(() -> inspector.diagnosis(done, texts))));
  }

  /**
   * The netlist is told by its digest, which stands in the results, in the properties of the
   * document and at the foot of the pages. All must be there and the same: who changes one of them
   * would have others judged by limits that nobody saw.
   */
  private static Optional<Refused> changed(
      Origin origin, Returned.Sheet sheet, Look look, byte[] netlist) {
    String digest = Digest.of(netlist);
    String keywords = sheet.keywords();
    if (keywords.isBlank()) {
      return refused("its document properties lack the digest of its netlist (the keywords)");
    }
    if (!digest.equals(origin.netlist().sha256()) || !keywords.contains("SHA-256 " + digest)) {
      return refused("its attached netlist is not the one it was made from: the digest differs");
    }
    boolean stated = false;
    for (int page = 0; page < look.pages().size(); page++) {
      for (String shown : look.pages().get(page).stated()) {
        stated = true;
        if (!digest.startsWith(shown)) {
          return refused(
              "page "
                  + (page + 1)
                  + " was printed from another netlist (SHA-256 "
                  + shown.substring(0, 12)
                  + " …) than the one attached ("
                  + digest.substring(0, 12)
                  + " …): the digest differs");
        }
      }
    }
    if (!stated) {
      return refused("none of its pages shows the digest of its netlist, which is at their foot");
    }
    for (Origin.Source include : origin.includes()) {
      byte[] bytes = sheet.files().get(include.attached());
      if (bytes == null || !Digest.of(bytes).equals(include.sha256())) {
        return refused("the attached file " + include.path() + " is not the one it was made from");
      }
    }
    return Optional.empty();
  }

  private static Optional<Refused> refused(String what) {
    return Optional.of(new Refused(what, AGAIN));
  }

  /** What this program would write into the sheet about itself. */
  Origin again() {
    String now =
        JsonReport.of(
            done, json -> SheetFiles.sheet(json, checklist, origin.netlist().file(), tables));
    return Origin.of(now.getBytes(StandardCharsets.UTF_8))
        .orElseThrow(() -> new IllegalStateException("own results cannot be read: " + now));
  }
}
