package org.coilwright.netlist;

import java.util.Iterator;
import java.util.List;
import java.util.Map;

/** Prints maps, lists, text, numbers and truth values as JSON, two spaces a level. */
final class JsonPrinter {
  private final StringBuilder out = new StringBuilder();

  private JsonPrinter() {}

  static String print(Map<String, ?> value) {
    JsonPrinter printer = new JsonPrinter();
    printer.value(value, 0);
    return printer.out.append('\n').toString();
  }

  private void value(Object value, int level) {
    if (value instanceof Map<?, ?> map) {
      block('{', '}', map.entrySet().iterator(), level);
    } else if (value instanceof List<?> list && list.stream().allMatch(JsonPrinter::isShort)) {
      out.append('[');
      for (int i = 0; i < list.size(); i++) {
        out.append(i == 0 ? "" : ", ");
        value(list.get(i), level);
      }
      out.append(']');
    } else if (value instanceof List<?> list) {
      block('[', ']', list.iterator(), level);
    } else if (value instanceof Number || value instanceof Boolean) {
      out.append(value);
    } else {
      quoted(value.toString());
    }
  }

  private void block(char open, char close, Iterator<?> items, int level) {
    out.append(open);
    boolean first = true;
    while (items.hasNext()) {
      out.append(first ? "\n" : ",\n").append("  ".repeat(level + 1));
      first = false;
      Object item = items.next();
      if (item instanceof Map.Entry<?, ?> entry) {
        quoted(String.valueOf(entry.getKey()));
        out.append(": ");
        value(entry.getValue(), level + 1);
      } else {
        value(item, level + 1);
      }
    }
    out.append(first ? "" : "\n" + "  ".repeat(level)).append(close);
  }

  private static boolean isShort(Object value) {
    return !(value instanceof Map || value instanceof List);
  }

  private void quoted(String text) {
    out.append('"');
    text.chars()
        .forEach(
            c -> {
              switch (c) {
                case '"' -> out.append("\\\"");
                case '\\' -> out.append("\\\\");
                case '\n' -> out.append("\\n");
                default -> out.append(c < ' ' ? String.format("\\u%04x", c) : (char) c);
              }
            });
    out.append('"');
  }
}
