package org.coilwright.diagram;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Lays level stretches on tracks, so that those on one track do not meet (left-edge algorithm). */
final class Tracks {
  private final List<Stretch> stretches = new ArrayList<>();
  private final Map<Object, Integer> trackOf = new HashMap<>();
  private int count;

  private record Stretch(Object of, int from, int to) {}

  void add(Object of, int from, int to) {
    stretches.add(new Stretch(of, Math.min(from, to), Math.max(from, to)));
  }

  void lay() {
    stretches.sort(Comparator.comparingInt(Stretch::from).thenComparingInt(Stretch::to));
    List<Integer> ends = new ArrayList<>();
    for (Stretch stretch : stretches) {
      int track = 0;
      while (track < ends.size() && ends.get(track) >= stretch.from()) {
        track++;
      }
      if (track == ends.size()) {
        ends.add(stretch.to());
      } else {
        ends.set(track, stretch.to());
      }
      trackOf.put(stretch.of(), track);
    }
    count = ends.size();
  }

  int count() {
    return count;
  }

  int of(Object what) {
    return trackOf.getOrDefault(what, 0);
  }
}
