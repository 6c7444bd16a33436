package org.coilwright.solve;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.coilwright.circuit.Branch;
import org.coilwright.quantity.CurrentKind;

/** Switches coils off and follows their current down to where the armature lets go. */
final class TurnOffs {
  private final Lookup lookup;

  TurnOffs(Lookup lookup) {
    this.lookup = lookup;
  }

  /** Two settings of a group: the coil on, and one contact moved while its armature is still in. */
  private record Opening(Situation on, Situation off) {}

  Optional<TurnOff> of(String relay) {
    Setup setup = lookup.model().setup;
    CoilModel model = setup.coils.get(relay);
    Branch.Coil coil =
        setup.circuit.branchesOf(relay).stream()
            .filter(Branch.Coil.class::isInstance)
            .map(Branch.Coil.class::cast)
            .findFirst()
            .orElseThrow(() -> new IllegalArgumentException("no relay " + relay));
    Zone zone = lookup.zoneOf(coil);
    Element element = lookup.elementOf(zone, coil);
    Group group = lookup.model().groupOf.get(zone);
    if (model == null
        || group == null
        || model.kind == CurrentKind.AC
        || model.limits.isEmpty()
        || model.isTakenByUnknown()
        || !zone.reference.hasDirect()) {
      return Optional.empty();
    }
    return opening(group, relay).flatMap(o -> follow(relay, model, zone, element, o));
  }

  private Optional<Opening> opening(Group group, String relay) {
    Exploration exploration = lookup.model().explorations.get(group);
    if (exploration == null) {
      return Optional.empty();
    }
    int slot = group.slot(lookup.model().setup.variables.ofRelay(relay));
    for (BitSet moved : exploration.order()) {
      for (BitSet on : exploration.steady.getOrDefault(moved, List.of())) {
        if (on.get(slot)) {
          for (int contact = 0; contact < group.independents(); contact++) {
            BitSet neighbour = (BitSet) moved.clone();
            neighbour.flip(contact);
            for (BitSet off : exploration.steady.getOrDefault(neighbour, List.of())) {
              if (!off.get(slot)) {
                BitSet held = held(group, slot, on, off);
                return Optional.of(new Opening(group.situation(on), group.situation(held)));
              }
            }
          }
        }
      }
    }
    return Optional.empty();
  }

  /**
   * How all stands when the contact has moved and every armature has followed but the one whose
   * coil is asked about: its own contacts, and what they release, move only once its current has
   * fallen.
   */
  private static BitSet held(Group group, int slot, BitSet on, BitSet off) {
    BitSet bits = off.get(0, group.independents());
    for (int armature = group.independents(); armature < group.firstSource(); armature++) {
      bits.set(armature, on.get(armature));
    }
    for (int step = group.independents(); step <= group.firstSource(); step++) {
      BitSet next = group.next(group.situation(bits)).get(0, group.firstSource());
      next.set(slot);
      if (next.equals(bits)) {
        return bits;
      }
      bits = next;
    }
    return off;
  }

  private Optional<TurnOff> follow(
      String relay, CoilModel model, Zone zone, Element element, Opening opening) {
    ZoneFlow on = opening.on().flow(zone, Corner.NOMINAL);
    ZoneFlow off = opening.off().flow(zone, Corner.NOMINAL);
    Decay decay =
        new Decay(
            zone,
            opening.on().settings(Corner.NOMINAL),
            contact -> off.conducts().get(contact.number()),
            lookup.model().setup.coils);
    int place = decay.coils.indexOf(element);
    if (place < 0) {
      return Optional.empty();
    }
    List<Element> opened = new ArrayList<>();
    for (Element contact : zone.elements) {
      if (contact.kind() == Element.Kind.CONTACT
          && on.conducts().get(contact.number())
          && !off.conducts().get(contact.number())) {
        opened.add(contact);
      }
    }
    double[] state = new double[decay.coils.size() + decay.capacitors.size()];
    for (int c = 0; c < decay.coils.size(); c++) {
      state[c] = on.direct().iRe[decay.coils.get(c).number()];
    }
    for (int c = 0; c < decay.capacitors.size(); c++) {
      state[decay.coils.size() + c] = Decay.volts(on.direct(), decay.capacitors.get(c));
    }
    double release = model.limits.orElseThrow().release().value() / decay.ohms.get(place);
    double amps = Math.abs(state[place]);
    List<String> by = opened.stream().map(e -> e.branch().id()).toList();
    if (opened.isEmpty() || amps <= release) {
      return Optional.empty();
    }
    if (!decay.isTaken(state, place)) {
      return Optional.of(
          new TurnOff(
              relay,
              by,
              amps,
              release,
              0,
              OptionalDouble.empty(),
              OptionalDouble.empty(),
              TurnOff.Method.NOTHING_ACROSS));
    }
    Fall fall = new Fall(decay, place, opened);
    boolean alone = state.length == 1;
    double seconds =
        alone ? fall.byExponentials(state[0], release) : fall.byIntegration(state, release);
    if (!Double.isFinite(seconds)) {
      // its own contact goes on feeding it
      return Optional.empty();
    }
    return Optional.of(
        new TurnOff(
            relay,
            by,
            amps,
            release,
            seconds,
            OptionalDouble.of(fall.coilPeak()),
            fall.contactPeak(),
            alone ? TurnOff.Method.CLOSED_FORM : TurnOff.Method.INTEGRATED));
  }
}
