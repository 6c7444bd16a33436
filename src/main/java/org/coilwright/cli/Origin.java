package org.coilwright.cli;

import java.io.IOException;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.coilwright.netlist.Includes;

/**
 * What the results in a sheet say about the sheet itself: what it was made from, by what, and what
 * came of it.
 *
 * @param program name and version
 * @param parts what is printed behind the work sheet
 * @param rows expected reading by name of row
 * @param tables digest by table
 * @param results the results of the one netlist
 */
record Origin(
    String program,
    LocalDate printed,
    String paper,
    List<String> parts,
    String language,
    Source netlist,
    List<Source> includes,
    Map<String, String> tables,
    Map<String, String> rows,
    JsonTree results) {

  /**
   * A file it was made from.
   *
   * @param from file that includes it; empty for the netlist itself
   * @param path by which it is included; likewise
   * @param file its name then
   * @param attached its name in the sheet
   */
  record Source(String from, String path, String file, String attached, String sha256) {
    static Source of(JsonTree json) {
      return new Source(
          json.text("from"),
          json.text("path"),
          json.text("file"),
          json.text("attached"),
          json.text("sha256"));
    }
  }

  /** Reads it from the results; empty if they are not such. */
  static Optional<Origin> of(byte[] json) {
    try {
      JsonTree tree = JsonTree.read(json);
      JsonTree sheet = tree.at("sheet");
      List<JsonTree> files = tree.elements("files");
      if (files.size() != 1 || sheet.at("netlist").text("attached").isEmpty()) {
        return Optional.empty();
      }
      Map<String, String> rows = new LinkedHashMap<>();
      sheet.elements("rows").forEach(row -> rows.put(row.text("name"), row.text("expected")));
      return Optional.of(
          new Origin(
              sheet.text("program"),
              LocalDate.parse(sheet.text("printed")),
              sheet.text("paper"),
              sheet.elements("parts").stream()
                  .map(part -> part instanceof JsonTree.Text text ? text.value() : "")
                  .toList(),
              sheet.text("language"),
              Source.of(sheet.at("netlist")),
              sheet.elements("includes").stream().map(Source::of).toList(),
              sheet.texts("tables"),
              rows,
              files.get(0)));
    } catch (IOException | DateTimeParseException e) {
      return Optional.empty();
    }
  }

  /** Finds the included files among the attached ones. */
  Includes among(Map<String, byte[]> files) {
    return (from, path) -> {
      for (Source include : includes) {
        byte[] bytes = files.get(include.attached());
        if (include.from().equals(from) && include.path().equals(path) && bytes != null) {
          return new Includes.File(include.file(), bytes);
        }
      }
      return new Includes.Refused(
          path + " is not attached to the sheet", "use the sheet as coilwright wrote it");
    };
  }
}
