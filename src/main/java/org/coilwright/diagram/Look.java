package org.coilwright.diagram;

/** What stands in the diagram; the graphical symbols are those of IEC 60617. */
enum Look {
  MAINS,
  BREAKER,
  RCD,
  FUSE,
  SWITCH_MAKE,
  SWITCH_BREAK,
  MAKE,
  BREAK,
  CHANGEOVER,
  MAIN_CONTACT,
  MAIN_BREAK,
  THERMOSTAT,
  CUT_OUT,
  COIL,
  DIODE,
  VARISTOR,
  SNUBBER,
  RESISTOR,
  LAMP,
  HEATER,
  MOTOR,
  TRANSFORMER,
  CHARGER,
  LIGHTING,
  LOAD,
  INPUT,
  SOURCE,
  CLAMPS,
  RESERVED,
  /** A pin on another sheet or in another area, above what it is joined to. */
  FROM,
  /** The same, below. */
  TO,
  /** Several conductors of a terminal that go elsewhere, where they are drawn; above it. */
  LIST_ABOVE,
  /** The same, below. */
  LIST_BELOW;

  boolean isReference() {
    return isAbove() || isBelow();
  }

  /** A reference that stands above what it is joined to. */
  boolean isAbove() {
    return this == FROM || this == LIST_ABOVE;
  }

  /** A reference that stands below what it is joined to. */
  boolean isBelow() {
    return this == TO || this == LIST_BELOW;
  }

  boolean isList() {
    return this == LIST_ABOVE || this == LIST_BELOW;
  }

  /** Something that takes current and has all its pins above. */
  boolean isLoad() {
    return switch (this) {
      case HEATER, MOTOR, TRANSFORMER, CHARGER, LIGHTING, LOAD -> true;
      default -> false;
    };
  }

  /** Something a current passes on its way, without work being done. */
  boolean isWay() {
    return switch (this) {
      case BREAKER,
          RCD,
          FUSE,
          SWITCH_MAKE,
          SWITCH_BREAK,
          MAKE,
          BREAK,
          CHANGEOVER,
          MAIN_CONTACT,
          MAIN_BREAK,
          THERMOSTAT,
          CUT_OUT,
          CLAMPS ->
          true;
      default -> false;
    };
  }

  /** True if it may be drawn upside down. */
  boolean turns() {
    return (isWay() && this != CLAMPS)
        || switch (this) {
          case COIL, DIODE, VARISTOR, SNUBBER, RESISTOR, LAMP, INPUT -> true;
          default -> false;
        };
  }

  /** What ends a current path of the control circuit. */
  boolean isConsumer() {
    return this == COIL || this == LAMP || this == INPUT;
  }
}
