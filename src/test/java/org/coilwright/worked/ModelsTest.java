package org.coilwright.worked;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.NoSuchElementException;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.UnaryOperator;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.coilwright.worked.Examples.Example;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Which published results exercise a model, and not one step of arithmetic. An example says so with
 * {@code model:}, and is not taken at its word: while it is answered the classes of that model must
 * be loaded, and its answer must be no product of powers of what it is given, as P/U, U²/P and
 * I√t/k are. With such a product, a tenth less of an input changes the answer by one and the same
 * factor, however large the input already is; in a network, an exponential or a law with an offset
 * it does not.
 */
class ModelsTest {
  /** What really computes an answer of each kind. */
  private static final Map<String, Set<String>> CLASSES =
      Map.of(
          "network", Set.of("org.coilwright.solve.Network"),
          "transient", Set.of("org.coilwright.solve.CoilDecay"),
          "capacitance", Set.of("org.coilwright.solve.CableCapacitance"),
          "thermal", Set.of("org.coilwright.solve.CopperLaw"),
          "day", Set.of("org.coilwright.behaviour.Rehearsal"));

  private static final double STEP = 1 / 1.1;

  /** Wires and contacts bend what would be a product of powers by less than this. */
  private static final double STRAIGHT = 2e-5;

  /** A value of a part in the text of a circuit. */
  private static final Pattern VALUE =
      Pattern.compile("(?<=(power|current|resistance|capacitance|time-constant): )[0-9.]+");

  private static final Map<String, Formula> FORMULAS = Examples.formulas();

  static Stream<Example> modelled() {
    return Examples.all().stream().filter(e -> e.entry().containsKey("model"));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("modelled")
  void an_example_of_a_model_is_no_product_of_powers(Example example) {
    assertTrue(CLASSES.containsKey(example.text("model")), example.text("model"));
    assertTrue(bends(example), example + " is one step of arithmetic");
  }

  @Test
  void a_formula_loads_the_classes_of_its_models() {
    Map<String, Example> first = new TreeMap<>();
    modelled().forEach(e -> first.putIfAbsent(e.text("asks") + " " + e.text("model"), e));
    for (Example example : first.values()) {
      Loading loading = new Loading();
      loading.answer(example.text("asks"), example.inputs());
      for (String needed : CLASSES.getOrDefault(example.text("model"), Set.of())) {
        assertTrue(loading.loaded.contains(needed), () -> example + " does without " + needed);
      }
    }
  }

  @Test
  void at_least_sixty_published_results_exercise_a_model() {
    Map<String, Set<String>> results = new TreeMap<>();
    modelled()
        .filter(Example::isPublished)
        .forEach(
            e -> results.computeIfAbsent(e.text("model"), m -> new TreeSet<>()).add(e.result()));
    int all = results.values().stream().mapToInt(Set::size).sum();
    Map<String, Integer> counts = new TreeMap<>();
    results.forEach((model, some) -> counts.put(model, some.size()));
    System.out.println("published results that exercise a model: " + all + " " + counts);
    assertTrue(all >= 60, () -> all + " results: " + counts);
  }

  @Test
  void one_step_arithmetic_is_told_from_a_model() {
    Map<String, Example> byId = new TreeMap<>();
    Examples.all().forEach(e -> byId.put(e.text("id"), e));
    for (String id :
        List.of("water-heater-4500", "element-on-208", "adiabatic-ring", "years-20", "life-24")) {
      assertTrue(!bends(byId.get(id)), id);
    }
  }

  /** True if the answer is no product of powers of what it is given. */
  private static boolean bends(Example example) {
    List<Double> plain = answer(example, example.inputs(), UnaryOperator.identity());
    for (String name : example.inputs().keySet()) {
      if (bent(
          plain,
          answer(example, scaled(example, name, STEP), UnaryOperator.identity()),
          answer(example, scaled(example, name, STEP * STEP), UnaryOperator.identity()))) {
        return true;
      }
    }
    int values = example.inputs().containsKey("netlist") ? 12 : 0;
    for (int i = 0; i < values; i++) {
      if (bent(
          plain,
          answer(example, example.inputs(), scaling(i, STEP)),
          answer(example, example.inputs(), scaling(i, STEP * STEP)))) {
        return true;
      }
    }
    return false;
  }

  private static boolean bent(List<Double> plain, List<Double> more, List<Double> most) {
    for (int i = 0; i < plain.size() && i < more.size() && i < most.size(); i++) {
      double first = Math.log(Math.abs(more.get(i) / plain.get(i)));
      double second = Math.log(Math.abs(most.get(i) / more.get(i)));
      if (Math.abs(second - first) > STRAIGHT) {
        return true;
      }
    }
    return false;
  }

  /** The answer as numbers; empty where the formula does not take such inputs. */
  private static List<Double> answer(
      Example example, Map<String, Object> inputs, UnaryOperator<String> netlist) {
    try {
      Formula formula = FORMULAS.get(example.text("asks"));
      if (formula == null) {
        return List.of();
      }
      Object answer = formula.answer(new Inputs(inputs, netlist));
      List<?> many = answer instanceof List<?> list ? list : List.of(answer);
      return many.stream()
          .filter(Number.class::isInstance)
          .map(n -> ((Number) n).doubleValue())
          .toList();
    } catch (IllegalStateException | IllegalArgumentException | NoSuchElementException e) {
      return List.of();
    }
  }

  /** The inputs with one of them smaller: a number, or all numbers of a list. */
  private static Map<String, Object> scaled(Example example, String name, double factor) {
    Map<String, Object> inputs = new LinkedHashMap<>(example.inputs());
    Object value = inputs.get(name);
    if (value instanceof Number number) {
      inputs.put(name, number.doubleValue() * factor);
    } else if (value instanceof List<?> list && list.stream().allMatch(Number.class::isInstance)) {
      List<Double> more = new ArrayList<>();
      list.forEach(n -> more.add(((Number) n).doubleValue() * factor));
      inputs.put(name, more);
    }
    return inputs;
  }

  /** Makes the value with this number in the text of a circuit smaller. */
  private static UnaryOperator<String> scaling(int number, double factor) {
    return text -> {
      Matcher values = VALUE.matcher(text);
      int[] seen = {0};
      return values.replaceAll(
          (MatchResult found) ->
              seen[0]++ == number
                  ? BigDecimal.valueOf(Double.parseDouble(found.group()) * factor)
                      .round(new MathContext(9))
                      .toPlainString()
                  : found.group());
    };
  }

  /** Answers a formula with classes of its own, and so sees which of them are used. */
  private static final class Loading extends ClassLoader {
    private static final String OURS = "org.coilwright.";
    private final Set<String> loaded = new TreeSet<>();

    Loading() {
      super(ModelsTest.class.getClassLoader());
    }

    void answer(String asks, Map<String, Object> inputs) {
      try {
        Class<?> asked = loadClass(Asked.class.getName());
        Method of = asked.getDeclaredMethod("of", String.class, Map.class);
        of.setAccessible(true);
        Method ready = asked.getDeclaredMethod("ready");
        ready.setAccessible(true);
        ready.invoke(null);
        loaded.clear();
        of.invoke(null, asks, inputs);
      } catch (ReflectiveOperationException e) {
        throw new IllegalStateException(e instanceof InvocationTargetException ? e.getCause() : e);
      }
    }

    @Override
    protected Class<?> loadClass(String name, boolean resolve) throws ClassNotFoundException {
      if (!name.startsWith(OURS)) {
        return super.loadClass(name, resolve);
      }
      synchronized (getClassLoadingLock(name)) {
        Class<?> known = findLoadedClass(name);
        return known == null ? define(name) : known;
      }
    }

    private Class<?> define(String name) throws ClassNotFoundException {
      try (InputStream in = getResourceAsStream(name.replace('.', '/') + ".class")) {
        if (in == null) {
          throw new ClassNotFoundException(name);
        }
        byte[] bytes = in.readAllBytes();
        loaded.add(name);
        return defineClass(name, bytes, 0, bytes.length);
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
  }

  @Test
  void a_formula_that_only_divides_loads_no_model() {
    Loading loading = new Loading();
    loading.answer("sizing.mean-years", Map.of("b10d", 100000.0, "per-year", 105600.0));
    Set<String> models = new TreeSet<>();
    CLASSES.values().forEach(models::addAll);
    models.retainAll(loading.loaded);
    assertEquals(Set.of(), models);
  }
}
