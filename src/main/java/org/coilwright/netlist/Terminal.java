package org.coilwright.netlist;

/**
 * One pin of one part, written {@code K1.A1}.
 *
 * @param part designation of the part
 * @param pin the pin as the device is marked, always text
 */
public record Terminal(String part, String pin) implements Comparable<Terminal> {
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
