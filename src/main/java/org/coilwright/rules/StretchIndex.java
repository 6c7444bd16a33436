package org.coilwright.rules;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Run;

/** Finds stretches by what they lie in and what stands before them. */
final class StretchIndex {
  private final Map<String, Set<String>> circuitsIn = new HashMap<>();
  private final Map<String, List<Stretch>> behind = new HashMap<>();

  StretchIndex(List<Stretch> all) {
    for (Stretch stretch : all) {
      if (!stretch.neutral()) {
        stretch
            .guard()
            .ifPresent(g -> behind.computeIfAbsent(g.name(), n -> new ArrayList<>()).add(stretch));
        Optional<Run> run = stretch.first().run();
        if (run.isPresent() && !stretch.loads().isEmpty()) {
          // before and behind its only device it is one circuit
          circuitsIn.computeIfAbsent(run.get().name(), n -> new HashSet<>()).add(stretch.limits());
        }
      }
    }
  }

  /** How many loaded circuits lie in these runs. */
  int circuitsIn(Set<String> runs) {
    return runs.stream().mapToInt(r -> circuitsIn.getOrDefault(r, Set.of()).size()).sum();
  }

  /** Those that a line feeds through a device, in their order. */
  List<Stretch> behind(Part device) {
    return behind.getOrDefault(device.name(), List.of());
  }
}
