package org.coilwright.checklist;

import java.util.List;

/**
 * Why a figure is what it is.
 *
 * @param how how it was computed; may be empty
 * @param sources printed citations
 * @param standing published, common practice or from memory
 * @param confirm true if it must be confirmed before anybody relies on it
 */
public record Grounds(String how, List<String> sources, String standing, boolean confirm) {
  /** Copies the list. */
  public Grounds {
    sources = List.copyOf(sources);
  }
}
