package org.coilwright.netlist;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.coilwright.netlist.Tree.Entries;
import org.coilwright.netlist.Tree.Entry;
import org.coilwright.netlist.Tree.Items;
import org.coilwright.netlist.Tree.Leaf;
import org.yaml.snakeyaml.DumperOptions.ScalarStyle;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.composer.Composer;
import org.yaml.snakeyaml.error.MarkedYAMLException;
import org.yaml.snakeyaml.error.YAMLException;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.NodeTuple;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;
import org.yaml.snakeyaml.parser.ParserImpl;
import org.yaml.snakeyaml.reader.StreamReader;
import org.yaml.snakeyaml.resolver.Resolver;

/** YAML text to a {@link Tree}, within bounds. */
final class YamlTree {
  private final FileText file;
  private final Problems problems;
  private int values;

  private YamlTree(FileText file, Problems problems) {
    this.file = file;
    this.problems = problems;
  }

  /**
   * The tree; empty if the file holds nothing but comments.
   *
   * @throws Refusal if the text is no YAML, or leaves the bounds
   */
  static Optional<Tree> of(FileText file, Problems problems) {
    LoaderOptions options = new LoaderOptions();
    options.setCodePointLimit(LargestFile.BYTES);
    options.setMergeOnCompose(false);
    try {
      ParserImpl parser = new ParserImpl(new StreamReader(file.text()), options);
      Composer composer =
          new Composer(new GuardedParser(parser, file.file()), new TextResolver(), options);
      Node root = composer.getSingleNode();
      return root == null
          ? Optional.empty()
          : Optional.of(new YamlTree(file, problems).tree(root, 0));
    } catch (MarkedYAMLException e) {
      throw YamlTrouble.of(e, file);
    } catch (YAMLException e) {
      throw new Refusal(
          Optional.empty(), "this is not YAML that can be read", "check the file's punctuation");
    }
  }

  /** Knows no numbers and no truth values: every word is text. */
  private static final class TextResolver extends Resolver {
    @Override
    protected void addImplicitResolvers() {
      // none
    }
  }

  private Tree tree(Node node, int depth) {
    if (++values > LargestFile.VALUES || depth > GuardedParser.DEEPEST) {
      throw new Refusal(
          Optional.of(mark(node)),
          "an alias (*) makes the file grow without end here",
          "say repeated things once, under types:");
    }
    if (node instanceof ScalarNode scalar) {
      return leaf(scalar);
    }
    if (node instanceof SequenceNode sequence) {
      List<Tree> items = new ArrayList<>(sequence.getValue().size());
      for (Node item : sequence.getValue()) {
        items.add(tree(item, depth + 1));
      }
      return new Items(items, mark(node));
    }
    if (node instanceof MappingNode mapping) {
      return entries(mapping, depth);
    }
    throw new IllegalStateException("no such node: " + node.getNodeId());
  }

  private Entries entries(MappingNode mapping, int depth) {
    Map<String, Leaf> seen = new HashMap<>();
    List<Entry> entries = new ArrayList<>(mapping.getValue().size());
    for (NodeTuple tuple : mapping.getValue()) {
      if (!(tuple.getKeyNode() instanceof ScalarNode scalar)) {
        problems.add(mark(tuple.getKeyNode()), "a key must be a single word", "write key: value");
        continue;
      }
      Leaf key = leaf(scalar);
      Leaf first = seen.putIfAbsent(key.text(), key);
      if (first != null) {
        problems.add(
            key.mark(),
            "\""
                + Problems.shown(key.text())
                + "\" stands twice; first in line "
                + first.mark().line(),
            "keep one of the two");
        continue;
      }
      entries.add(new Entry(key, tree(tuple.getValueNode(), depth + 1)));
    }
    return new Entries(entries, mark(mapping));
  }

  private Leaf leaf(ScalarNode scalar) {
    Mark mark = mark(scalar);
    String text = scalar.getValue();
    int width = text.codePointCount(0, text.length());
    int quotes = scalar.getScalarStyle() == ScalarStyle.PLAIN ? 0 : 1;
    boolean inPlace =
        scalar.getStartMark().getLine() == scalar.getEndMark().getLine()
            && mark.endColumn() - mark.column() == width + 2 * quotes;
    return new Leaf(text, mark, inPlace ? quotes : -1);
  }

  private Mark mark(Node node) {
    var start = node.getStartMark();
    var end = node.getEndMark();
    int line = start.getLine();
    int column = start.getColumn() + 1;
    int endColumn = end.getLine() == line ? end.getColumn() + 1 : endOfLine(line);
    return new Mark(file.file(), line + 1, column, Math.max(column + 1, endColumn));
  }

  private int endOfLine(int line) {
    String text = line < file.lines().size() ? file.lines().get(line).stripTrailing() : "";
    return text.codePointCount(0, text.length()) + 1;
  }
}
