package org.coilwright.behaviour;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.coilwright.behaviour.Battery.Settling;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.ODEStateAndDerivative;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.junit.jupiter.api.Test;

/** The steps of the rehearsal against a library that integrates differential equations. */
class IntegratorTest {
  private static final double HEAT_CAPACITY = 4186;
  private static final double SECONDS = 3600;
  private static final int STEP_MILLIS = 100;

  /**
   * Battery with first-order settling, its level, exported energy and water under sun that swings
   * and a load that is always on.
   */
  private record Case(
      double sun,
      double swing,
      double period,
      double house,
      double load,
      double settles,
      Water water)
      implements OrdinaryDifferentialEquation {
    static Case of(Random random) {
      double load = 500 + random.nextInt(4000);
      Water water =
          new Water(
              100 + random.nextInt(300),
              10 + random.nextInt(20),
              99,
              5,
              random.nextInt(10),
              15 + random.nextInt(10),
              List.of(),
              HEAT_CAPACITY);
      return new Case(
          2000 + random.nextInt(4000),
          1000,
          200 + random.nextInt(2000),
          200 + random.nextInt(2000),
          load,
          6 + random.nextInt(100),
          water);
    }

    double pv(double t) {
      return sun + swing * Math.sin(2 * Math.PI * t / period);
    }

    @Override
    public int getDimension() {
      return 4;
    }

    /** Battery power, W; taken from the battery, Ws; export less import, Ws; water, °C. */
    @Override
    public double[] computeDerivatives(double t, double[] y) {
      double net = house + load - pv(t);
      double tau = settles / 3;
      return new double[] {
        (net - y[0]) / tau,
        y[0],
        y[0] - net,
        (load - water.lossWattsPerKelvin() * (y[3] - water.roomCelsius()))
            / (water.litres() * HEAT_CAPACITY)
      };
    }
  }

  @Test
  void ten_cases_agree_with_an_integrator() {
    Random random = new Random(77);
    for (int i = 0; i < 10; i++) {
      Case c = Case.of(random);
      ODEStateAndDerivative end =
          new DormandPrince853Integrator(1e-6, 1, 1e-9, 1e-9)
              .integrate(
                  c, new ODEState(0, new double[] {0, 0, 0, c.water().startCelsius()}), SECONDS);
      double[] y = end.getPrimaryState();

      Battery battery = new Battery(1e6, 1e5, 1e5, c.settles(), Settling.FIRST_ORDER, 0, 0.5);
      Plant plant = new Plant(c.load(), Optional.of(battery), Optional.of(c.water()));
      Settings always =
          new Settings(
              OptionalDouble.empty(),
              0,
              OptionalDouble.empty(),
              0,
              OptionalDouble.empty(),
              0,
              OptionalDouble.empty(),
              List.of(new Settings.Window(0, 86_400)));
      // the power in the middle of each row stands for the row
      double half = STEP_MILLIS / 2000.0;
      Columns columns = Columns.of(STEP_MILLIS, SECONDS, t -> c.pv(t + half), t -> c.house());
      double[] last = new double[2];
      Tally tally =
          Rehearsal.run(
              columns,
              plant,
              always,
              (step, on, load, given, grid, level, temp) -> {
                last[0] = given;
                last[1] = temp;
              });
      String which = "case " + i + " " + c;
      assertEquals(y[0], last[0], 1.5, which);
      assertEquals(y[1] / 3600, tally.dischargeWh() - tally.chargeWh(), 0.1, which);
      assertEquals(y[2] / 3600, tally.exportWh() - tally.importWh(), 0.1, which);
      assertEquals(y[3], last[1], 1e-4, which);
    }
  }
}
