package org.coilwright.netlist;

import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.yaml.snakeyaml.error.MarkedYAMLException;

/** What the YAML library objects to, in plain words. */
final class YamlTrouble {
  /** A piece of the library's message, and what to say in its place; %s is where it began. */
  private record Translation(String heard, String what, String remedy) {}

  private static final Pattern GLUED = Pattern.compile("^\\s*(- )?[A-Za-z][\\w-]*:(?=[^\\s:/])");

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
              "could not find expected ':'",
              "a colon is missing after the key",
              "write key: value, with a space after the colon"),
          new Translation(
              "found undefined alias",
              "an alias (*) names an anchor that does not exist",
              "write the value out, or put it in quotes"),
          new Translation(
              "expected ',' or ']'",
              "the list [ ]%s is not closed, or a comma is missing",
              "separate its items with commas and close it with ]"),
          new Translation(
              "expected ',' or '}'",
              "the group { }%s is not closed, or a comma is missing",
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
    Optional<Mark> begin = Optional.ofNullable(e.getContextMark()).map(m -> mark(m, file));
    if (heard.contains("found unexpected end of stream") && begin.isPresent()) {
      return new Refusal(begin, "a quote is opened here and never closed", "close the quote");
    }
    if (heard.contains("mapping values are not allowed") && mark.isPresent()) {
      Optional<Mark> glued = keyWithoutSpace(mark.get(), file);
      if (glued.isPresent()) {
        return new Refusal(
            glued, "a space is missing after the colon", "write key: value, with a space");
      }
    }
    String where =
        heard.startsWith("expected ',' or") && begin.isPresent()
            ? ", which begins in line " + begin.get().line() + ","
            : "";
    return TRANSLATIONS.stream()
        .filter(t -> heard.contains(t.heard))
        .findFirst()
        .map(t -> new Refusal(mark, t.what.replace("%s", where), t.remedy))
        .orElseGet(
            () ->
                new Refusal(
                    mark,
                    "the punctuation or the indentation does not fit here",
                    "compare the line with its neighbours; quote values that hold signs"));
  }

  /** A key glued to its value, in this line or the one above, reads as a single word. */
  private static Optional<Mark> keyWithoutSpace(Mark mark, FileText file) {
    for (int line = mark.line(); line > 0 && line >= mark.line() - 1; line--) {
      Matcher matcher = GLUED.matcher(file.lines().get(line - 1));
      if (matcher.find()) {
        int column = matcher.end();
        return Optional.of(new Mark(mark.file(), line, column, column + 1));
      }
    }
    return Optional.empty();
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
