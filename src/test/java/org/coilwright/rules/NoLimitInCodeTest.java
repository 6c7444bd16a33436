package org.coilwright.rules;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import com.sun.source.tree.CompilationUnitTree;
import com.sun.source.tree.LiteralTree;
import com.sun.source.util.JavacTask;
import com.sun.source.util.TreeScanner;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import javax.tools.JavaCompiler;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Limits come from tables, with their source; a rule's code holds none. */
class NoLimitInCodeTest {
  private static final Path RULES = Path.of("src/main/java/org/coilwright/rules");
  private static final Set<Double> ALLOWED = Set.of(0.0, 1.0, 2.0);

  @Test
  void rules_hold_no_number_but_zero_one_and_two() throws IOException {
    List<Path> sources;
    try (Stream<Path> files = Files.walk(RULES)) {
      sources = files.filter(f -> f.toString().endsWith(".java")).sorted().toList();
    }
    assertFalse(sources.isEmpty());
    assertEquals(List.of(), numbersIn(sources));
  }

  private static List<String> numbersIn(List<Path> sources) throws IOException {
    JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
    List<String> found = new ArrayList<>();
    try (StandardJavaFileManager files = compiler.getStandardFileManager(null, null, null)) {
      JavacTask task =
          (JavacTask)
              compiler.getTask(
                  null, files, null, null, null, files.getJavaFileObjectsFromPaths(sources));
      for (CompilationUnitTree unit : task.parse()) {
        String name = Path.of(unit.getSourceFile().getName()).getFileName().toString();
        unit.accept(
            new TreeScanner<@Nullable Void, @Nullable Void>() {
              @Override
              public @Nullable Void visitLiteral(LiteralTree literal, @Nullable Void nothing) {
                if (literal.getValue() instanceof Number number
                    && !ALLOWED.contains(number.doubleValue())) {
                  found.add(name + ": " + number);
                }
                return null;
              }
            },
            null);
      }
    }
    return found;
  }
}
