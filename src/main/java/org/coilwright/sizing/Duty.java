package org.coilwright.sizing;

import org.coilwright.quantity.Worded;

/** How long a contact stays closed at a time. */
public enum Duty implements Worded {
  EIGHT_HOUR,
  UNINTERRUPTED
}
