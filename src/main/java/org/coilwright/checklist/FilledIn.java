package org.coilwright.checklist;

import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What came back on a sheet, by the names of its {@link Blanks}. Nothing is judged yet.
 *
 * @param texts what was written, without surrounding blanks; nothing empty
 * @param ticked boxes that are ticked
 * @param disputed boxes that look otherwise than the file says they are
 * @param signed signatures by certificate
 */
public record FilledIn(
    Map<String, String> texts, Set<String> ticked, Set<String> disputed, Set<String> signed) {
  /** Nothing at all. */
  public static final FilledIn NOTHING = new FilledIn(Map.of(), Set.of(), Set.of(), Set.of());

  /** Copies them. */
  public FilledIn {
    texts = Map.copyOf(texts);
    ticked = Set.copyOf(ticked);
    disputed = Set.copyOf(disputed);
    signed = Set.copyOf(signed);
  }

  /** What was written there. */
  public Optional<String> text(Blank blank) {
    return Optional.ofNullable(texts.get(blank.name()));
  }

  /** True if the box is ticked. */
  public boolean isTicked(Blank blank) {
    return ticked.contains(blank.name());
  }

  /** True if a certificate signed there. */
  public boolean isSigned(Blank blank) {
    return signed.contains(blank.name());
  }

  /** True if nothing was written, ticked or signed there. */
  public boolean isEmpty(Blank blank) {
    return text(blank).isEmpty() && !isTicked(blank) && !isSigned(blank);
  }
}
