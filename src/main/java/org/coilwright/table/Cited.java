package org.coilwright.table;

import java.util.function.Function;

/**
 * A figure that knows where it comes from.
 *
 * @param value the figure
 * @param source entry of the bibliography
 * @param place clause, table or page in the source; may be empty
 * @param standing how sure it is
 */
public record Cited<T>(T value, Source source, String place, Standing standing) {
  /** The same citation for another value that follows from this one alone. */
  public <U> Cited<U> map(Function<? super T, ? extends U> change) {
    return new Cited<>(change.apply(value), source, place, standing);
  }
}
