package org.coilwright.netlist;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A whole netlist as written, references resolved, meaning not yet given.
 *
 * @param text the file itself: name, lines, digest
 * @param about title block
 * @param site mains, air, practice
 * @param parts by designation, in the order written; {@code type:} already merged in
 * @param runs by designation, in the order written
 * @param wires in the order written
 * @param intent load designation to expression
 * @param switching kept for the behaviour checks
 * @param accepted findings the designer has accepted
 */
public record Netlist(
    NetlistText text,
    About about,
    Site site,
    Map<String, Part> parts,
    Map<String, Run> runs,
    List<Wire> wires,
    Map<String, Written<Intent>> intent,
    Optional<Switching> switching,
    List<Accepted> accepted) {

  /** Title block. {@code title} must be there. */
  public record About(
      Written<String> title,
      Optional<String> reference,
      Optional<String> revision,
      Optional<String> preparedBy,
      Optional<String> date,
      Optional<String> note) {}

  /** A finding the designer has knowingly accepted; it stays visible. */
  public record Accepted(
      Mark mark, Written<String> rule, Written<String> at, String because, String by) {}
}
