package org.coilwright.cli;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.SortedMap;
import org.coilwright.checklist.Checklist;
import org.coilwright.checklist.Expected;
import org.coilwright.checklist.TestRow;
import org.coilwright.checklist.Texts;
import org.coilwright.drawing.Svg;
import org.coilwright.netlist.Includes;
import org.coilwright.pdf.Attachment;
import org.coilwright.pdf.Attachment.Relation;

/**
 * The files that travel in a checklist: the netlist with what it includes, the results, and the
 * drawings. From them anybody can do the whole work again.
 */
final class SheetFiles {
  /** The results, under the same name in every sheet. */
  static final String RESULTS = "coilwright-results.json";

  /** What was read back; in a final record only. */
  static final String READINGS = "coilwright-readings.json";

  /** The sheet as it was filled in; likewise. */
  static final String FILLED_IN = "coilwright-filled-in.pdf";

  private static final String YAML = "application/yaml";

  private final InputFile.Bytes netlist;
  private final List<KeptIncludes.Kept> includes;
  private final Optional<byte[]> results;
  private final Set<String> taken = new HashSet<>(Set.of(RESULTS, READINGS, FILLED_IN));

  SheetFiles(InputFile.Bytes netlist, List<KeptIncludes.Kept> includes) {
    this(netlist, includes, Optional.empty());
  }

  private SheetFiles(
      InputFile.Bytes netlist, List<KeptIncludes.Kept> includes, Optional<byte[]> results) {
    this.netlist = netlist;
    this.includes = includes;
    this.results = results;
  }

  /** The same with the results that came with a sheet, which are not computed again. */
  SheetFiles with(byte[] given) {
    return new SheetFiles(netlist, includes, Optional.of(given.clone()));
  }

  /**
   * All of them.
   *
   * @param tables what the results rest on, with digests
   */
  List<Attachment> of(Inspection.Done done, Checklist checklist, SortedMap<String, String> tables) {
    List<Attachment> files = new ArrayList<>();
    String main = free(baseName(netlist.name()));
    files.add(
        new Attachment(
            main, YAML, Relation.SOURCE, "The netlist it was made from", netlist.bytes()));
    List<String> included = new ArrayList<>();
    for (KeptIncludes.Kept kept : includes) {
      String name = free(baseName(kept.file().name()));
      included.add(name);
      files.add(
          new Attachment(
              name,
              YAML,
              Relation.SOURCE,
              "Included by the netlist as " + kept.path(),
              kept.file().bytes()));
    }
    byte[] data =
        results.orElseGet(
            () ->
                JsonReport.of(done, json -> sheet(json, checklist, main, included, tables))
                    .getBytes(StandardCharsets.UTF_8));
    files.add(
        new Attachment(
            RESULTS, "application/json", Relation.DATA, "What was computed and found", data));
    int number = 0;
    for (Checklist.Figure figure : checklist.figures()) {
      number++;
      files.add(
          new Attachment(
              free("figure-" + number + ".svg"),
              "image/svg+xml",
              Relation.ALTERNATIVE,
              figure.title(),
              Svg.of(figure.picture()).getBytes(StandardCharsets.UTF_8)));
    }
    return files;
  }

  /** What a sheet says about itself, without the files that travel in it. */
  static void sheet(
      JsonWriter json, Checklist checklist, String file, SortedMap<String, String> tables) {
    new SheetFiles(new InputFile.Bytes(file, new byte[0], Includes.none()), List.of())
        .sheet(json, checklist, file, List.of(), tables);
  }

  private void sheet(
      JsonWriter json,
      Checklist checklist,
      String attached,
      List<String> included,
      SortedMap<String, String> tables) {
    json.object().key("program").text(checklist.title().program());
    json.key("printed").text(checklist.title().printed());
    json.key("paper").text(checklist.paper().toString());
    json.key("language").text(checklist.texts().language());
    json.key("parts").array();
    checklist.parts().stream().map(Checklist.Part::toString).sorted().forEach(json::text);
    json.endArray();
    json.key("netlist").object().key("file").text(netlist.name());
    json.key("attached").text(attached);
    json.key("sha256").text(checklist.title().sha256()).endObject();
    json.key("includes").array();
    for (int i = 0; i < includes.size(); i++) {
      KeptIncludes.Kept kept = includes.get(i);
      json.object().key("from").text(kept.from()).key("path").text(kept.path());
      json.key("file").text(kept.file().name()).key("attached").text(included.get(i));
      json.key("sha256").text(Digest.of(kept.file().bytes())).endObject();
    }
    json.endArray().key("tables").object();
    tables.forEach((table, digest) -> json.key(table).text(digest));
    json.endObject().key("rows").array();
    Texts english = Texts.english();
    checklist.rows().forEach(row -> row(json, row, english));
    json.endArray().endObject();
  }

  /** In English whatever the sheet is in: programs compare it. */
  private static void row(JsonWriter json, TestRow row, Texts english) {
    json.object().key("name").text(row.name()).key("number").text(row.number());
    json.key("expected").text(row.expected().text(english)).key("unit").text(row.expected().unit());
    if (row.expected() instanceof Expected.Band band) {
      limit(json, "min", band.min());
      limit(json, "max", band.max());
    }
    json.key("how").text(row.grounds().how()).key("sources").array();
    row.grounds().sources().forEach(json::text);
    json.endArray().key("standing").text(row.grounds().standing()).endObject();
  }

  private static void limit(JsonWriter json, String key, OptionalDouble limit) {
    json.key(key);
    if (limit.isPresent()) {
      json.number(limit.getAsDouble());
    } else {
      json.nothing();
    }
  }

  private String free(String name) {
    String free = name;
    for (int i = 2; !taken.add(free); i++) {
      free = i + "-" + name;
    }
    return free;
  }

  private static String baseName(String file) {
    String base = file.substring(Math.max(file.lastIndexOf('/'), file.lastIndexOf('\\')) + 1);
    return base.isBlank() || base.equals(InputFile.STDIN) ? "netlist.yaml" : base;
  }
}
