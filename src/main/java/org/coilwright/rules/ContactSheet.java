package org.coilwright.rules;

import java.util.Map;
import java.util.Optional;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.Netlist;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Part.Ratings;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Quantity;
import org.coilwright.quantity.Rating;

/** What the netlist gives of a contact's data sheet, at the contact or at its part. */
record ContactSheet(Netlist netlist, Contact contact) {
  /** Its ratings as its data sheet gives them; a relay's own stand for contacts without any. */
  Ratings ratings() {
    Optional<Ratings> own =
        contact.spec().map(Part.ContactSpec::ratings).filter(r -> !r.byCategory().isEmpty());
    if (own.isPresent()) {
      return own.get();
    }
    Part part = netlist.parts().get(contact.part());
    if (part instanceof Part.Thermal thermal) {
      return thermal.ratings();
    }
    if (part instanceof Part.Switch hand) {
      return hand.ratings();
    }
    if (part instanceof Part.Relay relay && (contact.pole() || !relay.isContactor())) {
      return relay.ratings();
    }
    return new Ratings(Optional.empty(), Map.of());
  }

  Mark ratingsMark() {
    return ratings().mark().orElse(contact.mark());
  }

  Optional<Written<Rating>> leastLoad() {
    Part part = netlist.parts().get(contact.part());
    if (part instanceof Part.Thermal thermal) {
      return thermal.leastLoad();
    }
    if (part instanceof Part.Switch hand) {
      return hand.leastLoad();
    }
    return contact.spec().flatMap(Part.ContactSpec::leastLoad);
  }

  /** True for an auxiliary contact of a contactor. */
  boolean isAuxiliary() {
    return !contact.pole()
        && netlist.parts().get(contact.part()) instanceof Part.Relay relay
        && relay.isContactor();
  }

  /** Where the voltage that a rating holds at is written, its lowest value. */
  static Optional<Double> ratedVolts(Written<Rating> rating) {
    return rating.value().at().map(Quantity::low);
  }

  static double ratedAmps(Written<Rating> rating) {
    return rating.value().amount().low();
  }
}
