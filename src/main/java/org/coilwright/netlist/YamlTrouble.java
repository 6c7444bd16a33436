package org.coilwright.netlist;

import java.util.List;
import java.util.Optional;
import org.yaml.snakeyaml.error.MarkedYAMLException;

/** What the YAML library objects to, in plain words. */
final class YamlTrouble {
  /** A piece of the library's message, and what to say in its place. */
  private record Translation(String heard, String what, String remedy) {}

  private static final List<Translation> TRANSLATIONS =
      List.of(
          new Translation("(TAB)", "the line is indented with a tab", "indent with spaces"),
          new Translation(
              "cannot start any token",
              "a value cannot begin with this character",
              "put the value in quotes"),
          new Translation(
              "mapping values are not allowed here",
              "a second colon stands in this line, or the line is indented too far",
              "quote the value if it holds a colon; otherwise line it up with its neighbours"),
          new Translation(
              "mapping keys are not allowed here",
              "a question mark cannot stand here",
              "put the value in quotes"),
          new Translation(
              "sequence entries are not allowed here",
              "a list item (-) cannot stand here",
              "begin the list in a line of its own"),
          new Translation(
              "found unexpected end of stream",
              "a quote is opened and never closed",
              "close the quote"),
          new Translation(
              "could not find expected ':'",
              "a colon is missing after the key",
              "write key: value, with a space after the colon"),
          new Translation(
              "found undefined alias",
              "an alias (*) names an anchor that does not exist",
              "write the value out, or put it in quotes"),
          new Translation(
              "expected ',' or ']'",
              "the list [ ] is not closed, or a comma is missing",
              "separate its items with commas and close it with ]"),
          new Translation(
              "expected ',' or '}'",
              "the group { } is not closed, or a comma is missing",
              "separate its keys with commas and close it with }"),
          new Translation(
              "expected <block end>",
              "this line does not line up with the lines above",
              "give keys that belong together the same indentation"),
          new Translation(
              "expected the node content",
              "a value is missing here",
              "write a value, or put it in quotes if it is a sign"),
          new Translation(
              "expected '<document start>'",
              "something stands outside of the netlist here",
              "line it up with the top-level keys, or take it out"),
          new Translation(
              "unknown escape character",
              "there is no such escape (\\) in double quotes",
              "use single quotes, or write \\\\"),
          new Translation(
              "alphabetic or numeric character",
              "& and * have a meaning of their own here",
              "put the value in quotes"));

  private YamlTrouble() {}

  static Refusal of(MarkedYAMLException e, FileText file) {
    String heard = e.getProblem() == null ? "" : e.getProblem();
    Optional<Mark> mark = Optional.ofNullable(e.getProblemMark()).map(m -> mark(m, file));
    return TRANSLATIONS.stream()
        .filter(t -> heard.contains(t.heard))
        .findFirst()
        .map(t -> new Refusal(mark, t.what, t.remedy))
        .orElseGet(
            () ->
                new Refusal(
                    mark,
                    "the punctuation or the indentation does not fit here",
                    "compare the line with its neighbours; quote values that hold signs"));
  }

  /** The end of the file lies behind its last line; a reader looks at the last line with text. */
  private static Mark mark(org.yaml.snakeyaml.error.Mark mark, FileText file) {
    List<String> lines = file.lines();
    int line = Math.min(mark.getLine(), lines.size() - 1);
    boolean moved = line < mark.getLine();
    while (line > 0 && lines.get(line).isBlank()) {
      line--;
      moved = true;
    }
    String text = lines.get(line);
    int column = moved ? text.codePointCount(0, text.length()) + 1 : mark.getColumn() + 1;
    return new Mark(file.file(), line + 1, column, column + 1);
  }
}
