package org.coilwright.solve;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class NetworkTest {
  private static final int ROUNDS = 2000;
  private static final double SMALL = 1e-9;

  /**
   * What rounding leaves of a current where none should flow, or where a milliohm divides a
   * difference of potentials of 230 V: amperes.
   */
  private static final double ROUNDING = 1e-10;

  @Test
  void currents_sum_to_nothing_at_every_free_node() {
    Random random = new Random(1);
    for (int round = 0; round < ROUNDS; round++) {
      RandomNetwork net = RandomNetwork.of(random, round % 2 == 0);
      Network.Flow flow = net.solve();
      for (int n = 0; n < net.nodes; n++) {
        int node = n;
        if (net.fixed.stream().anyMatch(f -> f.node() == node)) {
          continue;
        }
        double re = 0;
        double im = 0;
        double size = 0;
        for (int i = 0; i < net.arms.size(); i++) {
          RandomNetwork.Arm arm = net.arms.get(i);
          int sign = (arm.from() == n ? 1 : 0) - (arm.to() == n ? 1 : 0);
          re += sign * flow.iRe[i];
          im += sign * flow.iIm[i];
          size += Math.abs(sign) * flow.amps(i);
        }
        assertTrue(
            Math.hypot(re, im) <= SMALL * size + 1e-12,
            "node " + n + " of round " + round + ": " + re);
      }
    }
  }

  @Test
  void every_branch_obeys_its_own_law() {
    Random random = new Random(2);
    for (int round = 0; round < ROUNDS; round++) {
      RandomNetwork net = RandomNetwork.of(random, round % 2 == 0);
      Network.Flow flow = net.solve();
      for (int i = 0; i < net.arms.size(); i++) {
        RandomNetwork.Arm arm = net.arms.get(i);
        double re =
            flow.vRe[arm.from()]
                - flow.vRe[arm.to()]
                + arm.eRe()
                - arm.z().re() * flow.iRe[i]
                + arm.z().im() * flow.iIm[i];
        double im =
            flow.vIm[arm.from()]
                - flow.vIm[arm.to()]
                + arm.eIm()
                - arm.z().re() * flow.iIm[i]
                - arm.z().im() * flow.iRe[i];
        assertTrue(Math.hypot(re, im) <= SMALL * 230, "arm " + i + " of round " + round);
      }
    }
  }

  @Test
  void what_the_sources_give_the_resistances_take() {
    Random random = new Random(3);
    for (int round = 0; round < ROUNDS; round++) {
      RandomNetwork net = RandomNetwork.of(random, round % 2 == 0);
      Network.Flow flow = net.solve();
      double given = 0;
      double taken = 0;
      double size = 0;
      for (int i = 0; i < net.arms.size(); i++) {
        RandomNetwork.Arm arm = net.arms.get(i);
        double source = arm.eRe() * flow.iRe[i] + arm.eIm() * flow.iIm[i];
        double heat = arm.z().re() * flow.amps(i) * flow.amps(i);
        given += source;
        taken += heat;
        size += Math.abs(source) + heat;
        for (RandomNetwork.Fixed f : net.fixed) {
          int sign = (arm.from() == f.node() ? 1 : 0) - (arm.to() == f.node() ? 1 : 0);
          double power = sign * (f.re() * flow.iRe[i] + f.im() * flow.iIm[i]);
          given += power;
          size += Math.abs(power);
        }
      }
      assertEquals(given, taken, SMALL * size + 1e-12);
    }
  }

  @Test
  void sources_add_up() {
    Random random = new Random(4);
    for (int round = 0; round < 300; round++) {
      RandomNetwork net = RandomNetwork.of(random, round % 2 == 0);
      Network.Flow whole = net.solve();
      double[] sum = new double[net.arms.size()];
      double most = 0;
      for (int s = 0; s < net.arms.size() + net.fixed.size(); s++) {
        Network.Flow part = net.alone(s).solve();
        for (int i = 0; i < sum.length; i++) {
          sum[i] += part.iRe[i];
          most = Math.max(most, part.amps(i));
        }
      }
      for (int i = 0; i < sum.length; i++) {
        assertEquals(sum[i], whole.iRe[i], SMALL * most + ROUNDING);
      }
    }
  }

  @Test
  void other_numbers_change_nothing() {
    Random random = new Random(5);
    for (int round = 0; round < ROUNDS; round++) {
      RandomNetwork net = RandomNetwork.of(random, round % 2 == 0);
      List<Integer> nodes = RandomNetwork.shuffled(net.nodes, random);
      List<Integer> arms = RandomNetwork.shuffled(net.arms.size(), random);
      Network.Flow one = net.solve();
      Network.Flow other = net.renumbered(nodes, arms).solve();
      double most = 0;
      for (int i = 0; i < arms.size(); i++) {
        most = Math.max(most, one.amps(i));
      }
      for (int i = 0; i < arms.size(); i++) {
        int old = arms.get(i);
        assertEquals(one.iRe[old], other.iRe[i], SMALL * most + ROUNDING);
        assertEquals(one.iIm[old], other.iIm[i], SMALL * most + ROUNDING);
      }
    }
  }

  /** Large enough that the equations are kept sparse. */
  @Test
  void a_large_network_obeys_the_same_laws() {
    Random random = new Random(7);
    for (int round = 0; round < 40; round++) {
      RandomNetwork net = RandomNetwork.of(random, round % 2 == 0, 150 + random.nextInt(400));
      Network.Flow flow = net.solve();
      double[] re = new double[net.nodes];
      double[] im = new double[net.nodes];
      double[] size = new double[net.nodes];
      for (int i = 0; i < net.arms.size(); i++) {
        RandomNetwork.Arm arm = net.arms.get(i);
        re[arm.from()] += flow.iRe[i];
        re[arm.to()] -= flow.iRe[i];
        im[arm.from()] += flow.iIm[i];
        im[arm.to()] -= flow.iIm[i];
        size[arm.from()] += flow.amps(i);
        size[arm.to()] += flow.amps(i);
        double lawRe =
            flow.vRe[arm.from()]
                - flow.vRe[arm.to()]
                + arm.eRe()
                - arm.z().re() * flow.iRe[i]
                + arm.z().im() * flow.iIm[i];
        assertEquals(0, lawRe, SMALL * 230, "arm " + i + " of round " + round);
      }
      for (int n = 0; n < net.nodes; n++) {
        int node = n;
        if (net.fixed.stream().noneMatch(f -> f.node() == node)) {
          assertEquals(0, Math.hypot(re[n], im[n]), SMALL * size[n] + 1e-12, "node " + n);
        }
      }
    }
  }

  /**
   * A line with a load at every clamp has a voltage in closed form: a sum of two geometric series.
   */
  @Test
  void a_long_ladder_has_the_voltage_that_its_recurrence_gives() {
    int rungs = 20_000;
    double line = 0.01;
    double load = 10_000;
    Network net = new Network(rungs + 2, 2 * rungs);
    net.fix(0, 0, 0);
    net.fix(1, 24, 0);
    for (int i = 0; i < rungs; i++) {
      net.add(2 * i, i + 1, i + 2, Impedance.ohms(line), 0, 0);
      net.add(2 * i + 1, i + 2, 0, Impedance.ohms(load), 0, 0);
    }
    Network.Flow flow = net.solve(2 * rungs);
    // V(n-1) - 2 V(n) + V(n+1) = (line/load) V(n): growth by one root per clamp, mirrored at the
    // end.
    double half = line / load / 2;
    double root = 1 + half + Math.sqrt(half * (2 + half));
    double at = 5000;
    double ratio =
        (Math.pow(root, rungs - at + 0.5) + Math.pow(root, -(rungs - at + 0.5)))
            / (Math.pow(root, rungs + 0.5) + Math.pow(root, -(rungs + 0.5)));
    assertEquals(24 * ratio, flow.vRe[1 + (int) at], 1e-9);
  }

  /** The whole set of equations at once, by plain elimination with full pivoting. */
  @Test
  void a_plain_second_solver_finds_the_same() {
    Random random = new Random(6);
    for (int round = 0; round < 400; round++) {
      RandomNetwork net = RandomNetwork.of(random, true);
      Network.Flow flow = net.solve();
      double[] plain = PlainTableau.currents(net);
      double most = 0;
      for (int i = 0; i < plain.length; i++) {
        most = Math.max(most, Math.abs(plain[i]));
      }
      for (int i = 0; i < plain.length; i++) {
        assertEquals(
            plain[i], flow.iRe[i], SMALL * most + ROUNDING, "arm " + i + " round " + round);
      }
    }
  }

  @Test
  void a_part_that_hangs_on_nothing_is_told_apart_and_carries_no_current() {
    Network net = new Network(4, 2);
    net.fix(0, 24, 0);
    net.add(0, 0, 1, Impedance.ohms(10), 0, 0);
    net.add(1, 2, 3, Impedance.ohms(10), 0, 0);
    Network.Flow flow = net.solve(2);
    assertEquals(24, flow.vRe[1]);
    assertTrue(flow.grounded[1]);
    assertTrue(!flow.grounded[2] && !flow.grounded[3]);
    assertEquals(0, flow.amps(1));
  }
}
