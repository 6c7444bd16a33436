package org.coilwright.netlist;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.yaml.snakeyaml.events.AliasEvent;
import org.yaml.snakeyaml.events.CollectionEndEvent;
import org.yaml.snakeyaml.events.CollectionStartEvent;
import org.yaml.snakeyaml.events.DocumentStartEvent;
import org.yaml.snakeyaml.events.Event;
import org.yaml.snakeyaml.events.ScalarEvent;
import org.yaml.snakeyaml.parser.Parser;

/**
 * Counts what a parser delivers and stops it before a hostile file costs memory or time: too many
 * values, too deep, too many aliases. Refuses tags and second documents, which a netlist never has.
 */
final class GuardedParser implements Parser {
  static final int DEEPEST = 20;
  static final int MOST_ALIASES = 20;

  private final Parser parser;
  private final String file;
  private int values;
  private int depth;
  private int aliases;
  private int documents;

  GuardedParser(Parser parser, String file) {
    this.parser = parser;
    this.file = file;
  }

  @Override
  public boolean checkEvent(Event.ID choice) {
    return parser.checkEvent(choice);
  }

  @Override
  public Event peekEvent() {
    return parser.peekEvent();
  }

  @Override
  public Event getEvent() {
    Event event = parser.getEvent();
    if (event instanceof ScalarEvent scalar) {
      count(event);
      refuseTag(scalar.getTag(), event);
    } else if (event instanceof CollectionStartEvent collection) {
      count(event);
      refuseTag(collection.getTag(), event);
      if (++depth > DEEPEST) {
        throw refusal(event, "this is nested too deeply", "a netlist needs at most eight levels");
      }
    } else if (event instanceof CollectionEndEvent) {
      depth--;
    } else if (event instanceof AliasEvent) {
      count(event);
      if (++aliases > MOST_ALIASES) {
        throw refusal(
            event, "there are too many aliases (*)", "say repeated things once, under types:");
      }
    } else if (event instanceof DocumentStartEvent && ++documents > 1) {
      throw refusal(
          event, "a second document begins here", "keep one netlist a file and take --- out");
    }
    return event;
  }

  private void count(Event event) {
    if (++values > LargestFile.VALUES) {
      throw refusal(
          event,
          "the file holds more than " + LargestFile.VALUES + " values",
          "split the circuit into several netlists");
    }
  }

  private void refuseTag(@Nullable String tag, Event event) {
    if (tag != null) {
      throw refusal(
          event, "a netlist has no type tags (!)", "take the tag out, or quote the value");
    }
  }

  private Refusal refusal(Event event, String what, String remedy) {
    org.yaml.snakeyaml.error.Mark start = event.getStartMark();
    int column = start.getColumn() + 1;
    Mark mark = new Mark(file, start.getLine() + 1, column, column + 1);
    return new Refusal(Optional.of(mark), what, remedy);
  }
}
