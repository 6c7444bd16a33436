package org.coilwright.cli;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** JSON as it was read: one of text, object or array. Numbers and truths count as text. */
sealed interface JsonTree {
  /** Deeper than anything written here. */
  int DEEPEST = 20;

  /** Text, a number or a truth, as written; {@code null} is empty text. */
  record Text(String value) implements JsonTree {}

  /** Members in their order. */
  record Members(Map<String, JsonTree> all) implements JsonTree {}

  /** Elements. */
  record Elements(List<JsonTree> all) implements JsonTree {}

  /**
   * Reads.
   *
   * @throws IOException if it is no JSON
   */
  static JsonTree read(byte[] json) throws IOException {
    StreamReadConstraints bounds =
        StreamReadConstraints.builder().maxNestingDepth(DEEPEST).maxStringLength(1 << 20).build();
    JsonFactory factory = JsonFactory.builder().streamReadConstraints(bounds).build();
    try (JsonParser parser = factory.createParser(json)) {
      return value(parser, parser.nextToken());
    }
  }

  private static JsonTree value(JsonParser parser, JsonToken token) throws IOException {
    if (token == JsonToken.START_OBJECT) {
      Map<String, JsonTree> members = new LinkedHashMap<>();
      while (parser.nextToken() == JsonToken.FIELD_NAME) {
        String key = parser.currentName();
        members.put(key, value(parser, parser.nextToken()));
      }
      return new Members(members);
    } else if (token == JsonToken.START_ARRAY) {
      List<JsonTree> elements = new ArrayList<>();
      for (JsonToken next = parser.nextToken();
          next != JsonToken.END_ARRAY;
          next = parser.nextToken()) {
        elements.add(value(parser, next));
      }
      return new Elements(elements);
    } else if (token == null) {
      throw new IOException("it ends too early");
    }
    return new Text(token == JsonToken.VALUE_NULL ? "" : parser.getText());
  }

  /** The member of that name; empty text if there is none. */
  default JsonTree at(String key) {
    return this instanceof Members members
        ? members.all().getOrDefault(key, new Text(""))
        : new Text("");
  }

  /** The text of the member of that name; empty if there is none. */
  default String text(String key) {
    return at(key) instanceof Text text ? text.value() : "";
  }

  /** The elements of the member of that name; none if there is none. */
  default List<JsonTree> elements(String key) {
    return at(key) instanceof Elements elements ? elements.all() : List.of();
  }

  /** The members of the member of that name, as text; none if there is none. */
  default Map<String, String> texts(String key) {
    Map<String, String> texts = new LinkedHashMap<>();
    if (at(key) instanceof Members members) {
      members
          .all()
          .forEach((name, value) -> texts.put(name, value instanceof Text t ? t.value() : ""));
    }
    return texts;
  }
}
