package org.coilwright.netlist;

import org.jspecify.annotations.Nullable;

/**
 * A value together with where it stands and how it was written.
 *
 * @param value what it means
 * @param text what stands in the file
 * @param mark where it stands
 */
public record Written<T>(T value, String text, Mark mark) {
  // written out: what the compiler makes of a record is put together at run time, at each start
  @Override
  public boolean equals(@Nullable Object other) {
    return this == other
        || (other instanceof Written<?> that
            && mark.equals(that.mark)
            && text.equals(that.text)
            && value.equals(that.value));
  }

  @Override
  public int hashCode() {
    return 31 * mark.hashCode() + text.hashCode();
  }
}
