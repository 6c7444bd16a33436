// Over 250 lines: every kind of part of one sealed type.
package org.coilwright.netlist;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Quantity;
import org.coilwright.quantity.Rating;
import org.coilwright.quantity.Worded;

/** A part as written. What it is, is said by {@code is:}, never by its designation. */
public sealed interface Part {
  /** What every part has. */
  Head head();

  /** Every pin a wire may land on, in the order of the device. */
  List<String> pins();

  /** Designation, such as {@code K1}. */
  default String name() {
    return head().name();
  }

  /** The mains input of a controller or supply, where one is written; empty for other parts. */
  static Optional<MainsInput> inputOf(Part part) {
    return part instanceof Controller controller
        ? controller.mains()
        : part instanceof DcSupply supply ? supply.input() : Optional.empty();
  }

  /**
   * What every part has.
   *
   * @param name designation
   * @param is the word after {@code is:}, such as {@code relay}
   * @param mark of the designation in the file
   * @param asksRcd kind of residual-current device that its maker asks for before it
   * @param additional why additional protection at 30 mA is asked for where it stands
   * @param ratedAir of a controller or supply unit: the air up to which it works
   * @param protectionClass of a load: {@code I}, {@code II} or {@code III}
   */
  record Head(
      String name,
      String is,
      Mark mark,
      Optional<String> label,
      Optional<String> note,
      Optional<Written<String>> asksRcd,
      Optional<Written<String>> additional,
      Optional<Written<Quantity>> ratedAir,
      Optional<Written<String>> protectionClass) {
    /** Names are unique in a netlist. */
    @Override
    public int hashCode() {
      return name.hashCode();
    }
  }

  /**
   * The incoming mains. Pins by {@code site.mains}: {@code L}, {@code L1 L2} or {@code L1 L2 L3},
   * then {@code N PE}.
   */
  record Mains(Head head, List<String> pins) implements Part {}

  /**
   * An inverter, a battery or a generator beside the mains; pins like those of the mains. It is a
   * set of pins: what is joined can be asked, but nothing is computed from it.
   *
   * @param kind {@code inverter}, {@code battery} or {@code generator}
   * @param asksRcd the kind of residual-current device that its maker asks for
   * @param islands false if it stops with the mains
   */
  record Source(
      Head head,
      List<String> pins,
      Written<String> kind,
      Optional<Written<String>> asksRcd,
      Optional<Written<Boolean>> islands)
      implements Part {}

  /** A controller with its auxiliary supply, volt-free outputs and pins kept for other uses. */
  record Controller(
      Head head,
      List<String> pins,
      Optional<DcOutput> auxSupply,
      Map<String, ContactSpec> outputs,
      Map<String, Written<String>> reserved,
      Optional<MainsInput> mains,
      Optional<InsulationSpec> insulation)
      implements Part {}

  /** A power supply unit with direct-voltage output. */
  record DcSupply(Head head, List<String> pins, Optional<MainsInput> input, DcOutput output)
      implements Part {}

  /**
   * A relay or a contactor ({@code head.is} tells). Poles stand among the contacts, marked as
   * poles.
   */
  record Relay(
      Head head,
      List<String> pins,
      CoilSpec coil,
      List<ContactSpec> contacts,
      Ratings ratings,
      Optional<Written<Mounting>> mounting,
      Optional<Written<Quantity>> ratedAir,
      Optional<InsulationSpec> insulation,
      Map<String, Written<Rating>> life,
      Optional<Written<Rating>> loss,
      Map<String, Written<Quantity>> backup)
      implements Part {
    /** True for {@code is: contactor}. */
    public boolean isContactor() {
      return head.is().equals("contactor");
    }
  }

  /** Pins {@code A} (anode) and {@code K} (cathode). */
  record Diode(
      Head head,
      List<String> pins,
      Optional<Written<Quantity>> reverseVoltage,
      Optional<Written<Quantity>> current)
      implements Part {}

  /** Voltage-dependent resistor. */
  record Varistor(Head head, List<String> pins, Optional<Written<Quantity>> clampingVoltage)
      implements Part {}

  /** Resistor and capacitor in series. */
  record Snubber(
      Head head,
      List<String> pins,
      Optional<Written<Quantity>> resistance,
      Optional<Written<Quantity>> capacitance)
      implements Part {}

  /** A resistor. */
  record Resistor(
      Head head,
      List<String> pins,
      Optional<Written<Quantity>> resistance,
      Optional<Written<Quantity>> power)
      implements Part {}

  /** An indicator lamp in the control circuit. */
  record Lamp(
      Head head,
      List<String> pins,
      Optional<Written<Quantity>> voltage,
      Optional<Written<Quantity>> current)
      implements Part {}

  /** A fuse: one pole {@code 1 2}; {@code family} is what its time-current zone is named by. */
  record Fuse(
      Head head,
      List<String> pins,
      Optional<Written<Quantity>> rating,
      Optional<Written<Quantity>> breakingCapacity,
      Optional<Written<Quantity>> breakingDirect,
      Optional<Written<String>> family,
      DeviceAir air)
      implements Part {}

  /**
   * What a protective device says about the air it stands in.
   *
   * @param rated up to which its rated current holds
   * @param working range in which it works at all
   * @param mounting side by side with others, or spaced
   */
  record DeviceAir(
      Optional<Written<Quantity>> rated,
      Optional<Written<Quantity>> working,
      Optional<Written<Mounting>> mounting) {}

  /**
   * A circuit breaker ({@code curve}, {@code standard}) or a residual-current device ({@code kind},
   * {@code trip}).
   */
  record Protective(
      Head head,
      List<String> pins,
      List<Pole> poles,
      Optional<Written<String>> curve,
      Optional<Written<String>> standard,
      Optional<Written<String>> kind,
      Optional<Written<Quantity>> trip,
      Optional<Written<Quantity>> rating,
      Optional<Written<Quantity>> breakingCapacity,
      Optional<Written<Quantity>> breakingDirect,
      DeviceAir air,
      Optional<Written<Boolean>> bothDirections,
      Optional<Written<Quantity>> overloadSetting,
      Optional<Written<String>> handleTie)
      implements Part {
    /** True for {@code is: rcd}. */
    public boolean isRcd() {
      return head.is().equals("rcd");
    }

    @Override
    public int hashCode() {
      return head.hashCode();
    }
  }

  /** A hand-operated switch. */
  record Switch(
      Head head,
      List<String> pins,
      List<Pole> poles,
      ContactForm form,
      Ratings ratings,
      Optional<Written<Rating>> leastLoad,
      Optional<InsulationSpec> insulation)
      implements Part {}

  /** A thermostat or a thermal cut-out ({@code head.is} tells). */
  record Thermal(
      Head head,
      List<String> pins,
      List<Pole> poles,
      ContactForm form,
      Optional<Written<Quantity>> opensAt,
      Optional<Written<String>> reset,
      Ratings ratings,
      Optional<Written<Rating>> leastLoad,
      Optional<InsulationSpec> insulation)
      implements Part {
    /** True for {@code is: cut-out}. */
    public boolean isCutOut() {
      return head.is().equals("cut-out");
    }
  }

  /** A row of clamps; bridged clamps are one node. */
  record TerminalStrip(Head head, List<String> pins, List<List<String>> bridged) implements Part {}

  /** A heating element or a group of them. */
  record Heater(
      Head head,
      List<String> pins,
      Optional<Written<Quantity>> power,
      Optional<Written<Quantity>> voltage,
      Written<Connection> connection,
      Optional<Vessel> vessel,
      Optional<Written<String>> kind)
      implements Part {
    /** Words of {@code kind}. */
    public static final List<String> KINDS = List.of("metal-sheathed", "carbide", "ptc");

    @Override
    public int hashCode() {
      return head.hashCode();
    }
  }

  /** A motor, transformer, charger, lighting or other load ({@code head.is} tells). */
  record OtherLoad(
      Head head,
      List<String> pins,
      Optional<Written<Quantity>> power,
      Optional<Written<Quantity>> current,
      Optional<Written<Quantity>> voltage,
      Optional<Written<Quantity>> powerFactor,
      Optional<Written<String>> category,
      Optional<Written<Rating>> inrush,
      Optional<Written<Boolean>> thermalProtector)
      implements Part {
    /**
     * True for a motor whose power is written in watts and its current not at all: a plate gives
     * the power at the shaft (IEC 60034-1), and what the wires carry is more.
     */
    public boolean isByShaft() {
      return head.is().equals("motor")
          && current.isEmpty()
          && power.filter(p -> p.value().dimension() == Dimension.POWER).isPresent();
    }

    @Override
    public int hashCode() {
      return head.hashCode();
    }
  }

  /**
   * One pole of a multi-pole device, the line side pin first. {@code neutral} for {@code N1 N2}.
   */
  record Pole(String from, String to, boolean neutral) {}

  /** What a contact does when its actuator operates. */
  enum ContactForm {
    NO,
    NC
  }

  /** How a load's elements are joined. */
  enum Connection implements Worded {
    SINGLE,
    STAR,
    STAR_WITH_NEUTRAL,
    DELTA
  }

  /**
   * Water the element heats.
   *
   * @param relief between which temperatures its relief valve opens
   * @param openVent true if a vent that is always open leads steam away
   * @param cistern {@code metal} or {@code plastic}: what boiling water meets in an open vessel
   */
  record Vessel(
      Mark mark,
      Optional<Written<Quantity>> litres,
      Optional<Written<Boolean>> closed,
      Optional<Written<Quantity>> relief,
      Optional<Written<Boolean>> openVent,
      Optional<Written<String>> cistern) {}

  /** Where a device takes its own mains; the pins in the order L, N. */
  record MainsInput(Mark mark, List<String> pins, Optional<Written<Quantity>> voltage) {}

  /** A direct-voltage output. */
  record DcOutput(
      Mark mark,
      Written<String> plus,
      Written<String> minus,
      Optional<Written<Quantity>> voltage,
      Optional<Written<Quantity>> limit,
      Optional<Written<Isolation>> isolation,
      Optional<Written<Quantity>> ripple) {}

  /** How an output is kept apart from the mains. */
  enum Isolation {
    SELV,
    PELV,
    NONE
  }

  /** Ratings by utilization category, such as {@code AC-1 -> 16 A at 250 V}. */
  record Ratings(Optional<Mark> mark, Map<String, Written<Rating>> byCategory) {}

  /**
   * A contact. A changeover is two of these that share {@code from}.
   *
   * @param name {@code 11-14}, or the output's own name
   * @param from first pin, the common one of a changeover
   * @param pole true for a main pole of a contactor
   */
  record ContactSpec(
      Mark mark,
      String name,
      String from,
      String to,
      ContactForm form,
      boolean pole,
      Ratings ratings,
      Optional<Written<Rating>> leastLoad,
      Optional<Written<Quantity>> leakage,
      Optional<Written<Boolean>> mirror) {}

  /** A coil as its data sheet describes it. */
  record CoilSpec(
      Mark mark,
      String first,
      String second,
      Written<Quantity> voltage,
      Optional<Written<Quantity>> resistance,
      Optional<Written<Quantity>> power,
      Optional<Written<Quantity>> range,
      Optional<Written<Rating>> operate,
      Optional<Written<Quantity>> release,
      Optional<Written<String>> polarity,
      Optional<Written<String>> suppression,
      Optional<Written<Quantity>> timeConstant,
      Optional<Written<Quantity>> pickUp,
      Optional<Written<Quantity>> hold,
      Optional<Written<Quantity>> holdPower,
      Optional<Written<Quantity>> operateTime,
      Optional<Written<Quantity>> releaseTime,
      Optional<Written<Quantity>> clampingVoltage) {
    /** True if a diode, with or without a zener, is built in across it. */
    public boolean hasDiode() {
      return suppression().filter(s -> s.value().startsWith("diode")).isPresent();
    }
  }

  /**
   * Insulation between coil and contacts, or of a device without coil between its poles; the
   * figures are of the former where there is a coil.
   */
  record InsulationSpec(
      Mark mark,
      Optional<Written<String>> coilToContacts,
      Optional<Written<String>> betweenPoles,
      Optional<Written<Quantity>> test,
      Optional<Written<Quantity>> clearance,
      Optional<Written<Quantity>> creepage,
      Optional<Written<Quantity>> voltage) {}
}
