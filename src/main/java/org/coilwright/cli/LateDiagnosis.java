package org.coilwright.cli;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import org.coilwright.checklist.Diagnosis;

/** Works every wiring mistake out once, and only if a reading lies outside its band. */
final class LateDiagnosis implements Diagnosis {
  private final Supplier<Diagnosis> make;
  private Optional<Diagnosis> made = Optional.empty();

  LateDiagnosis(Supplier<Diagnosis> make) {
    this.make = make;
  }

  @Override
  public List<String> of(String rowName, double value, Set<String> met) {
    if (made.isEmpty()) {
      made = Optional.of(make.get());
    }
    return made.get().of(rowName, value, met);
  }
}
