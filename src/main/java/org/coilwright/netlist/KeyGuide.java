package org.coilwright.netlist;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.coilwright.netlist.Shape.Choice;
import org.coilwright.netlist.Shape.Either;
import org.coilwright.netlist.Shape.Fields;
import org.coilwright.netlist.Shape.Form;
import org.coilwright.netlist.Shape.Listing;
import org.coilwright.netlist.Shape.Named;

/**
 * How a key that a netlist lacks is written: what the format says of it, with an example.
 *
 * @param place what kind of thing it is written at
 * @param owner designation of the part or run, or the ends of the wires; empty for all else
 * @param says what the key holds, one line
 * @param example what may be written there: {@code ratings: {DC-13: 1 A at 30 V}}
 */
public record KeyGuide(Place place, String owner, String says, String example) {
  /** What kind of thing a key is written at. */
  public enum Place {
    PART,
    RUN,
    WIRE,
    SITE,
    SWITCHING,
    INTENT
  }

  private static final String PATH = "[A-Za-z][A-Za-z0-9-]*(?:\\.[A-Za-z0-9][A-Za-z0-9-]*)*";
  private static final Pattern OF = Pattern.compile("(" + PATH + ") of (\\S.*)");

  /** A part of what a key holds: the volts of a rating, the tolerance of a temperature. */
  private static final Pattern PIECE =
      Pattern.compile("(tolerance|voltage) of (" + PATH + " of \\S.*)");

  private static final String TOLERANCE = " ± 5 K";
  private static final Pattern ALONE = Pattern.compile("(site|switching)\\.(" + PATH + ")");

  /**
   * Finds the key.
   *
   * @param missing as an undecided outcome names it: {@code coil.range of K1}, {@code
   *     site.enclosure-air}
   * @return empty where no key of the format is named, so that none can be written
   */
  public static Optional<KeyGuide> of(Netlist netlist, String missing) {
    Matcher alone = ALONE.matcher(missing);
    if (alone.matches()) {
      Place place = alone.group(1).equals("site") ? Place.SITE : Place.SWITCHING;
      return Format.NETLIST
          .key(alone.group(1))
          .flatMap(key -> within(key.shape(), path(alone.group(2))))
          .map(found -> new KeyGuide(place, "", found.says(), found.example()));
    }
    Matcher piece = PIECE.matcher(missing);
    if (piece.matches()) {
      String more = piece.group(1).equals("tolerance") ? TOLERANCE : "";
      return of(netlist, piece.group(2))
          .map(g -> new KeyGuide(g.place(), g.owner(), g.says(), g.example() + more));
    }
    Matcher of = OF.matcher(missing);
    return of.matches() ? of(netlist, path(of.group(1)), of.group(2)) : Optional.empty();
  }

  private static Optional<KeyGuide> of(Netlist netlist, List<String> path, String whose) {
    String name = whose.split("[.,]", 2)[0];
    if (path.equals(List.of("intent"))) {
      return Format.NETLIST
          .key("intent")
          .flatMap(key -> within(key, path("intent." + name)))
          .map(found -> new KeyGuide(Place.INTENT, "", found.says(), found.example()));
    }
    if (whose.contains(" to ")) {
      return atWire(path).map(f -> new KeyGuide(Place.WIRE, whose, f.says(), f.example()));
    }
    Part part = netlist.parts().get(name);
    if (part != null) {
      Fields fields = PartFormat.kinds().get(part.head().is());
      return Optional.ofNullable(fields)
          .flatMap(f -> atPart(f, path))
          .map(f -> new KeyGuide(Place.PART, name, f.says(), f.example()));
    }
    return netlist.runs().containsKey(whose)
        ? Format.NETLIST
            .key("runs")
            .flatMap(key -> within(((Named) key.shape()).value(), path))
            .map(f -> new KeyGuide(Place.RUN, whose, f.says(), f.example()))
        : Optional.empty();
  }

  private static List<String> path(String dotted) {
    return List.of(dotted.split("\\."));
  }

  private static Optional<Key> atWire(List<String> path) {
    return Format.NETLIST
        .key("wires")
        .flatMap(key -> within(((Either) ((Listing) key.shape()).item()).fields(), path));
  }

  /** At the part itself, else at its contacts or outputs. */
  private static Optional<Key> atPart(Fields part, List<String> path) {
    return within(part, path)
        .or(() -> part.key("contacts").flatMap(key -> within(((Listing) key.shape()).item(), path)))
        .or(() -> part.key("outputs").flatMap(key -> within(((Named) key.shape()).value(), path)));
  }

  private static Optional<Key> within(Shape shape, List<String> path) {
    return shape instanceof Fields fields
        ? fields.key(path.get(0)).flatMap(key -> within(key, path))
        : Optional.empty();
  }

  /** The key at the end of the path, its example wrapped in the keys above it. */
  private static Optional<Key> within(Key key, List<String> path) {
    Deque<String> rest = new ArrayDeque<>(path);
    String name = rest.removeFirst();
    if (rest.isEmpty()) {
      return Optional.of(
          new Key(name, false, key.shape(), key.says(), name + ": " + key.example()));
    }
    if (key.shape() instanceof Named named && rest.size() == 1) {
      return isName(named, rest.getFirst())
          ? Optional.of(entry(key, name, rest.getFirst()))
          : Optional.empty();
    }
    return within(key.shape(), List.copyOf(rest))
        .map(
            inner ->
                new Key(
                    name,
                    false,
                    inner.shape(),
                    inner.says(),
                    "%s: {%s}".formatted(name, inner.example())));
  }

  private static boolean isName(Named named, String word) {
    return named.key() instanceof Choice choice
        ? choice.words().contains(word)
        : named.key() instanceof Form form && form.fits(word);
  }

  /** One entry of a key whose entries the user names: that of the example that is most alike. */
  private static Key entry(Key key, String name, String entry) {
    String inner = key.example().substring(1, key.example().length() - 1);
    List<String> entries =
        inner.matches(".*[\\[{].*") ? List.of(inner) : List.of(inner.split(", "));
    String family = entry.substring(0, entry.indexOf('-') + 1);
    String like =
        entries.stream()
            .filter(e -> e.startsWith(entry + ":"))
            .findFirst()
            .or(() -> entries.stream().filter(e -> e.startsWith(family)).findFirst())
            .orElse(entries.get(0));
    String value = like.substring(like.indexOf(": ") + 2);
    return new Key(
        name, false, key.shape(), key.says(), "%s: {%s: %s}".formatted(name, entry, value));
  }
}
