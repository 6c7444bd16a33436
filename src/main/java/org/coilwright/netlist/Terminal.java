package org.coilwright.netlist;

import org.jspecify.annotations.Nullable;

/**
 * One pin of one part, written {@code K1.A1}.
 *
 * @param part designation of the part
 * @param pin the pin as the device is marked, always text
 */
public record Terminal(String part, String pin) implements Comparable<Terminal> {
  // written out: what the compiler makes of a record is put together at run time, at each start
  @Override
  public boolean equals(@Nullable Object other) {
    return this == other
        || (other instanceof Terminal that && part.equals(that.part) && pin.equals(that.pin));
  }

  @Override
  public int hashCode() {
    return 31 * part.hashCode() + pin.hashCode();
  }

  @Override
  public String toString() {
    return part + "." + pin;
  }

  @Override
  public int compareTo(Terminal other) {
    int byPart = part.compareTo(other.part);
    return byPart != 0 ? byPart : pin.compareTo(other.pin);
  }
}
