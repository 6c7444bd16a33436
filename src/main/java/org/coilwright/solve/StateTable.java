package org.coilwright.solve;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import org.coilwright.circuit.Branch;

/**
 * One circuit's part of the switching table: what acts on one another, and the loads that it
 * switches. What stands in one table makes no difference in another.
 */
public final class StateTable {
  private final List<Exploration> cluster;
  private final States composition;
  private final List<String> columns;
  private final List<String> relays;
  private final List<String> loads;

  private StateTable(
      List<Exploration> cluster,
      States composition,
      List<String> columns,
      List<String> relays,
      List<String> loads) {
    this.cluster = cluster;
    this.composition = composition;
    this.columns = List.copyOf(columns);
    this.relays = List.copyOf(relays);
    this.loads = List.copyOf(loads);
  }

  /** Names of its independent contacts, in table order. */
  public List<String> columns() {
    return columns;
  }

  /** The relays whose coils lie in it, in the order of the netlist. */
  public List<String> relays() {
    return relays;
  }

  /** The loads that lie in it, in the order of the netlist. */
  public List<String> loads() {
    return loads;
  }

  /**
   * Every reachable state of it, everything else at rest, its contacts at rest first; put together
   * anew each time, for of a large panel all would fill the memory.
   */
  public List<State> states() {
    return composition
        .together(cluster)
        .orElseGet(() -> cluster.stream().flatMap(e -> composition.of(e).stream()).toList());
  }

  /** False if it has too many contacts, and only some states are listed. */
  public boolean isComplete() {
    return composition.areFew(cluster) && cluster.stream().allMatch(e -> e.complete);
  }

  /** Groups that switch the same load, together; what switches nothing at all is one more. */
  static List<StateTable> of(Model model, States states) {
    List<Exploration> all = List.copyOf(model.explorations.values());
    int[] parent = new int[all.size()];
    Map<String, Integer> first = new HashMap<>();
    for (int i = 0; i < parent.length; i++) {
      parent[i] = i;
      Set<String> shared = parts(all.get(i), Branch.LoadElement.class);
      if (all.get(i).group.variables.isEmpty()) {
        shared.add("");
      }
      for (String key : shared) {
        int other = Objects.requireNonNullElse(first.putIfAbsent(key, i), i);
        parent[root(parent, other)] = root(parent, i);
      }
    }
    Map<Integer, List<Exploration>> clusters = new LinkedHashMap<>();
    for (int i = 0; i < parent.length; i++) {
      clusters.computeIfAbsent(root(parent, i), r -> new ArrayList<>()).add(all.get(i));
    }
    Map<String, Integer> order = new HashMap<>();
    model.setup.circuit.netlist().parts().keySet().forEach(p -> order.put(p, order.size()));
    Variables variables = model.setup.variables;
    return clusters.values().stream().map(c -> of(c, variables, states, order)).toList();
  }

  private static int root(int[] parent, int start) {
    int node = start;
    while (parent[node] != node) {
      parent[node] = parent[parent[node]];
      node = parent[node];
    }
    return node;
  }

  private static StateTable of(
      List<Exploration> cluster, Variables variables, States states, Map<String, Integer> order) {
    Set<String> relays = new LinkedHashSet<>();
    Set<String> loads = new LinkedHashSet<>();
    TreeSet<Integer> columns = new TreeSet<>();
    for (Exploration exploration : cluster) {
      relays.addAll(parts(exploration, Branch.Coil.class));
      loads.addAll(parts(exploration, Branch.LoadElement.class));
      columns.addAll(exploration.group.variables.subList(0, exploration.group.independents()));
    }
    return new StateTable(
        cluster,
        states,
        columns.stream().map(variables.columns()::get).toList(),
        inOrder(relays, order),
        inOrder(loads, order));
  }

  private static List<String> inOrder(Set<String> parts, Map<String, Integer> order) {
    return parts.stream().sorted(Comparator.comparing(p -> order.getOrDefault(p, 0))).toList();
  }

  private static Set<String> parts(Exploration exploration, Class<? extends Branch> kind) {
    Set<String> parts = new LinkedHashSet<>();
    for (Zone zone : exploration.group.zones) {
      for (Element element : zone.elements) {
        if (kind.isInstance(element.branch())) {
          parts.add(element.branch().part());
        }
      }
    }
    return parts;
  }
}
