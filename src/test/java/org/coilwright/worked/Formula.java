package org.coilwright.worked;

import java.util.List;

/** Something a worked example can ask: a number, a few numbers or a word. */
interface Formula {
  Object answer(Inputs in);

  static Formula number(NumberOf number) {
    return number::of;
  }

  static Formula numbers(NumbersOf numbers) {
    return numbers::of;
  }

  static Formula word(WordOf word) {
    return word::of;
  }

  interface NumberOf {
    double of(Inputs in);
  }

  interface NumbersOf {
    List<Double> of(Inputs in);
  }

  interface WordOf {
    String of(Inputs in);
  }
}
