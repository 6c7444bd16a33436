package org.coilwright.netlist;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.coilwright.netlist.Shape.ByKind;
import org.coilwright.netlist.Shape.Either;
import org.coilwright.netlist.Shape.Fields;
import org.coilwright.netlist.Shape.Listing;
import org.coilwright.netlist.Shape.Named;
import org.coilwright.netlist.Shape.Scalar;

/**
 * The netlist format as JSON Schema, draft 2020-12, for editors and other programs. It is made of
 * the very shapes the reader follows. It cannot follow references, so the reader refuses more.
 */
public final class NetlistSchema {
  private static final String TITLE = "coilwright netlist, version " + Format.VERSION;

  private final Map<String, Object> values = new TreeMap<>();

  private NetlistSchema() {}

  /** The schema as text; the same on every call. */
  public static String text() {
    return JsonPrinter.print(new NetlistSchema().netlist());
  }

  /** True if the format has a key of this name somewhere. */
  public static boolean hasKey(String key) {
    return Keys.ALL.contains(key);
  }

  /** Worked out when it is first asked for. */
  private static final class Keys {
    static final Set<String> ALL = new HashSet<>();

    static {
      Matcher key = Pattern.compile("\"([A-Za-z0-9-]+)\": \\{").matcher(text());
      while (key.find()) {
        ALL.add(key.group(1));
      }
    }
  }

  private Map<String, Object> netlist() {
    Map<String, Object> schema = new LinkedHashMap<>();
    schema.put("$schema", "https://json-schema.org/draft/2020-12/schema");
    schema.put("$id", "urn:coilwright:netlist:" + Format.VERSION);
    schema.put("title", TITLE);
    schema.put("description", "A control contact, coil and load circuit, as YAML or JSON.");
    schema.putAll(fields(Format.NETLIST, true));
    Map<String, Object> definitions = new LinkedHashMap<>();
    definitions.put("part", part(Format.PART, true));
    definitions.put("type", part(Format.PART, false));
    Format.PART
        .kinds()
        .forEach(
            (kind, keys) -> definitions.put("kind-" + kind, fields(ownKind(keys, kind), false)));
    definitions.putAll(values);
    schema.put("$defs", definitions);
    return schema;
  }

  private Map<String, Object> of(Shape shape) {
    if (shape instanceof Scalar<?> scalar) {
      String name = ScalarSchema.name(scalar);
      if (name.isEmpty()) {
        return ScalarSchema.of(scalar);
      }
      values.computeIfAbsent(name, n -> ScalarSchema.of(scalar));
      return map("$ref", "#/$defs/" + name);
    }
    if (shape instanceof Listing listing) {
      Map<String, Object> schema = new LinkedHashMap<>();
      schema.put("type", "array");
      schema.put("items", of(listing.item()));
      schema.put("minItems", listing.least());
      schema.put("maxItems", listing.most());
      return schema;
    }
    if (shape instanceof Named named) {
      Map<String, Object> schema = new LinkedHashMap<>();
      schema.put("type", "object");
      schema.put("propertyNames", ScalarSchema.key(named.key()));
      schema.put("additionalProperties", of(named.value()));
      if (named.least() > 0) {
        schema.put("minProperties", named.least());
      }
      return schema;
    }
    if (shape instanceof Either either) {
      return map("anyOf", List.of(of(either.phrase()), fields(either.fields(), true)));
    }
    if (shape instanceof Fields fields) {
      return fields(fields, true);
    }
    if (shape instanceof ByKind byKind) {
      return map("$ref", byKind.whole() ? "#/$defs/part" : "#/$defs/type");
    }
    throw new IllegalStateException("no such shape: " + shape);
  }

  private Map<String, Object> fields(Fields fields, boolean whole) {
    Map<String, Object> properties = new LinkedHashMap<>();
    for (Key key : fields.keys()) {
      Map<String, Object> schema = new LinkedHashMap<>();
      schema.put("description", key.says() + " Example: " + key.example());
      schema.putAll(of(key.shape()));
      properties.put(key.name(), schema);
    }
    Map<String, Object> schema = new LinkedHashMap<>();
    schema.put("type", "object");
    schema.put("properties", properties);
    List<String> must = must(fields);
    if (whole && !must.isEmpty()) {
      schema.put("required", must);
    }
    schema.put("additionalProperties", false);
    if (!fields.sets().isEmpty()) {
      schema.put("oneOf", fields.sets().stream().map(set -> oneSet(set, fields)).toList());
    }
    return schema;
  }

  private static Map<String, Object> oneSet(List<String> set, Fields fields) {
    List<Object> others =
        fields.sets().stream()
            .filter(other -> !other.equals(set))
            .flatMap(List::stream)
            .<Object>map(key -> map("required", List.of(key)))
            .toList();
    Map<String, Object> schema = map("required", set);
    schema.put("not", map("anyOf", others));
    return schema;
  }

  /** A kind's keys, with {@code is} bound to its word. */
  private static Fields ownKind(Fields fields, String kind) {
    List<Key> keys = new ArrayList<>();
    for (Key key : fields.keys()) {
      keys.add(
          key.name().equals("is") ? Key.must("is", Shape.Choice.of(kind), key.says(), kind) : key);
    }
    return Fields.of(fields.noun(), keys);
  }

  private Map<String, Object> part(ByKind shape, boolean whole) {
    List<Object> cases = new ArrayList<>();
    Set<String> allKeys = new LinkedHashSet<>();
    shape
        .kinds()
        .forEach(
            (kind, fields) -> {
              allKeys.addAll(fields.names());
              Map<String, Object> condition = map("properties", map("is", map("const", kind)));
              condition.put("required", List.of("is"));
              Map<String, Object> then = map("$ref", "#/$defs/kind-" + kind);
              if (whole) {
                then.put("if", map("not", map("required", List.of("type"))));
                then.put("then", map("required", must(fields)));
              }
              Map<String, Object> oneCase = map("if", condition);
              oneCase.put("then", then);
              cases.add(oneCase);
            });
    Map<String, Object> schema = new LinkedHashMap<>();
    schema.put("type", "object");
    Map<String, Object> properties = new LinkedHashMap<>();
    properties.put("is", map("enum", List.copyOf(shape.kinds().keySet())));
    if (!whole) {
      properties.put("type", false);
    }
    schema.put("properties", properties);
    schema.put(
        "anyOf",
        whole
            ? List.of(map("required", List.of("is")), map("required", List.of("type")))
            : List.of(map("required", List.of("is"))));
    schema.put("propertyNames", map("enum", List.copyOf(allKeys)));
    schema.put("allOf", cases);
    return schema;
  }

  private static List<String> must(Fields fields) {
    return fields.keys().stream().filter(Key::must).map(Key::name).toList();
  }

  private static Map<String, Object> map(String key, Object value) {
    Map<String, Object> map = new LinkedHashMap<>();
    map.put(key, value);
    return map;
  }
}
