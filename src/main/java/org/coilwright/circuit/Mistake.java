package org.coilwright.circuit;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;
import org.coilwright.netlist.Netlist;
import org.coilwright.netlist.Terminal;
import org.coilwright.netlist.Wire;
import org.coilwright.netlist.Written;

/**
 * One thing wired otherwise than drawn.
 *
 * @param laid wires whose ends lie elsewhere; wires are counted from 0 in the order of the netlist
 * @param leftOut the wire that is not there
 * @param turned the two-pin part that was put in the other way round, its leads where they were
 * @param pins where it happened: the right pin and the wrong one of a wire that was moved, the two
 *     pins whose wires have changed places; empty where it is not about pins
 * @param run in which two cores were taken for each other
 */
public record Mistake(
    Kind kind,
    List<Laid> laid,
    OptionalInt leftOut,
    Optional<Turned> turned,
    List<Terminal> pins,
    Optional<String> run) {
  /** How it came about; the likeliest first, as far as anybody can say. */
  public enum Kind {
    /** Two ends have changed places. */
    SWAPPED,
    /** One end is on another pin. */
    MOVED,
    LEFT_OUT,
    /** A part with a direction sits the other way round. */
    TURNED,
    /** The two leads of a supply have changed places. */
    SUPPLY_REVERSED
  }

  /** Where a wire really goes. */
  public record Laid(int wire, Terminal from, Terminal to) {}

  /** A part that was turned, and its two pins. */
  public record Turned(String part, Terminal first, Terminal second) {}

  /** Copies the lists. */
  public Mistake {
    laid = List.copyOf(laid);
    pins = List.copyOf(pins);
  }

  /** The wires it is about, ascending. */
  public List<Integer> wires() {
    Set<Integer> wires = new TreeSet<>();
    laid.forEach(l -> wires.add(l.wire()));
    leftOut.ifPresent(wires::add);
    return List.copyOf(wires);
  }

  /** The netlist of what was really built: the same but for its wires. */
  public Netlist in(Netlist drawn) {
    Map<Integer, Laid> elsewhere = new HashMap<>();
    laid.forEach(l -> elsewhere.put(l.wire(), l));
    List<Wire> wires = new ArrayList<>();
    for (int i = 0; i < drawn.wires().size(); i++) {
      Wire wire = drawn.wires().get(i);
      if (leftOut.isPresent() && leftOut.getAsInt() == i) {
        continue;
      }
      Laid there = elsewhere.getOrDefault(i, new Laid(i, wire.from().value(), wire.to().value()));
      wires.add(
          new Wire(
              wire.mark(),
              at(wire.from(), across(there.from())),
              at(wire.to(), across(there.to())),
              wire.run(),
              wire.size(),
              wire.length(),
              wire.insulation(),
              wire.colour(),
              wire.number(),
              wire.insulationMaterial(),
              wire.clampTemperature()));
    }
    return new Netlist(
        drawn.text(),
        drawn.about(),
        drawn.site(),
        drawn.parts(),
        drawn.runs(),
        List.copyOf(wires),
        drawn.intent(),
        drawn.switching(),
        drawn.accepted());
  }

  /** The pin of a turned part that a wire finds at its end. */
  private Terminal across(Terminal pin) {
    if (turned.isEmpty()) {
      return pin;
    }
    Turned part = turned.get();
    return pin.equals(part.first())
        ? part.second()
        : pin.equals(part.second()) ? part.first() : pin;
  }

  private static Written<Terminal> at(Written<Terminal> drawn, Terminal there) {
    return there.equals(drawn.value())
        ? drawn
        : new Written<>(there, there.toString(), drawn.mark());
  }
}
