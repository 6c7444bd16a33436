// Over 250 lines: what every contactor rule asks of a contact.
package org.coilwright.rules;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;
import org.coilwright.circuit.Actuator.Kind;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.Mounting;
import org.coilwright.netlist.Netlist;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Site;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Quantity;
import org.coilwright.quantity.Rating;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.sizing.ContactConditions;
import org.coilwright.sizing.LoadCurrent;
import org.coilwright.sizing.PowerSide;
import org.coilwright.sizing.PowerSide.Demand;
import org.coilwright.solve.Study;
import org.coilwright.table.Cited;
import org.coilwright.table.CitedTable;
import org.coilwright.table.Tables;

/**
 * A contact in the way of a load: a pole of a contactor, a relay's contact, an output, a switch, a
 * thermostat or a cut-out. Poles that are rated together are one; the one that carries most stands
 * for them.
 */
record LoadContact(
    PowerSide side, Part part, String name, Contact contact, List<Part> loads, int parallel) {

  /** A rating that covers the load. */
  record Fit(String category, Written<Rating> rating, String inrush) {
    double amps() {
      return rating.value().amount().nominal();
    }

    OptionalDouble volts() {
      return rating.value().at().stream().mapToDouble(a -> a.nominal()).findFirst();
    }

    /** {@code AC-1: 25 A at 400 V}. */
    String words() {
      return category + ": " + rating.text();
    }
  }

  /** Asks about each contact that carries a load. */
  static List<Outcome> ask(
      PowerSides sides, Study study, Function<LoadContact, Optional<Outcome>> question) {
    List<Outcome> outcomes = new ArrayList<>();
    PowerSide side = sides.of(study).side();
    for (LoadContact contact : study.derived(All.class, s -> new All(of(side))).contacts()) {
      question.apply(contact).ifPresent(outcomes::add);
    }
    return outcomes;
  }

  /** The contacts of a study, worked out once for the rules that ask. */
  private record All(List<LoadContact> contacts) {}

  private static List<LoadContact> of(PowerSide side) {
    Map<String, LoadContact> found = new LinkedHashMap<>();
    for (Contact contact : side.circuit().branches(Contact.class)) {
      Kind kind = contact.actuator().kind();
      if (side.branches().contains(contact) && kind != Kind.PROTECTIVE) {
        Part part = side.circuit().netlist().parts().get(contact.part());
        if (part == null) {
          continue;
        }
        String key = contact.actuator().name() + ratings(side, contact).mark();
        LoadContact one =
            new LoadContact(
                side,
                part,
                contact.actuator().name(),
                contact,
                side.loadsThrough(contact),
                alongside(side, contact));
        LoadContact known = found.get(key);
        if (known == null || one.worst() > known.worst()) {
          found.put(key, one);
        }
      }
    }
    return List.copyOf(found.values());
  }

  private static int alongside(PowerSide side, Contact contact) {
    Nets nets = Nets.ofWires(side.study());
    return (int)
        side.circuit().contactsOf(contact.actuator()).stream()
            .filter(c -> c.form() == contact.form())
            .filter(c -> nets.joined(contact.from(), c.from()))
            .filter(c -> nets.joined(contact.to(), c.to()))
            .count();
  }

  private double worst() {
    return side.demand(contact).map(Demand::worst).orElse(0.0);
  }

  private static Part.Ratings ratings(PowerSide side, Contact contact) {
    return new ContactSheet(side.circuit().netlist(), contact).ratings();
  }

  Part.Ratings ratings() {
    return ratings(side, contact);
  }

  /** Where its ratings are written; the contact's own place if they are not. */
  Mark mark() {
    return ratings().mark().orElse(contact.mark());
  }

  Subject subject(RuleFacts facts) {
    List<String> at = new ArrayList<>();
    at.add(part.name());
    loads.forEach(l -> at.add(l.name()));
    return new Subject(facts, mark(), List.copyOf(at));
  }

  Optional<Demand> demand() {
    return side.demand(contact);
  }

  String loadNames() {
    return String.join(", ", loads.stream().map(Part::name).toList());
  }

  /** A way by which a load's current comes through it, pin by pin: {@code G0.L → S1.1 → E1.1}. */
  String way() {
    return loads.stream()
        .flatMap(l -> side.waysOf(l).stream())
        .filter(w -> w.path().branches().contains(contact))
        .min(Comparator.comparing((PowerSide.Way w) -> w.path().branches().size()))
        .map(w -> w.path().inWords())
        .orElse(name);
  }

  /** The key that is missing where a load's current is not known. */
  Outcome withoutPower(RuleFacts facts) {
    Part load =
        loads.stream().filter(l -> side.current(l).isEmpty()).findFirst().orElse(loads.get(0));
    return subject(facts)
        .undecided(
            LoadCurrent.missing(load),
            "What %s carries is open: the power of %s is not known.".formatted(name, load.name()));
  }

  Outcome withoutRating(RuleFacts facts) {
    return subject(facts)
        .undecided(
            "ratings of " + name,
            "What %s may carry for %s is open: it has no rating.".formatted(name, loadNames()));
  }

  /** True if what it breaks is direct current, known or not how much. */
  boolean isDirect() {
    return loads.stream().noneMatch(side::isOnMains);
  }

  /** What its ratings say of the kind of current that it breaks. */
  RatedKind ratedKind() {
    return RatedKind.in(ratings(), isDirect());
  }

  /** What a load is to a contact: a row word of the table of categories; empty if not said. */
  Optional<String> kindOf(Part load) {
    if (isDirect()) {
      return load instanceof Part.Heater ? Optional.of("dc-resistive") : Optional.empty();
    }
    if (load instanceof Part.Heater heater) {
      return Optional.of(heater.kind().map(Written::value).orElse("metal-sheathed"));
    }
    String is = load.head().is();
    return is.equals("motor") || is.equals("transformer") ? Optional.of(is) : Optional.empty();
  }

  /**
   * Categories that cover what a load is, the one to ask for first; empty if it is not known what
   * it is.
   */
  List<CitedTable.Row> covering(Part load, Tables tables) {
    return rows(kindOf(load), tables);
  }

  private static List<CitedTable.Row> rows(Optional<String> load, Tables tables) {
    return tables.table("load-category").rows().stream()
        .filter(r -> r.word("load").map(Cited::value).equals(load))
        .toList();
  }

  private static Optional<String> written(Part load) {
    return load instanceof Part.OtherLoad other
        ? other.category().map(Written::value)
        : Optional.empty();
  }

  /** What the table of categories says covers a load: by its own category if that is written. */
  List<Cited<String>> tabled(Part load, Tables tables) {
    Optional<String> own = written(load);
    return (own.isPresent() ? rows(own, tables) : covering(load, tables))
        .stream().flatMap(r -> r.word("category").stream()).toList();
  }

  /** Categories that cover a load, by name; one that is written for it comes first. */
  List<String> categories(Part load, Tables tables) {
    return Stream.concat(written(load).stream(), tabled(load, tables).stream().map(Cited::value))
        .toList();
  }

  /** The largest of its ratings that cover every load; empty if none does. */
  Optional<Fit> fit(Tables tables) {
    Set<String> all = new LinkedHashSet<>(ratings().byCategory().keySet());
    for (Part load : loads) {
      all.retainAll(categories(load, tables));
    }
    return all.stream()
        .flatMap(
            c ->
                Optional.ofNullable(ratings().byCategory().get(c))
                    .map(r -> new Fit(c, r, inrush(tables)))
                    .stream())
        .max((a, b) -> Double.compare(a.amps(), b.amps()));
  }

  private String inrush(Tables tables) {
    return loads.stream()
        .flatMap(l -> covering(l, tables).stream())
        .flatMap(r -> r.word("inrush").stream())
        .map(w -> w.value())
        .findFirst()
        .orElse("");
  }

  /**
   * True if the air of the box counts: the rating of a thermostat or switch holds where it sits.
   */
  boolean isDerated() {
    return !(part instanceof Part.Thermal || part instanceof Part.Switch);
  }

  /** What lowers its rating. */
  ContactConditions conditions(Surroundings around, boolean closeMounted) {
    Netlist netlist = side.circuit().netlist();
    double hertz =
        loads.stream()
            .flatMap(l -> side.current(l).stream())
            .mapToDouble(LoadCurrent::hertz)
            .max()
            .orElse(0);
    Optional<Part.Relay> relay = part instanceof Part.Relay r ? Optional.of(r) : Optional.empty();
    return new ContactConditions(
        around.insideHigh(),
        relay
            .flatMap(Part.Relay::ratedAir)
            .map(a -> OptionalDouble.of(a.value().high()))
            .orElse(OptionalDouble.empty()),
        closeMounted,
        Surroundings.altitude(netlist),
        hertz,
        parallel);
  }

  /** How it is mounted, if that is written. */
  Optional<Written<Mounting>> mounting() {
    return part instanceof Part.Relay relay ? relay.mounting() : Optional.empty();
  }

  /** Nominal voltage across it when open: line to line if a load hangs on several lines. */
  double volts() {
    return loads.stream()
        .flatMap(l -> side.supply(l).stream())
        .mapToDouble(Quantity::nominal)
        .max()
        .orElse(0);
  }

  boolean isNec() {
    return side.circuit().netlist().site().practice().value() == Site.Practice.NEC;
  }
}
