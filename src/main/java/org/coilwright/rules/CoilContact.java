package org.coilwright.rules;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Rating;
import org.coilwright.solve.Study;
import org.coilwright.table.Tables;

/**
 * A contact that stands in a coil's way, with the rating that the drive rules hold against it.
 *
 * @param name such as {@code K1.11-14}
 * @param category of the rating, such as {@code AC-15}; empty text without one
 * @param rating the one for this coil's kind of current; else one for the other kind, which then
 *     says that it is not for this coil; empty if the contact has none
 */
public record CoilContact(String name, String category, Optional<Rating> rating) {
  /**
   * Every contact on every way that feeds a relay's coil, fuses and breakers left out. All of them
   * carry its current: those in series together, those in parallel each by itself.
   */
  public static List<CoilContact> before(String relay, Study study, Tables tables) {
    return DrivingContact.all(study).stream()
        .filter(contact -> contact.coils().stream().anyMatch(feed -> feed.relay().equals(relay)))
        .map(contact -> judgedBy(contact, tables))
        .toList();
  }

  private static CoilContact judgedBy(DrivingContact contact, Tables tables) {
    return Cover.of(contact, tables)
        .map(c -> new CoilContact(contact.name(), c.category(), Optional.of(c.rating().value())))
        .orElseGet(() -> other(contact));
  }

  private static CoilContact other(DrivingContact contact) {
    Map<String, Written<Rating>> all = contact.sheet().ratings().byCategory();
    return all.entrySet().stream()
        .filter(e -> e.getKey().startsWith("DC") != contact.isDirect())
        .min(Map.Entry.comparingByKey())
        .map(e -> new CoilContact(contact.name(), e.getKey(), Optional.of(e.getValue().value())))
        .orElseGet(() -> new CoilContact(contact.name(), "", Optional.empty()));
  }
}
