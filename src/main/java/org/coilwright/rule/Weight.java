package org.coilwright.rule;

/** How much a finding matters. Heaviest first. */
public enum Weight {
  /** Must not be energised like this. */
  STOP,
  /** Outside a cited limit or good practice: correct before hand-over. */
  FIX,
  /** Worth knowing. */
  NOTE
}
