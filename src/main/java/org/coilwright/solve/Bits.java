package org.coilwright.solve;

import java.util.AbstractMap;
import java.util.AbstractSet;
import java.util.BitSet;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Names to true or false, kept as bits: a state of ten thousand relays shall not be large. */
final class Bits extends AbstractMap<String, Boolean> {
  private final List<String> names;
  private final Map<String, Integer> index;
  private final BitSet bits;
  private final int offset;

  Bits(List<String> names, Map<String, Integer> index, BitSet bits, int offset) {
    this.names = names;
    this.index = index;
    this.bits = bits;
    this.offset = offset;
  }

  @Override
  public @Nullable Boolean get(@Nullable Object name) {
    Integer i = name == null ? null : index.get(name);
    return i == null ? null : bits.get(offset + i);
  }

  @Override
  public boolean containsKey(@Nullable Object name) {
    return name != null && index.containsKey(name);
  }

  @Override
  public Set<Entry<String, Boolean>> entrySet() {
    return new AbstractSet<>() {
      @Override
      public Iterator<Entry<String, Boolean>> iterator() {
        return new Iterator<>() {
          private int next;

          @Override
          public boolean hasNext() {
            return next < names.size();
          }

          @Override
          public Entry<String, Boolean> next() {
            if (!hasNext()) {
              throw new java.util.NoSuchElementException();
            }
            int i = next++;
            return Map.entry(names.get(i), bits.get(offset + i));
          }
        };
      }

      @Override
      public int size() {
        return names.size();
      }
    };
  }
}
