package org.coilwright.rule;

import java.util.List;

/**
 * What is known about a rule; {@code explain} and the rule's page come from here.
 *
 * @param id contract name, such as {@code coil.too-low}
 * @param weight the weight it raises (the heaviest, where it has two)
 * @param title a few words
 * @param what what it looks at and when it is raised
 * @param why what happens otherwise, one or two sentences
 * @param remedy what to do
 * @param blind what it does not see
 * @param sources keys of the bibliography; at least one
 * @param silencedBy rules whose finding at the same part makes this one a mere consequence
 */
public record RuleFacts(
    String id,
    Weight weight,
    String title,
    String what,
    String why,
    String remedy,
    String blind,
    List<String> sources,
    List<String> silencedBy) {

  /**
   * Refuses a rule that does not say what it is.
   *
   * @throws IllegalArgumentException if a part is missing
   */
  public RuleFacts {
    for (String part : List.of(id, title, what, why, remedy, blind)) {
      if (part.isBlank()) {
        throw new IllegalArgumentException("rule " + id + " lacks a part of its facts");
      }
    }
    if (sources.isEmpty()) {
      throw new IllegalArgumentException("rule " + id + " names no source");
    }
    sources = List.copyOf(sources);
    silencedBy = List.copyOf(silencedBy);
  }

  /** The group before the dot: {@code coil}. */
  public String group() {
    return id.substring(0, id.indexOf('.'));
  }
}
