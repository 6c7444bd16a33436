package org.coilwright.rules;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Run;

/** Finds stretches by what they lie in and what stands before them. */
final class StretchIndex {
  private final Map<String, Integer> circuitsIn = new HashMap<>();
  private final Map<String, List<Stretch>> behind = new HashMap<>();

  StretchIndex(List<Stretch> all) {
    Map<String, Map<String, Laid>> limitsIn = new HashMap<>();
    for (Stretch stretch : all) {
      if (!stretch.neutral()) {
        stretch
            .guard()
            .ifPresent(g -> behind.computeIfAbsent(g.name(), n -> new ArrayList<>()).add(stretch));
        Optional<Run> run = stretch.first().run();
        if (run.isPresent() && !stretch.loads().isEmpty()) {
          // before and behind its only device it is one circuit
          limitsIn
              .computeIfAbsent(run.get().name(), n -> new LinkedHashMap<>())
              .computeIfAbsent(stretch.limits(), n -> Laid.nothing())
              .add(stretch);
        }
      }
    }
    limitsIn.forEach((run, laid) -> circuitsIn.put(run, circuits(laid.values())));
  }

  /** What lies in a run behind one device, or before several: its loads, and their lines. */
  private record Laid(Set<Part> loads, Set<Node> lines) {
    static Laid nothing() {
      return new Laid(new HashSet<>(), new HashSet<>());
    }

    void add(Stretch stretch) {
      loads.addAll(stretch.loads());
      stretch.wires().forEach(w -> lines.addAll(stretch.side().linesThrough(w)));
    }

    /** True if it brings the same loads other lines: one circuit, behind a device for each line. */
    boolean completes(Laid other) {
      return loads.equals(other.loads) && Collections.disjoint(lines, other.lines);
    }
  }

  private static int circuits(Collection<Laid> all) {
    List<Laid> circuits = new ArrayList<>();
    for (Laid laid : all) {
      circuits.stream()
          .filter(laid::completes)
          .findFirst()
          .ifPresentOrElse(c -> c.lines().addAll(laid.lines()), () -> circuits.add(laid));
    }
    return circuits.size();
  }

  /** How many loaded circuits lie in these runs. */
  int circuitsIn(Set<String> runs) {
    return runs.stream().mapToInt(r -> circuitsIn.getOrDefault(r, 0)).sum();
  }

  /** Those that a line feeds through a device, in their order. */
  List<Stretch> behind(Part device) {
    return behind.getOrDefault(device.name(), List.of());
  }
}
