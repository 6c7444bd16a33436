package org.coilwright.netlist;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import org.coilwright.quantity.Words;

/** Finds the known names that someone most likely meant. */
public final class NearNames {
  /** Longer words are no slips of the finger, and would cost time. */
  private static final int LONGEST = 48;

  /** With more than these, none is the one that was meant. */
  private static final int MOST = 3;

  private NearNames() {}

  /** "write …" with the nearest names, if any are near enough to be meant and not too many. */
  static Optional<String> advice(String word, Collection<String> known, String prefix) {
    List<String> near = nearest(word, known);
    return near.isEmpty() || near.size() > MOST
        ? Optional.empty()
        : Optional.of("write " + Words.either(near.stream().map(name -> prefix + name).toList()));
  }

  /** Every known name at the least distance, if that is near enough to be meant. */
  public static List<String> nearest(String word, Collection<String> known) {
    List<String> best = new ArrayList<>();
    if (word.isEmpty() || word.length() > LONGEST) {
      return best;
    }
    int least = Integer.MAX_VALUE;
    String bareWord = bare(word);
    for (String name : known) {
      int near = Math.max(1, Math.max(word.length(), name.length()) / 3);
      String bareName = name.length() > LONGEST ? "" : bare(name);
      if (bareName.isEmpty() || Math.abs(bareName.length() - bareWord.length()) > near) {
        continue;
      }
      int far = distance(bareWord, bareName);
      boolean meant = far == 0 || (far <= near && name.length() > 1);
      if (meant && far <= least) {
        if (far < least) {
          best.clear();
        }
        least = far;
        best.add(name);
      }
    }
    return best;
  }

  private static String bare(String name) {
    StringBuilder bare = new StringBuilder(name.length());
    for (int i = 0; i < name.length(); i++) {
      char c = name.charAt(i);
      if (c != '-' && c != '_' && c != ' ') {
        bare.append(Character.toLowerCase(c));
      }
    }
    return bare.toString();
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
