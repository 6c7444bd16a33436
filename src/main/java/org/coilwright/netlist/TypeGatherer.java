package org.coilwright.netlist;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.coilwright.netlist.Tree.Entries;
import org.coilwright.netlist.Tree.Items;
import org.coilwright.netlist.Tree.Leaf;

/** Collects the types of a netlist and of all files it includes, each file once. */
final class TypeGatherer {
  private static final int MOST_FILES = 50;

  private final Includes includes;
  private final Problems problems;
  private final Types types = new Types();
  private final Set<String> read = new HashSet<>();
  private int bytes;

  TypeGatherer(Includes includes, Problems problems) {
    this.includes = includes;
    this.problems = problems;
  }

  Types gather(String file, Entries root) {
    read.add(file);
    take(file, root, List.of(file));
    return types;
  }

  private void take(String file, Entries root, List<String> chain) {
    root.tree("types")
        .filter(Entries.class::isInstance)
        .ifPresent(tree -> types.add((Entries) tree, problems));
    if (root.tree("include").orElse(null) instanceof Items items) {
      for (Tree item : items.items()) {
        if (item instanceof Leaf leaf && !leaf.text().isBlank()) {
          include(file, leaf, chain);
        }
      }
    }
  }

  private void include(String from, Leaf path, List<String> chain) {
    Includes.Found found = includes.find(from, path.text());
    if (found instanceof Includes.Refused refused) {
      problems.add(path.mark(), refused.what(), refused.remedy());
    } else if (found instanceof Includes.File file) {
      if (chain.contains(file.name())) {
        problems.add(
            path.mark(),
            "the files include each other in a circle: "
                + String.join(" → ", chain)
                + " → "
                + file.name(),
            "take one include out");
      } else if (read.add(file.name())) {
        open(file, path, chain);
      }
    }
  }

  private void open(Includes.File file, Leaf path, List<String> chain) {
    bytes += file.bytes().length;
    if (read.size() > MOST_FILES || bytes > LargestFile.BYTES) {
      problems.add(path.mark(), "too much is included", "include fewer or smaller files");
      return;
    }
    try {
      FileText text = FileText.of(file.name(), file.bytes());
      problems.knows(text);
      Optional<Tree> tree = YamlTree.of(text, problems);
      if (tree.isEmpty() || !(tree.get() instanceof Entries root)) {
        problems.add(path.mark(), file.name() + " holds no types", "write types: into it");
        return;
      }
      List<String> longer = new ArrayList<>(chain);
      longer.add(file.name());
      take(file.name(), root, longer);
      Mark start = new Mark(file.name(), 1, 1, 2);
      new ShapeReader(problems, types).section(root, Format.INCLUDED, start, true);
    } catch (Refusal e) {
      problems.add(
          e.mark().isPresent() ? e.mark() : Optional.of(path.mark()), e.what(), e.remedy());
    }
  }
}
