package org.coilwright.pdf;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.cos.COSString;
import org.coilwright.checklist.Blank;
import org.coilwright.checklist.FilledIn;

/** Walks the fields of a form and takes down what they hold. */
final class FieldReader {
  private static final int DEEPEST = 16;
  private static final int MOST_FIELDS = 20_000;
  private static final int LONGEST = 10_000;
  private static final int PUSHBUTTON_OR_RADIO = 3 << 15;
  private static final String AGAIN = "fill in the sheet as coilwright wrote it";

  private final Map<String, Blank.Kind> kinds = new HashMap<>();
  private final Map<String, String> texts = new HashMap<>();
  private final Set<String> ticked = new HashSet<>();
  private final Set<String> disputed = new HashSet<>();
  private final Set<String> signed = new HashSet<>();

  /** What a field takes over from the one above it. */
  private record Above(
      String name, Optional<COSName> type, int flags, Optional<COSBase> value, int depth) {}

  void read(COSDictionary form) throws IOException, Unfit {
    COSArray fields = form.getCOSArray(COSName.FIELDS);
    if (fields != null) {
      each(fields, new Above("", Optional.empty(), 0, Optional.empty(), 0));
    }
  }

  Map<String, Blank.Kind> kinds() {
    return kinds;
  }

  FilledIn filledIn() {
    return new FilledIn(texts, ticked, disputed, signed);
  }

  private void each(COSArray fields, Above above) throws IOException, Unfit {
    if (above.depth() > DEEPEST) {
      throw new Unfit("its form fields are nested without end", AGAIN);
    }
    for (int i = 0; i < fields.size(); i++) {
      if (fields.getObject(i) instanceof COSDictionary field) {
        one(field, above);
      }
    }
  }

  private void one(COSDictionary field, Above above) throws IOException, Unfit {
    Optional<String> part = Optional.ofNullable(field.getString(COSName.T));
    String name =
        above.name() + (above.name().isEmpty() || part.isEmpty() ? "" : ".") + part.orElse("");
    Above here =
        new Above(
            name,
            field.getDictionaryObject(COSName.FT) instanceof COSName type
                ? Optional.of(type)
                : above.type(),
            field.containsKey(COSName.FF) ? field.getInt(COSName.FF) : above.flags(),
            Optional.ofNullable(field.getDictionaryObject(COSName.V)).or(above::value),
            above.depth() + 1);
    COSArray kids = field.getCOSArray(COSName.KIDS);
    if (kids != null && hasFields(kids)) {
      each(kids, here);
    } else {
      take(here, kids == null ? List.of(field) : widgets(field, kids));
    }
  }

  /** Kids without a name of their own are further places of the same field. */
  private static boolean hasFields(COSArray kids) {
    for (int i = 0; i < kids.size(); i++) {
      if (kids.getObject(i) instanceof COSDictionary kid && kid.containsKey(COSName.T)) {
        return true;
      }
    }
    return false;
  }

  private static List<COSDictionary> widgets(COSDictionary field, COSArray kids) {
    List<COSDictionary> widgets = new ArrayList<>();
    for (int i = 0; i < kids.size(); i++) {
      if (kids.getObject(i) instanceof COSDictionary kid) {
        widgets.add(kid);
      }
    }
    return widgets.isEmpty() ? List.of(field) : widgets;
  }

  private void take(Above field, List<COSDictionary> widgets) throws IOException, Unfit {
    String name = field.name();
    if (kinds.size() >= MOST_FIELDS) {
      throw new Unfit("it has more form fields than any sheet", AGAIN);
    }
    if (kinds.containsKey(name)) {
      throw new Unfit("its form field " + shown(name) + " is there twice", AGAIN);
    }
    String type = field.type().map(COSName::getName).orElse("");
    switch (type) {
      case "Tx" -> {
        kinds.put(name, Blank.Kind.LINE);
        text(field);
      }
      case "Btn" -> {
        if ((field.flags() & PUSHBUTTON_OR_RADIO) != 0) {
          throw wrongType(name);
        }
        kinds.put(name, Blank.Kind.TICK);
        tick(field, widgets);
      }
      case "Sig" -> {
        kinds.put(name, Blank.Kind.SIGNATURE);
        if (field.value().orElse(COSName.OFF) instanceof COSDictionary) {
          signed.add(name);
        }
      }
      default -> throw wrongType(name);
    }
  }

  private void text(Above field) throws IOException, Unfit {
    if (field.value().isEmpty()) {
      return;
    }
    String text;
    COSBase value = field.value().get();
    if (value instanceof COSString string) {
      text = string.getString();
    } else if (value instanceof COSStream stream) {
      text = new COSString(AttachmentReader.unpacked(stream, LONGEST)).getString();
    } else {
      throw new Unfit(
          "its form field " + shown(field.name()) + " holds something other than text", AGAIN);
    }
    if (text.length() > LONGEST) {
      throw new Unfit("its form field " + shown(field.name()) + " holds too long a text", AGAIN);
    }
    String plain = text.replace("\r\n", "\n").replace('\r', '\n').strip();
    if (!plain.isEmpty()) {
      texts.put(field.name(), plain);
    }
  }

  private void tick(Above field, List<COSDictionary> widgets) throws Unfit {
    Optional<COSBase> value = field.value();
    List<String> looks = new ArrayList<>();
    for (COSDictionary widget : widgets) {
      if (widget.getDictionaryObject(COSName.AS) instanceof COSName state) {
        looks.add(state.getName());
      }
    }
    String holds;
    if (value.isEmpty()) {
      holds = looks.isEmpty() ? "Off" : looks.get(0);
    } else if (value.get() instanceof COSName state) {
      holds = state.getName();
    } else if (value.get() instanceof COSString string) {
      holds = string.getString();
    } else {
      throw new Unfit(
          "its form field " + shown(field.name()) + " holds something other than a tick", AGAIN);
    }
    boolean on = !holds.equals("Off") && !holds.isEmpty();
    if (on) {
      ticked.add(field.name());
    }
    if (looks.stream().anyMatch(look -> on == look.equals("Off"))) {
      disputed.add(field.name());
    }
  }

  private static Unfit wrongType(String name) {
    return new Unfit("its form field " + shown(name) + " is of another type than printed", AGAIN);
  }

  private static String shown(String name) {
    String plain =
        new String(name.getBytes(StandardCharsets.UTF_8), StandardCharsets.UTF_8)
            .replaceAll("\\p{Cntrl}", "\u00b7");
    return "\"" + (plain.length() > 80 ? plain.substring(0, 80) + "…" : plain) + "\"";
  }
}
