// Over 250 lines: one walk along the format and what is changed at each kind of shape.
package org.coilwright.netlist;

import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.yaml.snakeyaml.DumperOptions;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.NodeTuple;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;

/**
 * Every key of the format, and netlists in which the value of one key has been made absurd: a
 * thousand times as much, another word, yes for no. The walk goes along the same description of the
 * format that the reader follows, so that a new key is met without being named here.
 */
public final class KeyMutants {
  private static final Pattern NUMBER = Pattern.compile("[-+]?[0-9]+(?:\\.[0-9]+)?");
  private static final Pattern TOLERANCE = Pattern.compile("(±|\\+/-|[-+])\\s*$");

  private KeyMutants() {}

  /**
   * A netlist with one value changed.
   *
   * @param key the path of the key, parts by their kind: {@code parts.rcd.trip}
   * @param place the path by names: {@code parts.F2.trip}
   */
  public record Mutant(String key, String place, String was, String is, Supplier<String> text) {
    /** The whole netlist, printed when it is asked for. */
    public String netlist() {
      return text.get();
    }

    @Override
    public String toString() {
      return place + ": " + was + " -> " + is;
    }
  }

  /** A value as it stands in a netlist. */
  private record Spot(String key, String place, Shape shape, ScalarNode node, Swap swap) {}

  /** Puts another node in the place of a value. */
  private interface Swap {
    void put(Node node);
  }

  /** The paths of all keys that hold a word or a value, in the order of the format. */
  public static List<String> keys() {
    Set<String> keys = new LinkedHashSet<>();
    paths("", Format.NETLIST, keys);
    return List.copyOf(keys);
  }

  private static void paths(String path, Shape shape, Set<String> keys) {
    if (shape instanceof Shape.Fields fields) {
      fields.keys().forEach(key -> paths(join(path, key.name()), key.shape(), keys));
    } else if (shape instanceof Shape.ByKind kinds) {
      kinds.kinds().forEach((kind, fields) -> paths(join(path, kind), fields, keys));
    } else if (shape instanceof Shape.Named named) {
      // a type is a part that is written once and used several times
      if (!path.equals("types")) {
        paths(named.value() instanceof Shape.ByKind ? path : path + ".*", named.value(), keys);
      }
    } else if (shape instanceof Shape.Either either) {
      paths(path, either.fields(), keys);
    } else if (shape instanceof Shape.Listing listing) {
      paths(path + "[]", listing.item(), keys);
    } else {
      keys.add(path);
    }
  }

  private static String join(String path, String name) {
    return path.isEmpty() ? name : path + "." + name;
  }

  /** All mutants of a netlist by key, absurd values first. */
  public static Map<String, List<Mutant>> of(byte[] netlist) {
    Map<String, List<Mutant>> mutants = new LinkedHashMap<>();
    Node root = compose(netlist);
    List<Spot> spots = new ArrayList<>();
    walk("", "", Format.NETLIST, root, node -> {}, spots);
    for (Spot spot : spots) {
      for (String value : absurd(spot, spots)) {
        ScalarNode was = spot.node();
        ScalarNode is =
            new ScalarNode(
                was.getTag(),
                value,
                was.getStartMark(),
                was.getEndMark(),
                quoted(value) ? DumperOptions.ScalarStyle.DOUBLE_QUOTED : was.getScalarStyle());
        Supplier<String> text =
            () -> {
              spot.swap().put(is);
              String changed = print(root);
              spot.swap().put(was);
              return changed;
            };
        mutants
            .computeIfAbsent(spot.key(), k -> new ArrayList<>())
            .add(new Mutant(spot.key(), spot.place(), was.getValue(), value, text));
      }
    }
    return mutants;
  }

  private static boolean quoted(String value) {
    return value.contains(": ") || value.contains(" #") || value.contains(",");
  }

  private static Node compose(byte[] netlist) {
    return yaml().compose(new java.io.StringReader(new String(netlist, StandardCharsets.UTF_8)));
  }

  private static String print(Node root) {
    StringWriter text = new StringWriter();
    yaml().serialize(root, text);
    return text.toString();
  }

  private static Yaml yaml() {
    DumperOptions options = new DumperOptions();
    options.setWidth(10_000);
    options.setAllowUnicode(true);
    return new Yaml(
        new org.yaml.snakeyaml.constructor.SafeConstructor(new LoaderOptions()),
        new org.yaml.snakeyaml.representer.Representer(options),
        options,
        new org.yaml.snakeyaml.resolver.Resolver() {
          @Override
          protected void addImplicitResolvers() {
            // all words stay as they are written: NO is a form of contact
          }
        });
  }

  private static void walk(
      String key, String place, Shape shape, Node node, Swap swap, List<Spot> spots) {
    if (shape instanceof Shape.Fields fields && node instanceof MappingNode map) {
      each(
          map,
          (name, value, put) ->
              fields
                  .key(name)
                  .ifPresent(
                      k -> walk(join(key, name), join(place, name), k.shape(), value, put, spots)));
    } else if (shape instanceof Shape.ByKind kinds && node instanceof MappingNode map) {
      String kind = kindOf(map);
      Shape.Fields fields = kinds.kinds().get(kind);
      if (fields != null) {
        walk(join(key, kind), place, fields, node, swap, spots);
      }
    } else if (shape instanceof Shape.Named named && node instanceof MappingNode map) {
      String inner = named.value() instanceof Shape.ByKind ? key : key + ".*";
      each(
          map,
          (name, value, put) ->
              walk(
                  inner.equals("types") ? "parts" : inner,
                  join(place, name),
                  named.value(),
                  value,
                  put,
                  spots));
    } else if (shape instanceof Shape.Listing listing && node instanceof SequenceNode list) {
      for (int i = 0; i < list.getValue().size(); i++) {
        int at = i;
        walk(
            key + "[]",
            place + "[" + i + "]",
            listing.item(),
            list.getValue().get(i),
            other -> list.getValue().set(at, other),
            spots);
      }
    } else if (shape instanceof Shape.Either either && node instanceof MappingNode) {
      walk(key, place, either.fields(), node, swap, spots);
    } else if (shape instanceof Shape.Scalar<?> && node instanceof ScalarNode scalar) {
      spots.add(new Spot(key, place, shape, scalar, swap));
    }
  }

  private static String kindOf(MappingNode map) {
    for (NodeTuple tuple : map.getValue()) {
      if (((ScalarNode) tuple.getKeyNode()).getValue().equals("is")
          && tuple.getValueNode() instanceof ScalarNode kind) {
        return kind.getValue();
      }
    }
    return "";
  }

  /** Takes one entry of a mapping. */
  private interface Entry {
    void take(String name, Node value, Swap swap);
  }

  private static void each(MappingNode map, Entry entry) {
    List<NodeTuple> tuples = map.getValue();
    for (int i = 0; i < tuples.size(); i++) {
      NodeTuple tuple = tuples.get(i);
      int at = i;
      entry.take(
          ((ScalarNode) tuple.getKeyNode()).getValue(),
          tuple.getValueNode(),
          other -> tuples.set(at, new NodeTuple(tuple.getKeyNode(), other)));
    }
  }

  /** Values that make no sense where {@code spot} is, in the form that belongs there. */
  private static List<String> absurd(Spot spot, List<Spot> all) {
    String text = spot.node().getValue();
    Set<String> values = new LinkedHashSet<>();
    Shape shape = spot.shape();
    if (shape instanceof Shape.Choice choice) {
      values.addAll(choice.words());
    } else if (shape instanceof Shape.YesNo) {
      values.add(Shape.YesNo.YES.contains(text) ? "false" : "true");
    } else if (shape instanceof Shape.Expression) {
      values.add("not (" + text + ")");
    } else if (shape instanceof Shape.Measure
        || shape instanceof Shape.MainsVoltage
        || shape instanceof Shape.Rated
        || shape instanceof Shape.Whole
        || shape instanceof Shape.Size) {
      numbers(text, values);
    } else if (shape instanceof Shape.Form || shape instanceof Shape.Pin) {
      // a name, a window, a polarity: whatever else stands in the netlist in such a place
      for (Spot other : all) {
        if (other.shape().equals(shape)) {
          values.add(other.node().getValue());
        }
      }
      values.addAll(
          List.of("none", "A1 plus", "A2 plus", "A1 minus", "00:00-24:00", "03:00-03:01"));
    } else if (shape instanceof Shape.Text) {
      values.add("something else altogether");
    }
    values.remove(text);
    return List.copyOf(values);
  }

  private static void numbers(String text, Set<String> values) {
    for (double factor : new double[] {1000, 0.001, 10, 0.1, 2, 0.5}) {
      values.add(every(text, n -> times(n, factor)));
    }
    for (double factor : new double[] {1000, 0.001, 10, 0.1}) {
      Matcher second = NUMBER.matcher(text);
      if (second.find() && second.find(second.end())) {
        values.add(
            text.substring(0, second.start())
                + times(second.group(), factor)
                + text.substring(second.end()));
      }
      Matcher first = NUMBER.matcher(text);
      if (first.find()) {
        values.add(
            text.substring(0, first.start())
                + times(first.group(), factor)
                + text.substring(first.end()));
      }
    }
    if (text.contains("°C")) {
      values.add("-30 °C");
      values.add("300 °C");
    }
    if (text.contains(" AC")) {
      values.add(text.replace(" AC", " DC"));
    }
    if (text.contains(" DC")) {
      values.add(text.replace(" DC", " AC"));
    }
  }

  /** All numbers of a text changed but those of tolerances. */
  private static String every(String text, UnaryOperator<String> change) {
    Matcher matcher = NUMBER.matcher(text);
    StringBuilder changed = new StringBuilder();
    int done = 0;
    while (matcher.find()) {
      boolean tolerance = TOLERANCE.matcher(text.substring(0, matcher.start())).find();
      boolean size =
          text.startsWith("²", matcher.end()) || text.startsWith("mm2", matcher.start() - 2);
      changed.append(text, done, matcher.start());
      changed.append(tolerance || size ? matcher.group() : change.apply(matcher.group()));
      done = matcher.end();
    }
    return changed.append(text.substring(done)).toString();
  }

  private static String times(String number, double factor) {
    double value = Double.parseDouble(number) * factor;
    return value == Math.rint(value) && Math.abs(value) < 1e15
        ? Long.toString((long) value)
        : new java.math.BigDecimal(value)
            .round(new java.math.MathContext(6))
            .stripTrailingZeros()
            .toPlainString();
  }
}
