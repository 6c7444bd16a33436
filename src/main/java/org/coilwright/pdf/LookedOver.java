package org.coilwright.pdf;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.coilwright.checklist.Blank;
import org.coilwright.checklist.FilledIn;
import org.coilwright.checklist.Oddity;

/** Compares a file that was given back with what was printed. */
public final class LookedOver {
  private LookedOver() {}

  /**
   * Whether the file shows what it holds. Needs nothing to compare with.
   *
   * @param blanks places that must be there
   */
  public static List<Oddity> within(Look given, FilledIn filledIn, List<Blank> blanks) {
    List<Oddity> oddities = new ArrayList<>();
    for (int i = 0; i < given.pages().size(); i++) {
      List<String> foreign = given.pages().get(i).foreign();
      if (!foreign.isEmpty()) {
        oddities.add(
            Oddity.of(
                Oddity.Kind.DRAWN_ON, "pages", String.valueOf(i + 1), String.join(", ", foreign)));
      }
    }
    for (Blank blank : blanks) {
      List<Look.Place> places = given.places().getOrDefault(blank.name(), List.of());
      if (places.isEmpty() || places.stream().allMatch(Look.Place::hidden)) {
        oddities.add(Oddity.of(Oddity.Kind.HIDDEN, blank.name()));
      } else if (places.size() > 1) {
        oddities.add(Oddity.of(Oddity.Kind.MANY, blank.name()));
      }
      boolean signed = blank.kind() == Blank.Kind.SIGNATURE;
      if (!given.redrawn() && !signed) {
        places.stream()
            .map(place -> shown(place, blank, filledIn))
            .flatMap(Optional::stream)
            .findFirst()
            .ifPresent(oddities::add);
      }
    }
    return oddities;
  }

  private static Optional<Oddity> shown(Look.Place place, Blank blank, FilledIn filledIn) {
    if (!place.readable()) {
      return Optional.of(Oddity.of(Oddity.Kind.UNREADABLE, blank.name()));
    }
    String shown = place.shown().orElse("");
    if (place.shown().isEmpty()) {
      return Optional.empty(); // the viewer draws it from what the field holds
    }
    if (blank.kind() == Blank.Kind.TICK) {
      return filledIn.isTicked(blank) && shown.isEmpty()
          ? Optional.of(Oddity.of(Oddity.Kind.BLANK, blank.name(), "X"))
          : Optional.empty();
    }
    String held = filledIn.text(blank).orElse("");
    if (ShownText.plain(held).equals(shown)) {
      return Optional.empty();
    }
    return Optional.of(
        shown.isEmpty()
            ? Oddity.of(Oddity.Kind.BLANK, blank.name(), held)
            : Oddity.of(Oddity.Kind.SHOWN, blank.name(), held, shown));
  }

  /**
   * Whether the pages and the places on them still are those that were printed.
   *
   * @param printed the same sheet before anybody had it
   */
  public static List<Oddity> against(Look given, Look printed) {
    List<Oddity> oddities = new ArrayList<>();
    Set<String> there = given.pages().stream().map(Look.Page::drawn).collect(Collectors.toSet());
    List<Integer> gone = new ArrayList<>();
    for (int i = 0; i < printed.pages().size(); i++) {
      if (!there.contains(printed.pages().get(i).drawn())) {
        gone.add(i + 1);
      }
    }
    if (!gone.isEmpty()) {
      String all = String.valueOf(printed.pages().size());
      oddities.add(Oddity.of(Oddity.Kind.PAGES, "pages", ranges(gone), all));
    }
    int more = given.pages().size() - printed.pages().size();
    if (more > 0) {
      oddities.add(Oddity.of(Oddity.Kind.ADDED, "pages", String.valueOf(more)));
    }
    if (given.pages().size() == printed.pages().size()) {
      printed.places().keySet().stream()
          .sorted()
          .filter(name -> isElsewhere(given, printed, name))
          .forEach(name -> oddities.add(Oddity.of(Oddity.Kind.MOVED, name)));
    }
    return oddities;
  }

  private static boolean isElsewhere(Look given, Look printed, String name) {
    List<Look.Place> is = given.places().getOrDefault(name, List.of());
    Look.Place was = printed.places().getOrDefault(name, List.of()).get(0);
    return is.stream().anyMatch(place -> place.page() != was.page() || !near(place, was));
  }

  /** Within a point: programs round. */
  private static boolean near(Look.Place is, Look.Place was) {
    if (is.box().size() != was.box().size()) {
      return false;
    }
    for (int i = 0; i < is.box().size(); i++) {
      if (Math.abs(is.box().get(i) - was.box().get(i)) > 10) {
        return false;
      }
    }
    return true;
  }

  /** {@code 1, 3–5}. */
  private static String ranges(List<Integer> numbers) {
    List<String> ranges = new ArrayList<>();
    int from = 0;
    for (int i = 0; i < numbers.size(); i++) {
      if (i + 1 == numbers.size() || numbers.get(i + 1) != numbers.get(i) + 1) {
        int first = numbers.get(from);
        ranges.add(i == from ? String.valueOf(first) : first + "–" + numbers.get(i));
        from = i + 1;
      }
    }
    return String.join(", ", ranges);
  }
}
