package org.coilwright.checklist;

/** What the rows of the dead tests are made from. */
record DeadTests(
    Anatomy anatomy, Bands bands, Texts texts, DeadReadings readings, WiringMistakes mistakes) {

  /** What is done before readings. */
  DeadState state() {
    return new DeadState(anatomy);
  }

  DeadTests(Anatomy anatomy, Bands bands, Texts texts) {
    this(anatomy, bands, texts, new DeadReadings(anatomy, bands));
  }

  private DeadTests(Anatomy anatomy, Bands bands, Texts texts, DeadReadings readings) {
    this(anatomy, bands, texts, readings, new WiringMistakes(anatomy.circuit(), readings));
  }
}
