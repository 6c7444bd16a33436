package org.coilwright.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Enumeration;
import java.util.List;
import java.util.jar.JarEntry;
import java.util.jar.JarFile;
import org.junit.jupiter.api.Test;

/** What the build did ahead of each start is in the jar, all of it and of these very sources. */
class LinkedAheadIT {
  private static final String JAR = "target/coilwright.jar";
  private static final String TABLES = "tables/";
  private static final String YAML = ".yaml";

  private static List<JarEntry> entries(JarFile jar, String ending) {
    List<JarEntry> found = new ArrayList<>();
    for (Enumeration<JarEntry> all = jar.entries(); all.hasMoreElements(); ) {
      JarEntry entry = all.nextElement();
      if (entry.getName().endsWith(ending)) {
        found.add(entry);
      }
    }
    return found;
  }

  private static byte[] bytes(JarFile jar, JarEntry entry) throws IOException {
    return jar.getInputStream(entry).readAllBytes();
  }

  @Test
  void no_lambda_is_left_to_be_linked_at_each_start() throws IOException {
    try (JarFile jar = new JarFile(JAR)) {
      List<String> linking = new ArrayList<>();
      long made = 0;
      for (JarEntry entry : entries(jar, ".class")) {
        made += entry.getName().contains("$$L") ? 1 : 0;
        String text = new String(bytes(jar, entry), StandardCharsets.ISO_8859_1);
        if (text.contains("java/lang/invoke/LambdaMetafactory")) {
          linking.add(entry.getName());
        }
      }
      assertEquals(List.of(), linking);
      assertTrue(made > 1000, "lambdas: " + made);
    }
  }

  @Test
  void every_table_is_in_the_pack_as_it_is_in_its_file() throws IOException {
    try (JarFile jar = new JarFile(JAR)) {
      TablePack pack = new TablePack(bytes(jar, jar.getJarEntry("tables.pack")));
      int tables = 0;
      for (JarEntry entry : entries(jar, YAML)) {
        if (entry.getName().startsWith(TABLES)) {
          tables++;
          String name =
              entry.getName().substring(TABLES.length(), entry.getName().length() - YAML.length());
          String text = new String(bytes(jar, entry), StandardCharsets.UTF_8);
          assertEquals(TableReader.parse(text), pack.document(name), name);
        }
      }
      assertTrue(tables > 30, "tables: " + tables);
    }
  }
}
