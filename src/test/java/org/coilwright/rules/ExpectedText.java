package org.coilwright.rules;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/** A text that a fixture expects, taken apart. */
record ExpectedText(Path file, List<String> lines) {
  /** A line of the netlist, or the carets under one with their label. */
  private static final Pattern EXCERPT = Pattern.compile("^ *\\d* \\|.*");

  private static final Pattern HEAD = Pattern.compile("^(STOP|FIX|NOTE)  .*");

  static ExpectedText of(Path file) {
    return new ExpectedText(file, Fixture.read(file).lines().toList());
  }

  /** The lines that the program says itself, excerpts of the netlist left out. */
  List<String> spoken() {
    return lines.stream().filter(line -> !EXCERPT.matcher(line).matches()).toList();
  }

  /** The rule that a finding is of; its id stands at the end of the first line or of the second. */
  static String rule(List<String> finding) {
    String head = finding.get(0).strip();
    String last = head.substring(head.lastIndexOf(' ') + 1);
    boolean beside = last.matches("[a-z]+\\.[a-z-]+") && finding.get(0).contains("  " + last);
    return beside || finding.size() == 1 ? last : finding.get(1).strip();
  }

  /** The findings, each with its lines. */
  List<List<String>> findings() {
    List<List<String>> findings = new ArrayList<>();
    boolean open = false;
    for (String line : lines) {
      if (line.startsWith("This decides nothing by itself")) {
        break; // what follows are the titles once more
      }
      if (HEAD.matcher(line).matches()) {
        findings.add(new ArrayList<>());
        open = true;
      } else if (!line.isEmpty() && !Character.isWhitespace(line.charAt(0))) {
        open = false;
      }
      if (open) {
        findings.get(findings.size() - 1).add(line);
      }
    }
    findings.forEach(
        finding -> {
          while (finding.get(finding.size() - 1).isEmpty()) {
            finding.remove(finding.size() - 1);
          }
        });
    return findings;
  }
}
