package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Mistake;
import org.coilwright.netlist.Terminal;
import org.coilwright.netlist.Wire;

/** Where to look for a mistake that no reading tells: a caution at the row of its wire. */
final class EyeCautions {
  private final Circuit circuit;
  private final Texts texts;

  EyeCautions(DeadTests tests) {
    this.circuit = tests.anatomy().circuit();
    this.texts = tests.texts();
  }

  /** The same rows, with a caution at the one nearest to each of these mistakes. */
  List<Topic> at(List<Topic> topics, List<Mistake> unseen) {
    if (unseen.isEmpty()) {
      return topics;
    }
    List<Row> rows = topics.stream().flatMap(t -> t.rows().stream()).toList();
    List<List<Mistake>> byRow = new ArrayList<>();
    rows.forEach(row -> byRow.add(new ArrayList<>()));
    for (Mistake mistake : unseen) {
      byRow.get(nearest(rows, mistake)).add(mistake);
    }
    List<Topic> cautioned = new ArrayList<>();
    int next = 0;
    for (Topic topic : topics) {
      List<Row> own = new ArrayList<>();
      for (Row row : topic.rows()) {
        List<Mistake> here = byRow.get(next++);
        own.add(here.isEmpty() ? row : row.watching(here, inWords(here)));
      }
      cautioned.add(new Topic(topic.keys(), topic.stage(), topic.title(), topic.beginWith(), own));
    }
    return cautioned;
  }

  /** The row that measures most of the pins the mistake is about. */
  private int nearest(List<Row> rows, Mistake mistake) {
    Set<Terminal> pins = new LinkedHashSet<>();
    for (int i : mistake.wires()) {
      Wire wire = circuit.netlist().wires().get(i);
      pins.add(wire.from().value());
      pins.add(wire.to().value());
    }
    mistake.turned().ifPresent(t -> pins.addAll(List.of(t.first(), t.second())));
    int nearest = rows.size() - 1;
    long most = 0;
    for (int i = 0; i < rows.size(); i++) {
      long common =
          rows.get(i).probing().stream()
              .flatMap(p -> java.util.stream.Stream.concat(p.plus().stream(), p.minus().stream()))
              .filter(pins::contains)
              .count();
      if (common > most) {
        most = common;
        nearest = i;
      }
    }
    return nearest;
  }

  private String inWords(List<Mistake> mistakes) {
    Map<String, Set<String>> places = new LinkedHashMap<>();
    for (Mistake mistake : mistakes) {
      for (Mistake.Laid laid : mistake.laid()) {
        Wire wire = circuit.netlist().wires().get(laid.wire());
        place(places, laid.wire(), wire.from().value(), laid.from());
        place(places, laid.wire(), wire.to().value(), laid.to());
      }
      mistake
          .leftOut()
          .ifPresent(i -> places.putIfAbsent(texts.of("eye.there", name(i)), Set.of()));
      mistake.turned().ifPresent(t -> places.putIfAbsent(texts.of("eye.ring", t.part()), Set.of()));
    }
    List<String> words = new ArrayList<>();
    places.forEach(
        (place, wrong) ->
            words.add(
                wrong.isEmpty() ? place : texts.of("eye.not-on", place, String.join(", ", wrong))));
    return texts.of("eye", String.join("; ", words));
  }

  private void place(Map<String, Set<String>> places, int wire, Terminal right, Terminal wrong) {
    if (!right.equals(wrong)) {
      places
          .computeIfAbsent(texts.of("eye.on", name(wire), right), p -> new LinkedHashSet<>())
          .add(wrong.pin());
    }
  }

  private String name(int index) {
    Wire wire = circuit.netlist().wires().get(index);
    String colour =
        wire.colour()
            .map(c -> texts.of("wire.in-colour", WireRows.colour(texts, c.text())))
            .orElse("");
    return wire.number()
        .map(number -> texts.of("wire.numbered", number.text(), "", colour))
        .orElseGet(() -> texts.of("wire.from-to", wire.from().value(), wire.to().value(), colour));
  }
}
