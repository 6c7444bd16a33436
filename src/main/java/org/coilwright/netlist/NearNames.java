package org.coilwright.netlist;

import java.util.Collection;
import java.util.Locale;
import java.util.Optional;

/** Finds the known name that someone most likely meant. */
final class NearNames {
  /** Longer words are no slips of the finger, and would cost time. */
  private static final int LONGEST = 48;

  private NearNames() {}

  /** The nearest of the known names, if one is near enough to be meant; the first of equals. */
  static Optional<String> nearest(String word, Collection<String> known) {
    if (word.isEmpty() || word.length() > LONGEST) {
      return Optional.empty();
    }
    String best = "";
    int least = Integer.MAX_VALUE;
    for (String name : known) {
      int far = name.length() > LONGEST ? Integer.MAX_VALUE : distance(bare(word), bare(name));
      if (far < least) {
        least = far;
        best = name;
      }
    }
    int near = Math.max(1, Math.min(word.length(), best.length()) / 3);
    boolean sameOrNear = least == 0 || (least <= near && best.length() > 1);
    return sameOrNear ? Optional.of(best) : Optional.empty();
  }

  private static String bare(String name) {
    return name.toLowerCase(Locale.ROOT).replaceAll("[-_ ]", "");
  }

  /** Insertions, deletions, changes and swaps of neighbours (restricted Damerau-Levenshtein). */
  private static int distance(String a, String b) {
    int[][] d = new int[a.length() + 1][b.length() + 1];
    for (int i = 0; i <= a.length(); i++) {
      d[i][0] = i;
    }
    for (int j = 0; j <= b.length(); j++) {
      d[0][j] = j;
    }
    for (int i = 1; i <= a.length(); i++) {
      for (int j = 1; j <= b.length(); j++) {
        int change = d[i - 1][j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
        d[i][j] = Math.min(change, 1 + Math.min(d[i - 1][j], d[i][j - 1]));
        if (i > 1
            && j > 1
            && a.charAt(i - 1) == b.charAt(j - 2)
            && a.charAt(i - 2) == b.charAt(j - 1)) {
          d[i][j] = Math.min(d[i][j], 1 + d[i - 2][j - 2]);
        }
      }
    }
    return d[a.length()][b.length()];
  }
}
