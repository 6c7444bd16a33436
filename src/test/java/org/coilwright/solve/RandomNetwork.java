package org.coilwright.solve;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;

/** A network as data, so that it can be solved, taken apart, renumbered and solved again. */
final class RandomNetwork {
  record Arm(int from, int to, Impedance z, double eRe, double eIm) {}

  record Fixed(int node, double re, double im) {}

  final int nodes;
  final List<Arm> arms = new ArrayList<>();
  final List<Fixed> fixed = new ArrayList<>();

  private RandomNetwork(int nodes) {
    this.nodes = nodes;
  }

  /** Milliohms to megohms, as wires, contacts, coils and leaking contacts are. */
  static RandomNetwork of(Random random, boolean direct) {
    return of(random, direct, 2 + random.nextInt(25));
  }

  /** The same with a given number of nodes. */
  static RandomNetwork of(Random random, boolean direct, int nodes) {
    RandomNetwork net = new RandomNetwork(nodes);
    int arms = net.nodes / 2 + random.nextInt(2 * net.nodes);
    for (int i = 0; i < arms; i++) {
      double size = Math.pow(10, -3 + 8 * random.nextDouble());
      double angle = direct ? 0 : (random.nextDouble() - 0.5) * 3;
      boolean source = random.nextInt(5) == 0;
      net.arms.add(
          new Arm(
              random.nextInt(net.nodes),
              random.nextInt(net.nodes),
              new Impedance(size * Math.cos(angle), size * Math.sin(angle)),
              source ? 24 * random.nextDouble() : 0,
              source && !direct ? 24 * random.nextDouble() : 0));
    }
    int known = random.nextInt(4);
    for (int i = 0; i < known; i++) {
      int node = random.nextInt(net.nodes);
      if (net.fixed.stream().noneMatch(f -> f.node() == node)) {
        net.fixed.add(
            new Fixed(node, 230 * random.nextDouble(), direct ? 0 : 230 * random.nextDouble()));
      }
    }
    return net;
  }

  Network.Flow solve() {
    return build().solve(arms.size());
  }

  Network build() {
    Network network = new Network(nodes, arms.size());
    fixed.forEach(f -> network.fix(f.node(), f.re(), f.im()));
    for (int i = 0; i < arms.size(); i++) {
      Arm arm = arms.get(i);
      network.add(i, arm.from(), arm.to(), arm.z(), arm.eRe(), arm.eIm());
    }
    return network;
  }

  /** Only the source with this number gives anything: arms first, then known potentials. */
  RandomNetwork alone(int source) {
    RandomNetwork net = new RandomNetwork(nodes);
    for (int i = 0; i < arms.size(); i++) {
      Arm arm = arms.get(i);
      net.arms.add(i == source ? arm : new Arm(arm.from(), arm.to(), arm.z(), 0, 0));
    }
    for (int i = 0; i < fixed.size(); i++) {
      Fixed f = fixed.get(i);
      net.fixed.add(arms.size() + i == source ? f : new Fixed(f.node(), 0, 0));
    }
    return net;
  }

  /** The same network with other numbers; {@code order} takes a new node to the old one. */
  RandomNetwork renumbered(List<Integer> order, List<Integer> armOrder) {
    RandomNetwork net = new RandomNetwork(nodes);
    for (int i : armOrder) {
      Arm arm = arms.get(i);
      net.arms.add(
          new Arm(
              order.indexOf(arm.from()), order.indexOf(arm.to()), arm.z(), arm.eRe(), arm.eIm()));
    }
    fixed.forEach(f -> net.fixed.add(new Fixed(order.indexOf(f.node()), f.re(), f.im())));
    return net;
  }

  static List<Integer> shuffled(int size, Random random) {
    List<Integer> order = new ArrayList<>();
    for (int i = 0; i < size; i++) {
      order.add(i);
    }
    Collections.shuffle(order, random);
    return order;
  }
}
