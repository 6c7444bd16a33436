package org.coilwright.checklist;

import java.util.Set;
import org.coilwright.netlist.Wire;
import org.coilwright.netlist.Written;

/**
 * Names that stay the same when other parts are added: made of designations and the kind of test,
 * never of a running number. A filled-in value is found again by them.
 */
final class Names {
  private Names() {}

  /** {@code K1.coil-resistance}: one dot, then the test and the pins or devices it is told by. */
  static String of(String subject, String test, String... more) {
    StringBuilder name = new StringBuilder(word(subject)).append('.').append(word(test));
    for (String part : more) {
      name.append('-').append(word(part));
    }
    return name.toString();
  }

  /** What a wire is called: by its number, or by its two ends where it has none. */
  static String wire(Wire wire) {
    return "wire-"
        + word(
            wire.number()
                .map(Written::text)
                .orElseGet(() -> wire.from().value() + "_" + wire.to().value()));
  }

  /** A text as one word: letters, digits and the signs that pins are marked with. */
  static String word(String text) {
    StringBuilder word = new StringBuilder(text.length());
    for (int i = 0; i < text.length(); ) {
      int character = text.codePointAt(i);
      i += Character.charCount(character);
      if (Character.isLetterOrDigit(character) || "+~/_".indexOf(character) >= 0) {
        word.appendCodePoint(character);
      } else if (word.isEmpty() || word.charAt(word.length() - 1) != '-') {
        word.append('-');
      }
    }
    return word.isEmpty() ? "-" : word.toString();
  }

  /** The name, or if it is taken, the name with the least number behind it that is not. */
  static String free(String name, Set<String> taken) {
    String free = name;
    for (int i = 2; !taken.add(free); i++) {
      free = name + "-" + i;
    }
    return free;
  }
}
