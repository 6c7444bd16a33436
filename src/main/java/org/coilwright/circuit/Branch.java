// Over 250 lines: every kind of branch of one sealed type.
package org.coilwright.circuit;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Run;
import org.coilwright.netlist.Wire;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.ConductorSize;
import org.coilwright.quantity.Quantity;
import org.jspecify.annotations.Nullable;

/**
 * A two-ended element of the circuit. Ids are unique in a circuit, so they serve for telling
 * branches apart: a branch holds all its data sheet says, too much to go through at every look-up.
 */
public sealed interface Branch {
  /** Unique in the circuit: {@code K1.11-14}, {@code K1.coil}, {@code E1.1-2}, {@code wire 3}. */
  String id();

  Node from();

  Node to();

  /** Where it is written. */
  Mark mark();

  /** The end that is not {@code end}; the same node if both are. */
  default Node other(Node end) {
    return from().equals(end) ? to() : from();
  }

  private static boolean isSame(Branch one, @Nullable Object other) {
    return one == other
        || (other instanceof Branch that
            && one.id().equals(that.id())
            && one.from().equals(that.from())
            && one.to().equals(that.to()));
  }

  /** Designation of the part it belongs to; empty for a conductor. */
  String part();

  /**
   * A wire, every default of its run applied.
   *
   * @param length in metres if written; a bridge without run counts as 0.2 m
   * @param bridge true for a wire without run and without length of its own
   */
  record Conductor(
      String id,
      Node from,
      Node to,
      Mark mark,
      Wire wire,
      Optional<Run> run,
      Optional<ConductorSize> size,
      OptionalDouble length,
      Optional<Quantity> insulation,
      boolean bridge)
      implements Branch {
    /** What it is insulated with, if that is written at the wire or its run. */
    public Optional<String> insulationMaterial() {
      return wire.insulationMaterial()
          .or(() -> run.flatMap(Run::insulationMaterial))
          .map(Written::value);
    }

    /** °C that the clamps at its ends are listed for, if that is written. */
    public OptionalDouble clampTemperature() {
      return wire.clampTemperature().or(() -> run.flatMap(Run::clampTemperature)).stream()
          .mapToDouble(c -> c.value().nominal())
          .findFirst();
    }

    /** False for aluminium; what is not written is copper. */
    public boolean isCopper() {
      return run.flatMap(Run::coreMaterial)
          .map(Written::value)
          .filter(m -> !m.equals("copper"))
          .isEmpty();
    }

    @Override
    public String part() {
      return "";
    }

    @Override
    public boolean equals(@Nullable Object other) {
      return isSame(this, other);
    }

    @Override
    public int hashCode() {
      return id.hashCode();
    }
  }

  /**
   * A contact, pole, fuse or breaker pole: it conducts or it does not.
   *
   * @param pole true for a main pole of a contactor and for the poles of protective devices
   * @param neutralPole true for {@code N1 N2} of a protective device
   * @param spec what the data sheet says; empty for devices described as a whole
   */
  record Contact(
      String id,
      Node from,
      Node to,
      Mark mark,
      String part,
      Actuator actuator,
      Part.ContactForm form,
      boolean pole,
      boolean neutralPole,
      Optional<Part.ContactSpec> spec)
      implements Branch {
    /**
     * True if it conducts when its actuator is operated. For thermostats, cut-outs and protective
     * devices "operated" means "has not opened", whatever their form.
     */
    public boolean conductsWhen(boolean operated) {
      return switch (actuator.kind()) {
        case THERMOSTAT, CUT_OUT, PROTECTIVE -> operated;
        case OUTPUT, SWITCH, COIL -> operated == (form == Part.ContactForm.NO);
      };
    }

    @Override
    public boolean equals(@Nullable Object other) {
      return isSame(this, other);
    }

    @Override
    public int hashCode() {
      return id.hashCode();
    }
  }

  /** A coil; {@code from} is its first pin. */
  record Coil(String id, Node from, Node to, Mark mark, String part, Part.CoilSpec spec)
      implements Branch {
    @Override
    public boolean equals(@Nullable Object other) {
      return isSame(this, other);
    }

    @Override
    public int hashCode() {
      return id.hashCode();
    }
  }

  /**
   * One element of a load.
   *
   * @param ratedVolts voltage across this element at the load's rated voltage
   * @param ratedWatts power of this element at {@code ratedVolts}; empty if it cannot be known
   * @param powerFactor 1 for a heater
   */
  record LoadElement(
      String id,
      Node from,
      Node to,
      Mark mark,
      String part,
      OptionalDouble ratedVolts,
      OptionalDouble ratedWatts,
      double powerFactor)
      implements Branch {
    @Override
    public boolean equals(@Nullable Object other) {
      return isSame(this, other);
    }

    @Override
    public int hashCode() {
      return id.hashCode();
    }
  }

  /**
   * A voltage source from {@code from} (minus, or neutral) to {@code to} (plus, or line).
   *
   * @param volts with tolerance; empty if it is not written
   * @param limitAmps what it can deliver, if it is limited
   * @param phaseDegrees of an alternating source; empty for a direct one
   */
  record Source(
      String id,
      Node from,
      Node to,
      Mark mark,
      String part,
      Optional<Quantity> volts,
      OptionalDouble limitAmps,
      OptionalInt phaseDegrees,
      Optional<Part.DcOutput> output)
      implements Branch {
    /** True for a direct-voltage output, false for the mains. */
    public boolean isDirect() {
      return phaseDegrees.isEmpty();
    }

    @Override
    public boolean equals(@Nullable Object other) {
      return isSame(this, other);
    }

    @Override
    public int hashCode() {
      return id.hashCode();
    }
  }

  /** Conducts from {@code from} (anode) to {@code to} (cathode). */
  record DiodeBranch(String id, Node from, Node to, Mark mark, String part, Part.Diode spec)
      implements Branch {
    @Override
    public boolean equals(@Nullable Object other) {
      return isSame(this, other);
    }

    @Override
    public int hashCode() {
      return id.hashCode();
    }
  }

  /** A varistor, snubber, resistor or indicator lamp; {@code spec} tells which. */
  record Passive(String id, Node from, Node to, Mark mark, String part, Part spec)
      implements Branch {
    @Override
    public boolean equals(@Nullable Object other) {
      return isSame(this, other);
    }

    @Override
    public int hashCode() {
      return id.hashCode();
    }
  }

  /**
   * What a device draws from the mains at its own input (controller, supply unit). It conducts for
   * the question of what is joined; its current is not modelled.
   */
  record Input(String id, Node from, Node to, Mark mark, String part) implements Branch {
    @Override
    public boolean equals(@Nullable Object other) {
      return isSame(this, other);
    }

    @Override
    public int hashCode() {
      return id.hashCode();
    }
  }

  /**
   * A connection that nobody drew: the bond of neutral and earth at the supply, or one that a fault
   * makes. It is in no circuit; whoever asks what would happen adds it.
   *
   * @param ohms its resistance
   */
  record Joint(String id, Node from, Node to, Mark mark, double ohms) implements Branch {
    @Override
    public String part() {
      return "";
    }

    @Override
    public boolean equals(@Nullable Object other) {
      return isSame(this, other);
    }

    @Override
    public int hashCode() {
      return id.hashCode();
    }
  }

  /** A way through the circuit: branches in order, and the nodes between them. */
  record Path(List<Node> nodes, List<Branch> branches) {
    /** Terminals and branches in words: {@code F1.2 → wire 7 → Q1.1-2 → E1.1}. */
    public String inWords() {
      StringBuilder words = new StringBuilder(nodes.get(0).name());
      for (int i = 0; i < branches.size(); i++) {
        words.append(" → ").append(nodes.get(i + 1).name());
      }
      return words.toString();
    }
  }
}
