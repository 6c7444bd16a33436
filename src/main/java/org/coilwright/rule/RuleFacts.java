package org.coilwright.rule;

import java.util.ArrayList;
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
 * @param carriedBy rules whose finding, however light, tells this one along with itself where its
 *     subject is named here, and then weighs as much
 * @param wiredOtherwise true if its finding means that the circuit is another than the one that was
 *     meant, so that what is computed of it is not of that one
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
    List<String> silencedBy,
    List<String> carriedBy,
    boolean wiredOtherwise) {

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
    carriedBy = List.copyOf(carriedBy);
  }

  /**
   * Starts the facts of a rule. Each step leads to the next, so that none can be left out: {@code
   * of(…).what(…).why(…).remedy(…).blind(…).sources(…)}.
   */
  public static What of(String id, Weight weight, String title) {
    return what ->
        why ->
            remedy ->
                blind ->
                    sources ->
                        new RuleFacts(
                            id, weight, title, what, why, remedy, blind, sources, List.of(),
                            List.of(), false);
  }

  /** The same rule, silent where one of {@code rules} has a finding at the same part. */
  public RuleFacts consequenceOf(String... rules) {
    return new RuleFacts(
        id,
        weight,
        title,
        what,
        why,
        remedy,
        blind,
        sources,
        List.of(rules),
        carriedBy,
        wiredOtherwise);
  }

  /**
   * The same rule, told along with a finding of one of {@code rules}, even a lighter one, whose
   * subject is among the places of this one. That finding then takes on the weight of this one.
   */
  public RuleFacts carriedBy(String... rules) {
    return new RuleFacts(
        id,
        weight,
        title,
        what,
        why,
        remedy,
        blind,
        sources,
        silencedBy,
        List.of(rules),
        wiredOtherwise);
  }

  /**
   * The same rule, whose finding means that the circuit is wired otherwise than it was meant: it is
   * shown before others of its weight, and with it all findings hang together.
   */
  public RuleFacts meansWiredOtherwise() {
    return new RuleFacts(
        id, weight, title, what, why, remedy, blind, sources, silencedBy, carriedBy, true);
  }

  /** The same rule where, for one subject, one more rule's finding would be the cause. */
  public RuleFacts alsoConsequenceOf(String rule) {
    List<String> all = new ArrayList<>(silencedBy);
    all.add(rule);
    return new RuleFacts(
        id, weight, title, what, why, remedy, blind, sources, all, carriedBy, wiredOtherwise);
  }

  /** The group before the dot: {@code coil}. */
  public String group() {
    return id.substring(0, id.indexOf('.'));
  }

  /** Step: what it looks at and when it is raised. */
  @FunctionalInterface
  public interface What {
    Why what(String what);
  }

  /** Step: what happens otherwise. */
  @FunctionalInterface
  public interface Why {
    Remedy why(String why);
  }

  /** Step: what to do. */
  @FunctionalInterface
  public interface Remedy {
    Blind remedy(String remedy);
  }

  /** Step: what it does not see. */
  @FunctionalInterface
  public interface Blind {
    Sources blind(String blind);
  }

  /** Last step: where it comes from. */
  @FunctionalInterface
  public interface Sources {
    RuleFacts from(List<String> keys);

    /** Keys of the bibliography. */
    default RuleFacts sources(String... keys) {
      return from(List.of(keys));
    }
  }
}
