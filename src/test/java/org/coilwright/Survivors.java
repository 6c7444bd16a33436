package org.coilwright;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * Lays the mutants that no test killed beside the list of those that are known: {@code mvn -Ppit}.
 * A line of the list is a class, a method, a mutation and how many of it live; lines of source are
 * left out, for they move. The list may only become shorter; a class that is new to it is taken in,
 * and one that was mended struck, with {@code -Daccept=true}.
 */
public final class Survivors {
  private static final int CLASS = 1;
  private static final int MUTATION = 2;
  private static final int METHOD = 3;
  private static final int STATUS = 5;

  /** Behind the name of each class that the list knows. */
  private static final String SEEN = " - -";

  private final Map<String, Integer> alive = new TreeMap<>();
  private final Map<String, int[]> killedOf = new TreeMap<>();

  private Survivors(List<String> rows) {
    for (String row : rows) {
      String[] cells = row.split(",", -1);
      String type = cells[CLASS].replaceFirst("^org\\.coilwright\\.", "");
      int[] killed = killedOf.computeIfAbsent(outer(type), k -> new int[2]);
      killed[1]++;
      if (cells[STATUS].equals("SURVIVED") || cells[STATUS].equals("NO_COVERAGE")) {
        String mutation = cells[MUTATION].replaceFirst("^.*\\.", "").replaceFirst("Mutator$", "");
        alive.merge(type + " " + cells[METHOD] + " " + mutation, 1, Integer::sum);
      } else {
        killed[0]++;
      }
    }
  }

  private static String outer(String type) {
    return type.replaceFirst("[$ ].*", "");
  }

  /** Arguments: PIT's table, the list, and true to write it anew for the classes in the table. */
  public static void main(String[] args) throws IOException {
    Survivors now = new Survivors(Files.readAllLines(Path.of(args[0])));
    Path list = Path.of(args[1]);
    Map<String, Integer> known = new TreeMap<>();
    for (String line : Files.exists(list) ? Files.readAllLines(list) : List.<String>of()) {
      if (!line.startsWith("#") && !line.isBlank()) {
        int last = line.lastIndexOf(' ');
        known.put(line.substring(0, last), Integer.valueOf(line.substring(last + 1)));
      }
    }
    now.tell();
    List<String> more = now.moreThan(known);
    List<String> fewer = now.fewerThan(known);
    more.forEach(m -> System.out.println("no test sees: " + m));
    fewer.forEach(f -> System.out.println("killed by now: " + f));
    Set<String> fresh = new TreeSet<>(now.killedOf.keySet());
    known.keySet().forEach(k -> fresh.remove(outer(k)));
    fresh.forEach(f -> System.out.println("new to the list: " + f));
    if (args.length > 2 && args[2].equals("true") && more.isEmpty()) {
      known.keySet().removeIf(k -> now.killedOf.containsKey(outer(k)));
      known.putAll(now.alive);
      now.killedOf.keySet().forEach(type -> known.put(type + SEEN, 0));
      List<String> lines = new ArrayList<>();
      lines.add(
          "# Mutants that no test sees: class, method, mutation, how many; see the profile pit");
      known.forEach((mutant, count) -> lines.add(mutant + " " + count));
      Files.write(list, lines);
    } else if (!more.isEmpty() || !fewer.isEmpty() || !fresh.isEmpty()) {
      System.exit(1);
    }
  }

  private void tell() {
    Map<String, int[]> byPackage = new TreeMap<>();
    killedOf.forEach(
        (type, killed) -> {
          int[] sum =
              byPackage.computeIfAbsent(type.replaceFirst("\\.[A-Z].*", ""), k -> new int[2]);
          sum[0] += killed[0];
          sum[1] += killed[1];
          System.out.printf("%4d of %4d killed in %s%n", killed[0], killed[1], type);
        });
    byPackage.forEach(
        (name, sum) ->
            System.out.printf(
                "%4d of %4d killed in %s: %d %%%n", sum[0], sum[1], name, 100 * sum[0] / sum[1]));
  }

  /** What lives beyond the list, in classes that it knows. */
  private List<String> moreThan(Map<String, Integer> known) {
    Set<String> classes = new TreeSet<>();
    known.keySet().forEach(k -> classes.add(outer(k)));
    List<String> more = new ArrayList<>();
    alive.forEach(
        (mutant, count) -> {
          if (classes.contains(outer(mutant)) && count > known.getOrDefault(mutant, 0)) {
            more.add(mutant + " " + count + ", known " + known.getOrDefault(mutant, 0));
          }
        });
    return more;
  }

  private List<String> fewerThan(Map<String, Integer> known) {
    List<String> fewer = new ArrayList<>();
    known.forEach(
        (mutant, count) -> {
          if (killedOf.containsKey(outer(mutant)) && count > alive.getOrDefault(mutant, 0)) {
            fewer.add(mutant + " " + alive.getOrDefault(mutant, 0) + ", known " + count);
          }
        });
    return fewer;
  }
}
