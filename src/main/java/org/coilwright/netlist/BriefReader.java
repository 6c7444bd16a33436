package org.coilwright.netlist;

import java.util.List;
import java.util.Optional;
import org.coilwright.netlist.Tree.Entries;

/** Reads a brief: all of it, or all that is wrong with it. */
public final class BriefReader {
  private BriefReader() {}

  /** What came of reading. */
  public sealed interface Read {}

  /** It could be read. */
  public record Good(Brief brief) implements Read {}

  /** It could not be used; at least one problem. */
  public record Unusable(List<ReadingProblem> problems) implements Read {}

  /**
   * Reads a brief. Never throws because of what the bytes hold.
   *
   * @param file name as the user gave it; {@code -} for standard input
   */
  public static Read read(String file, byte[] bytes) {
    Problems problems = new Problems(file);
    try {
      FileText text = FileText.of(file, bytes);
      problems.knows(text);
      Optional<Tree> tree = YamlTree.of(text, problems);
      if (tree.isEmpty()) {
        problems.add(
            Optional.empty(),
            "the file holds no brief, not one key",
            "begin with brief: 1, or let \"coilwright draft\" ask");
      } else if (isNetlist(tree.get())) {
        problems.add(
            tree.get().mark(),
            "this is a netlist and no brief",
            "coilwright check looks at a netlist; a brief begins with brief: 1");
      } else if (tree.get() instanceof Entries root) {
        Value.Section section =
            new ShapeReader(problems, new Types())
                .section(root, BriefFormat.BRIEF, new Mark(file, 1, 1, 2), true);
        if (problems.isEmpty()) {
          return new Good(new Brief(text, section));
        }
      } else {
        problems.add(
            tree.get().mark(),
            "this is no brief: it has no keys",
            "begin with brief: 1 and write load: and controller: under it");
      }
    } catch (Refusal e) {
      problems.add(e);
    }
    return new Unusable(problems.all());
  }

  private static boolean isNetlist(Tree tree) {
    return tree instanceof Entries root
        && root.tree("brief").isEmpty()
        && root.tree("coilwright").isPresent();
  }
}
