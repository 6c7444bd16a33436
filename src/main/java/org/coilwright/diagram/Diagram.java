package org.coilwright.diagram;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.coilwright.circuit.Circuit;
import org.coilwright.drawing.Letters;
import org.coilwright.drawing.Picture;
import org.coilwright.netlist.Netlist;
import org.coilwright.netlist.Terminal;

/**
 * The circuit diagram of a netlist: current paths side by side, coils and contacts apart (detached
 * representation of IEC 61082-1), the power circuit apart from the control circuits, with symbols
 * after IEC 60617.
 */
public final class Diagram {
  /** Width of a sheet's frame in points: it fits A4 and Letter, upright, with room for holes. */
  public static final double WIDTH = 504;

  /** Height likewise, with room for the running head, foot and heading of a checklist. */
  public static final double HEIGHT = 632;

  private static final int IN_A_ROW = 4;

  private final Netlist netlist;
  private final Conductors conductors;
  private final Extent extent;
  private final Notes notes;

  private Diagram(Circuit circuit, Extent extent, Notes notes) {
    this.netlist = circuit.netlist();
    this.conductors = new Conductors(circuit);
    this.extent = extent;
    this.notes = notes;
  }

  /**
   * Something to mark in the diagram.
   *
   * @param weight such as {@code STOP}
   * @param at designations, the subject first; the first that is in the diagram gets the mark
   */
  public record Finding(String weight, String headline, List<String> at) {}

  /** The texts of a diagram. */
  public interface Words {
    /** A text by its key, such as {@code diagram.power}, with its arguments in place. */
    String of(String key, Object... arguments);
  }

  /**
   * One sheet, its frame of {@link #WIDTH} by {@link #HEIGHT}.
   *
   * @param shows a line an area: what it is and the designations in it
   */
  public record Sheet(Picture picture, List<String> shows) {}

  /**
   * Draws the sheets.
   *
   * @param findings numbered from 1 in this order
   * @param words in some language
   */
  public static List<Sheet> of(Circuit circuit, List<Finding> findings, Words words) {
    return sheets(circuit, findings, words).stream()
        .map(s -> new Sheet(s.picture(), s.shows()))
        .toList();
  }

  static List<DrawnSheet> sheets(Circuit circuit, List<Finding> findings, Words words) {
    List<Unit> units = Units.of(circuit.netlist());
    Areas areas = new Areas(circuit, units, words);
    List<Area> parted = areas.areas();
    List<Unit> drawn = parted.stream().flatMap(a -> a.units().stream()).toList();
    Notes notes = new Notes(circuit.netlist(), drawn, findings, words);
    Extent extent = new Extent(Letters.load(), notes);
    Diagram diagram = new Diagram(circuit, extent, notes);
    List<AreaLayout> layouts = new ArrayList<>();
    Set<Terminal> earlier = new HashSet<>();
    parted.forEach(area -> layouts.addAll(diagram.layouts(area, earlier)));
    layouts.addAll(diagram.listedOnly(layouts));
    return new Sheets(circuit.netlist(), extent, notes, findings).of(layouts);
  }

  /**
   * An area that is too large for a sheet is parted in two, again and again.
   *
   * @param earlier terminals of the areas before; those of this one are added
   */
  private List<AreaLayout> layouts(Area area, Set<Terminal> earlier) {
    AreaLayout whole = layout(area, earlier);
    if (!fits(whole) && area.units().size() == 1) {
      whole = layout(area, Set.of());
    }
    if (fits(whole) || area.units().size() == 1) {
      area.units().forEach(u -> u.ports().forEach(p -> earlier.add(p.terminal())));
      return List.of(whole);
    }
    List<Unit> first = Cut.of(whole);
    List<Unit> second = area.units().stream().filter(u -> !first.contains(u)).toList();
    List<AreaLayout> parts = new ArrayList<>(layouts(part(area, first), earlier));
    parts.addAll(layouts(part(area, second), earlier));
    return parts;
  }

  private AreaLayout layout(Area area, Set<Terminal> earlier) {
    Fabric fabric = new Fabric(area, netlist.wires(), conductors::lines, earlier);
    return AreaLayout.of(fabric, netlist, extent, notes);
  }

  private static boolean fits(AreaLayout layout) {
    return layout.width() <= Sheets.roomAcross() && layout.height() <= Sheets.roomDown();
  }

  /** Conductors that are only listed at both their ends are drawn by themselves. */
  private List<AreaLayout> listedOnly(List<AreaLayout> layouts) {
    Set<Integer> drawn = new HashSet<>();
    layouts.forEach(l -> drawn.addAll(l.drawn()));
    List<AreaLayout> more = new ArrayList<>();
    List<Integer> some = new ArrayList<>();
    for (int number = 0; number < netlist.wires().size(); number++) {
      if (!drawn.contains(number)) {
        some.add(number);
      }
      boolean last = number == netlist.wires().size() - 1;
      if (some.size() == IN_A_ROW || (last && !some.isEmpty())) {
        Area area = new Area(notes.words().of("diagram.between"), false, List.of());
        Fabric fabric = new Fabric(area, netlist.wires(), conductors::lines, List.copyOf(some));
        more.add(AreaLayout.of(fabric, netlist, extent, notes));
        some.clear();
      }
    }
    return more;
  }

  private static Area part(Area area, List<Unit> units) {
    List<Unit> inOrder = area.units().stream().filter(units::contains).toList();
    return new Area(area.title(), area.power(), inOrder);
  }
}
