package org.coilwright.rule;

/** The word a report ends with. CLEAR means that no rule found anything, not that all is well. */
public enum Verdict {
  STOP,
  FIX,
  NOTE,
  CLEAR
}
