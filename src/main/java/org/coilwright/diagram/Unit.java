package org.coilwright.diagram;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.coilwright.netlist.Terminal;

/**
 * What is drawn in one piece: a coil, a contact, the poles of a breaker, a load. Its columns are
 * numbered from the left.
 */
final class Unit {
  private final String name;
  private final String part;
  private final Look look;
  private final List<String> words;
  private final List<Port> ports = new ArrayList<>();
  private final boolean star;
  private boolean turned;

  /**
   * @param name unique in the diagram
   * @param part designation
   * @param words what stands beside it, a line each
   * @param star true for elements that meet in one point
   */
  Unit(String name, String part, Look look, List<String> words, boolean star) {
    this.name = name;
    this.part = part;
    this.look = look;
    this.words = List.copyOf(words);
    this.star = star;
  }

  /** Where a line lands. Two of them are never equal. */
  static final class Port {
    private final Unit unit;
    private final Terminal terminal;
    private final int slot;
    private final boolean above;

    private Port(Unit unit, Terminal terminal, int slot, boolean above) {
      this.unit = unit;
      this.terminal = terminal;
      this.slot = slot;
      this.above = above;
    }

    Unit unit() {
      return unit;
    }

    Terminal terminal() {
      return terminal;
    }

    int slot() {
      return slot;
    }

    /** True if lines come to it from above. */
    boolean isTop() {
      return above != unit.turned;
    }

    @Override
    public String toString() {
      return terminal + (isTop() ? " above" : " below");
    }
  }

  Unit top(int slot, String pin) {
    ports.add(new Port(this, new Terminal(part, pin), slot, true));
    return this;
  }

  Unit bottom(int slot, String pin) {
    ports.add(new Port(this, new Terminal(part, pin), slot, false));
    return this;
  }

  /** Turns it upside down. */
  void turn(boolean upsideDown) {
    turned = upsideDown;
  }

  boolean isTurned() {
    return turned;
  }

  String name() {
    return name;
  }

  String part() {
    return part;
  }

  Look look() {
    return look;
  }

  List<String> words() {
    return words;
  }

  boolean isStar() {
    return star;
  }

  List<Port> ports() {
    return ports;
  }

  List<Port> tops() {
    return ports.stream().filter(Port::isTop).toList();
  }

  List<Port> bottoms() {
    return ports.stream().filter(p -> !p.isTop()).toList();
  }

  Optional<Port> port(int slot, boolean top) {
    return ports.stream().filter(p -> p.slot == slot && p.isTop() == top).findFirst();
  }

  /** How many columns it takes. */
  int slots() {
    return 1 + ports.stream().mapToInt(Port::slot).max().orElse(0);
  }

  @Override
  public String toString() {
    return name;
  }
}
