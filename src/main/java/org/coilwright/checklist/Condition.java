package org.coilwright.checklist;

/** When a caution applies: the closed list of words that its front matter may use. */
enum Condition {
  ALWAYS,
  /** The mains is part of the circuit. */
  MAINS,
  /** A direct-voltage control circuit is part of it. */
  ELV,
  /** Both. */
  ELV_AND_MAINS,
  /** More than one source, or a plant beside the mains. */
  SEVERAL_SUPPLIES,
  /** A battery or photovoltaic plant is described. */
  BATTERY_PLANT,
  /** Supply units or snubbers that keep a charge. */
  STORED_CHARGE,
  /** A controller's output starts the load. */
  OUTPUT,
  /** Controllers, supply units, diodes or varistors. */
  ELECTRONICS,
  /** The load, or the control circuit, uses the neutral. */
  NEUTRAL,
  ONE_PHASE,
  SPLIT_PHASE,
  THREE_PHASE,
  RELAY,
  CONTACTOR,
  AC_COIL,
  RCD,
  /** A load behind a relay's or contactor's contact. */
  SWITCHED_LOAD,
  /** A heater in water. */
  VESSEL,
  CLOSED_VESSEL,
  IEC,
  NEC
}
