package org.coilwright.sweep;

import java.util.Set;

/**
 * What can be wrong with a circuit, in the words of plain electricity, and the rules that mean it.
 * The rules were set beside each hazard by eye: another rule that happens to speak up does not
 * count.
 */
enum Hazard {
  /** A source with nothing but contacts and wires across it. */
  SHORT_CIRCUIT("wiring.short-circuit", "wiring.self-joined", "suppression.reversed"),
  /** The mains and an extra-low-voltage supply are one circuit. */
  MAINS_ON_ELV("separation.mains-meets-elv"),
  /** Extra-low voltage and the mains in two poles of one device that is no relay. */
  SHARED_DEVICE("separation.shared-device", "separation.mains-meets-elv"),
  /** An extra-low voltage that is none. */
  ELV_TOO_HIGH("separation.elv-too-high"),
  /** Only basic insulation, or less, between an extra-low-voltage coil and mains contacts. */
  RELAY_INSULATION("separation.relay-insulation"),
  /** A wire whose insulation is not made for the mains it carries. */
  WIRE_INSULATION("separation.insulation-voltage", "separation.shared-run"),
  /** A wire on a pin that its maker keeps for something else. */
  RESERVED_PIN("wiring.reserved-pin"),
  /** A load of class I without protective conductor. */
  EARTH_MISSING("poles.earth-missing"),
  /** A contact or device in the protective conductor. */
  EARTH_SWITCHED("poles.protective-conductor-switched"),
  /** A load's current goes back by the protective conductor. */
  EARTH_CARRIES("poles.neutral-earthed", "protection.rcd-bypassed", "poles.neutral-crossed"),
  /** Neutral and protective conductor are joined where they should not be. */
  NEUTRAL_EARTHED("poles.neutral-earthed", "protection.rcd-bypassed"),
  /** A load gets some of its lines and not all. */
  LINE_MISSING(
      "poles.line-missing", "poles.neutral-missing", "load.wrong-voltage", "wiring.intent-differs"),
  /** Two pins of a load on one line. */
  LINE_REPEATED("poles.line-repeated", "wiring.self-joined"),
  /** A load whose neutral pin hangs in the air. */
  NEUTRAL_MISSING("poles.neutral-missing"),
  /** A load on more or less than it is made for. */
  WRONG_VOLTAGE(
      "load.wrong-voltage",
      "poles.line-missing",
      "poles.line-repeated",
      "poles.neutral-missing",
      "wiring.sneak-path",
      "wiring.intent-differs"),
  /** A load of which nothing says when it shall be on, and which never is. */
  LOAD_DEAD(
      "poles.line-missing",
      "poles.neutral-missing",
      "load.wrong-voltage",
      "wiring.intent-differs",
      "coil.never-on",
      "wiring.self-joined"),
  /** A load is on although its intent says off. */
  ON_WHEN_OFF(
      "wiring.intent-differs",
      "poles.load-not-switched",
      "coil.always-on",
      "wiring.sneak-path",
      "coil.wont-release"),
  /** A load is off although its intent says on. */
  OFF_WHEN_ON(
      "wiring.intent-differs",
      "coil.never-on",
      "coil.too-low",
      "coil.half-pulled",
      "coil.wrong-current-kind",
      "supply.unfed",
      "poles.line-missing",
      "wiring.no-steady-state"),
  /** Off by the contact, and the line is still on the load. */
  NEUTRAL_ONLY("poles.neutral-only", "poles.line-left-on", "poles.load-not-switched"),
  /** Off by the contact, and one of several lines is still on the load. */
  LINE_LEFT_ON("poles.line-left-on", "poles.neutral-only", "poles.load-not-switched"),
  /** A heater heats with every cut-out open. */
  CUT_OUT_BYPASSED("load.no-cut-out", "fault.welds-on"),
  /** A line stays on a closed vessel's heater with every cut-out open. */
  CUT_OUT_NOT_EVERY_LINE("load.no-cut-out"),
  /** A vessel's heater heats with every thermostat open. */
  THERMOSTAT_BYPASSED("load.no-thermostat", "wiring.intent-differs", "poles.load-not-switched"),
  /** A limiter that closes when it gets warm. */
  LIMIT_WRONG_FORM("load.limit-wrong-form"),
  /** A cut-out of a closed vessel that opens far too late, or closes again by itself. */
  CUT_OUT_UNFIT("load.no-cut-out", "load.limit-setting"),
  /** The thermostat opens no earlier than the cut-out. */
  LIMITS_MEET("load.limit-setting", "load.no-cut-out"),
  /** A coil on current of the other kind. */
  COIL_KIND("coil.wrong-current-kind"),
  /** A coil on far more than its voltage. */
  COIL_OVER("coil.too-high", "coil.wrong-current-kind"),
  /** A coil on something between releasing and pulling in. */
  COIL_HALF("coil.half-pulled", "coil.too-low", "coil.wont-release", "wiring.sneak-path"),
  /** A coil that nothing pulls in. */
  COIL_NEVER(
      "coil.never-on",
      "coil.too-low",
      "coil.half-pulled",
      "coil.wrong-current-kind",
      "supply.unfed",
      "wiring.self-joined",
      "wiring.loose-end",
      "wiring.no-steady-state"),
  /** A coil that nothing releases. */
  COIL_ALWAYS("coil.always-on"),
  /** A coil of fixed polarity wired backwards. */
  COIL_REVERSED("coil.reversed"),
  /** A direct-voltage coil with nothing to take its turn-off voltage. */
  SUPPRESSION_MISSING("suppression.missing"),
  /** A diode that conducts while the coil is on. */
  DIODE_CONDUCTS("suppression.reversed", "wiring.short-circuit"),
  /** A diode across alternating voltage. */
  DIODE_ON_AC("suppression.diode-on-ac"),
  /** A residual-current device whose currents do not cancel: it trips in normal use. */
  RCD_TRIPS("protection.rcd-bypassed", "poles.neutral-crossed", "poles.neutral-earthed"),
  /** A device's neutral pole carries another circuit's current. */
  NEUTRAL_CROSSED("poles.neutral-crossed", "protection.rcd-bypassed", "poles.neutral-only"),
  /** A load with no overcurrent device ahead of it. */
  UNPROTECTED("protection.missing", "conductor.unprotected"),
  /** A device that cannot carry its load. */
  DEVICE_BELOW_LOAD("protection.load-exceeds-device"),
  /** A device far too large for a wire behind it. */
  DEVICE_TOO_LARGE("conductor.unprotected"),
  /** A wire that cannot carry its load. */
  WIRE_OVERLOADED("conductor.overloaded", "conductor.unprotected"),
  /** A contact without a rating for this kind of current. */
  CONTACT_KIND("drive.voltage", "contactor.voltage", "contactor.category", "drive.current"),
  /** A contact on more than its voltage. */
  CONTACT_VOLTAGE("drive.voltage", "contactor.voltage", "contactor.category"),
  /** A contact that carries more than its rating. */
  CONTACT_CURRENT("drive.current", "contactor.current", "contactor.category", "drive.inrush"),
  /** A supply or controller that never gets mains. */
  SUPPLY_UNFED("supply.unfed"),
  /** A supply or controller on a voltage it is not made for. */
  SUPPLY_WRONG("supply.wrong-voltage", "separation.mains-meets-elv"),
  /** A direct-voltage supply that gives more than it can. */
  SUPPLY_OVERLOADED("supply.overloaded", "wiring.short-circuit", "suppression.reversed"),
  /** Relays that never come to rest. */
  BUZZING("wiring.no-steady-state"),
  /** Relays that stay as they were. */
  LATCHING("wiring.two-steady-states", "coil.half-pulled"),
  /** Air in which no device works. */
  AIR_TOO_HOT(
      "enclosure.too-warm", "conductor.overloaded", "conductor.unprotected", "coil.too-low");

  private final String rules;

  Hazard(String... rules) {
    this.rules = String.join(" ", rules);
  }

  /** The rules that mean it. */
  Set<String> rules() {
    return Set.of(rules.split(" "));
  }
}
