package org.coilwright.solve;

import org.jspecify.annotations.Nullable;

/**
 * Where in its tolerance everything stands when the circuit is solved. Resistances are meant: a
 * line that is HIGH is hot, a coil that is LOW is cold and draws most.
 *
 * @param pulling true if alternating-current coils that are on draw their pick-up current
 */
record Corner(
    Level supply,
    Level line,
    Level contact,
    Level coil,
    Level load,
    Level passive,
    boolean pulling) {
  /** Everything as named, wires at 20 °C. */
  static final Corner NOMINAL =
      new Corner(
          Level.NOMINAL,
          Level.NOMINAL,
          Level.NOMINAL,
          Level.NOMINAL,
          Level.NOMINAL,
          Level.NOMINAL,
          false);

  /** As named, but every coil that is on draws its pick-up current. */
  static final Corner PICK_UP =
      new Corner(
          Level.NOMINAL,
          Level.NOMINAL,
          Level.NOMINAL,
          Level.NOMINAL,
          Level.NOMINAL,
          Level.NOMINAL,
          true);

  /** Least for a coil on its own line: supply low, wires hot, contacts worn, all drawing most. */
  static final Corner LOWEST =
      new Corner(Level.LOW, Level.HIGH, Level.HIGH, Level.LOW, Level.LOW, Level.HIGH, true);

  /** Most for a coil on its own line: supply high, wires cold, contacts new, all drawing least. */
  static final Corner HIGHEST =
      new Corner(Level.HIGH, Level.LOW, Level.LOW, Level.HIGH, Level.HIGH, Level.LOW, false);

  /** What makes a supply deliver most. */
  static final Corner HEAVIEST =
      new Corner(Level.HIGH, Level.LOW, Level.LOW, Level.LOW, Level.LOW, Level.LOW, true);

  // written out: what the compiler makes of a record is put together at run time, at each start
  @Override
  public boolean equals(@Nullable Object other) {
    return this == other
        || (other instanceof Corner that
            && supply == that.supply
            && line == that.line
            && contact == that.contact
            && coil == that.coil
            && load == that.load
            && passive == that.passive
            && pulling == that.pulling);
  }

  @Override
  public int hashCode() {
    int hash = 3 * supply.number() + line.number();
    hash = 9 * hash + 3 * contact.number() + coil.number();
    hash = 9 * hash + 3 * load.number() + passive.number();
    return 2 * hash + (pulling ? 1 : 0);
  }

  /** The same once every armature is in. */
  Corner held() {
    return new Corner(supply, line, contact, coil, load, passive, false);
  }

  /** Which level counts for a kind of element. */
  Level of(Element.Kind kind) {
    return switch (kind) {
      case WIRE -> line;
      case CONTACT -> contact;
      case COIL -> coil;
      case LOAD -> load;
      case PASSIVE -> passive;
      case SOURCE, DIODE, INPUT -> Level.NOMINAL;
    };
  }
}
