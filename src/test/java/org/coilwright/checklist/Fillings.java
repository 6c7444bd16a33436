package org.coilwright.checklist;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;

/** Sheets filled in as they should be, to be spoilt at one place by a test. */
public final class Fillings {
  private final Map<String, String> texts = new HashMap<>();
  private final Set<String> ticked = new HashSet<>();
  private final Set<String> disputed = new HashSet<>();

  private Fillings() {}

  /** Everything done, every reading in the middle of its band, hour after hour. */
  public static Fillings complete(Checklist checklist) {
    Fillings fillings = new Fillings();
    for (Blank blank : Blanks.all(checklist)) {
      switch (blank.kind()) {
        case TICK -> fillings.ticked.add(blank.name());
        case LINE, LINES -> fillings.texts.put(blank.name(), "Jörg Groß, 1");
        case SIGNATURE -> {}
      }
    }
    fillings.text(Blanks.temperature(), "20 °C");
    int minutes = 0;
    for (Step step : checklist.steps()) {
      minutes += 5;
      String time = "2026-03-05 %02d:%02d".formatted(8 + minutes / 60, minutes % 60);
      if (step instanceof Section section) {
        fillings.text(Blanks.time(section), time);
      } else if (step instanceof Hold hold) {
        fillings.text(Blanks.hold(hold).get(2), time);
      }
    }
    for (TestRow row : checklist.rows()) {
      fillings.ticked.remove(Blanks.fail(row).name());
      if (row.manner() == Manner.LISTED) {
        fillings.noText(Blanks.reading(row));
      } else if (Blanks.isRead(row)) {
        fillings.text(Blanks.reading(row), within(row.expected()));
      }
    }
    return fillings;
  }

  private static String within(Expected expected) {
    if (expected instanceof Expected.Band band) {
      double min = band.shownMin();
      double value = band.shownMax().isPresent() ? (min + band.shownMax().getAsDouble()) / 2 : min;
      // four decimals are never three, so that no decimal point looks like one of thousands
      return "%.4f".formatted(value).replace('.', ',') + " " + band.unit();
    } else if (expected instanceof Expected.Setting setting) {
      return setting.value();
    }
    throw new IllegalArgumentException("nothing is read there");
  }

  Fillings text(Blank blank, String text) {
    texts.put(blank.name(), text);
    return this;
  }

  Fillings noText(Blank blank) {
    texts.remove(blank.name());
    return this;
  }

  Fillings tick(Blank blank) {
    ticked.add(blank.name());
    return this;
  }

  Fillings noTick(Blank blank) {
    ticked.remove(blank.name());
    return this;
  }

  Fillings disputed(Blank blank) {
    disputed.add(blank.name());
    return this;
  }

  /** As read back. */
  public FilledIn filledIn() {
    return new FilledIn(texts, ticked, disputed, Set.of());
  }
}
