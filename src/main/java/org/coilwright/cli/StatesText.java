package org.coilwright.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Words;
import org.coilwright.solve.CoilReading;
import org.coilwright.solve.LoadReading;
import org.coilwright.solve.State;
import org.coilwright.solve.StateTable;
import org.coilwright.solve.TurnOff;

/**
 * The switching table as text: every reachable position, each coil and each load in it; one table
 * for each circuit, as what stands in one makes no difference in another.
 */
final class StatesText {
  /** Stands where a contact makes no difference to anything in the row. */
  private static final String EITHER = "either";

  private final StatesView view;
  private final Style style;
  private final List<StatesView.Oddity> oddities;

  private StatesText(StatesView view, Style style) {
    this.view = view;
    this.style = style;
    this.oddities = view.oddities();
  }

  static String of(StatesView view, Style style) {
    return new StatesText(view, style).write();
  }

  private String write() {
    StringBuilder out = new StringBuilder();
    for (StateTable table : view.tables()) {
      if (!out.isEmpty()) {
        out.append('\n');
      }
      List<Row> rows = table.states().stream().map(state -> row(table, state)).toList();
      table(out, table, merged(table.columns().size(), rows));
    }
    for (int i = 0; i < oddities.size(); i++) {
      out.append('\n');
      StatesView.Oddity odd = oddities.get(i);
      Lines.wrap(out, "(" + (i + 1) + ") ", odd.sentence(), style.width());
    }
    List<TurnOff> offs = view.turnOffs();
    if (!offs.isEmpty()) {
      out.append('\n')
          .append(style.strong("Switched off (an estimate, all at nominal values)"))
          .append('\n');
      offs.forEach(off -> Lines.wrap(out, "", turnOff(off), style.width()));
    }
    return out.toString();
  }

  private static String turnOff(TurnOff off) {
    boolean one = off.openedBy().size() == 1;
    String opens = Words.all(off.openedBy()) + (one ? " opens" : " open");
    if (off.coilVolts().isEmpty()) {
      return "%s: nothing takes its current when %s; the spark there decides how high the voltage goes."
          .formatted(off.relay(), opens);
    }
    return "%s: after %s its current lasts %s until the armature surely lets go; %s across the coil%s."
        .formatted(
            off.relay(),
            opens,
            Printed.of(off.seconds(), Dimension.TIME),
            Printed.volts(off.coilVolts().getAsDouble()),
            acrossContacts(off, one ? "the contact" : "a contact"));
  }

  private static String acrossContacts(TurnOff off, String contact) {
    return off.contactVolts().isPresent()
        ? " and %s across %s".formatted(Printed.volts(off.contactVolts().getAsDouble()), contact)
        : "; what each contact gets cannot be told, for what lies between open contacts floats";
  }

  private Row row(StateTable table, State state) {
    List<String> positions = table.columns().stream().map(c -> view.position(c, state)).toList();
    List<String> rest = new ArrayList<>();
    for (String relay : table.relays()) {
      CoilReading coil = view.study().coil(relay, state);
      rest.add(Printed.volts(Math.abs(coil.volts())));
      rest.add(coil.pulledIn() ? "on" : "off");
    }
    for (String load : table.loads()) {
      rest.add(load(view.study().load(load, state)));
    }
    String notes = "";
    for (int i = 0; i < oddities.size(); i++) {
      if (oddities.get(i).seenIn(table, state)) {
        notes += "(" + (i + 1) + ")";
      }
    }
    rest.add(notes);
    return new Row(positions, List.copyOf(rest));
  }

  private static String load(LoadReading load) {
    String lines = String.join(" ", load.lines());
    if (load.on()) {
      String on = lines.isEmpty() ? "" : " on " + lines;
      return Printed.of(load.watts(), Dimension.POWER) + on;
    }
    return lines.isEmpty() ? "off" : "off, " + lines + " left on it";
  }

  /**
   * Joins rows that differ in one contact alone and say the same. Every position a contact can have
   * must be among them, so that nothing reachable is hidden and nothing unreachable is claimed.
   */
  private static List<Row> merged(int columns, List<Row> rows) {
    List<Row> now = rows.stream().distinct().toList();
    for (int column = columns - 1; column >= 0; column--) {
      int c = column;
      long kinds = rows.stream().map(r -> r.positions().get(c)).distinct().count();
      Map<Row, List<Row>> alike = new LinkedHashMap<>();
      for (Row row : now) {
        alike.computeIfAbsent(row.with(c, EITHER), key -> new ArrayList<>()).add(row);
      }
      now =
          alike.entrySet().stream()
              .flatMap(
                  e ->
                      kinds > 1 && e.getValue().size() == kinds
                          ? java.util.stream.Stream.of(e.getKey())
                          : e.getValue().stream())
              .toList();
    }
    return now;
  }

  private void table(StringBuilder out, StateTable table, List<Row> rows) {
    List<String> heads = new ArrayList<>(table.columns());
    for (String relay : table.relays()) {
      heads.add(relay + " coil");
      heads.add("");
    }
    heads.addAll(table.loads());
    heads.add("");
    List<List<String>> cells = new ArrayList<>();
    cells.add(heads);
    for (Row row : rows) {
      List<String> line = new ArrayList<>(row.positions());
      line.addAll(row.rest());
      cells.add(line);
    }
    int[] widths = new int[heads.size()];
    for (List<String> line : cells) {
      for (int i = 0; i < widths.length; i++) {
        widths[i] = Math.max(widths[i], Lines.width(Lines.harmless(line.get(i))));
      }
    }
    for (int r = 0; r < cells.size(); r++) {
      StringBuilder line = new StringBuilder();
      for (int i = 0; i < widths.length; i++) {
        line.append(Lines.padded(Lines.harmless(cells.get(r).get(i)), widths[i])).append("  ");
      }
      String text = line.toString().stripTrailing();
      out.append(r == 0 ? style.strong(text) : text).append('\n');
    }
  }

  /**
   * A row of the table.
   *
   * @param positions of the independent contacts, in column order
   * @param rest what follows from them
   */
  private record Row(List<String> positions, List<String> rest) {
    Row with(int column, String position) {
      List<String> changed = new ArrayList<>(positions);
      changed.set(column, position);
      return new Row(List.copyOf(changed), rest);
    }

    @Override
    public String toString() {
      return positions.stream().collect(Collectors.joining(" "));
    }
  }
}
