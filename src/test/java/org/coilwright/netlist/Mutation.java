package org.coilwright.netlist;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Small damage to a text, as slips, transfers and bad intent do it. */
final class Mutation {
  private Mutation() {}

  static byte[] of(byte[] bytes, Random random) {
    return switch (random.nextInt(6)) {
      case 0 -> flipped(bytes, random);
      case 1 -> lines(bytes, random, true);
      case 2 -> lines(bytes, random, false);
      case 3 -> tokensSwapped(bytes, random);
      case 4 -> signInserted(bytes, random);
      default -> cut(bytes, random);
    };
  }

  private static byte[] flipped(byte[] bytes, Random random) {
    byte[] copy = bytes.clone();
    if (copy.length > 0) {
      copy[random.nextInt(copy.length)] ^= (byte) (1 << random.nextInt(8));
    }
    return copy;
  }

  private static byte[] lines(byte[] bytes, Random random, boolean delete) {
    List<String> lines = new ArrayList<>(List.of(text(bytes).split("\n", -1)));
    int from = random.nextInt(lines.size());
    if (delete) {
      lines.remove(from);
    } else {
      lines.add(random.nextInt(lines.size()), lines.get(from));
    }
    return String.join("\n", lines).getBytes(StandardCharsets.UTF_8);
  }

  private static byte[] tokensSwapped(byte[] bytes, Random random) {
    String[] tokens = text(bytes).split("(?<=[\\s,:\\[\\]{}.])", -1);
    int one = random.nextInt(tokens.length);
    int other = random.nextInt(tokens.length);
    String kept = tokens[one];
    tokens[one] = tokens[other];
    tokens[other] = kept;
    return String.join("", tokens).getBytes(StandardCharsets.UTF_8);
  }

  private static byte[] signInserted(byte[] bytes, Random random) {
    String signs = "[]{}:,-?&*!|>'\"%@`#\t\n ~<=0.()±²Ω\u00a0";
    String text = text(bytes);
    int at = random.nextInt(text.length() + 1);
    int sign = random.nextInt(signs.length());
    String mutated = text.substring(0, at) + signs.charAt(sign) + text.substring(at);
    return mutated.getBytes(StandardCharsets.UTF_8);
  }

  /** Seldom the rest of the file, mostly a few characters. */
  private static byte[] cut(byte[] bytes, Random random) {
    String text = text(bytes);
    int from = random.nextInt(text.length() + 1);
    int length = random.nextInt(20) == 0 ? text.length() : random.nextInt(8);
    int to = Math.min(text.length(), from + length);
    return (text.substring(0, from) + text.substring(to)).getBytes(StandardCharsets.UTF_8);
  }

  private static String text(byte[] bytes) {
    return new String(bytes, StandardCharsets.UTF_8);
  }
}
