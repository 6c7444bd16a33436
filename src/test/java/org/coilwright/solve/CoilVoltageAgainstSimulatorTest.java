package org.coilwright.solve;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.coilwright.ngspice.Deck;
import org.coilwright.ngspice.Simulator;
import org.coilwright.quantity.ConductorSize;
import org.coilwright.table.ConductorTable;
import org.coilwright.table.Tables;
import org.junit.jupiter.api.Test;

/**
 * Direct voltage at one or two coils behind a supply, a line there and back and a contact:
 * tabulated conductors, copper law and divider against a circuit simulator.
 */
class CoilVoltageAgainstSimulatorTest {
  private static final int CIRCUITS = 12;
  private final Tables tables = Tables.load();

  @Test
  void the_voltage_at_the_coil_agrees_for_a_dozen_circuits() {
    CopperLaw copper = CopperLaw.from(tables);
    ConductorTable conductors = new ConductorTable(tables);
    double contact = tables.figure("coil.contact-resistance").value();
    Random random = new Random(7);
    List<Deck> decks = new ArrayList<>();
    Map<String, Double> expected = new LinkedHashMap<>();
    for (int i = 0; i < CIRCUITS; i++) {
      double supply = List.of(12.0, 20.4, 24.0, 28.8).get(random.nextInt(4));
      double mm2 = List.of(0.5, 0.75, 1.0, 1.5).get(random.nextInt(4));
      double metres = 1 + 200 * random.nextDouble();
      double air = -10 + 70 * random.nextDouble();
      double coilCold = 100 + 2000 * random.nextDouble();
      double second = i % 2 == 0 ? 0 : 100 + 2000 * random.nextDouble();
      double internal = random.nextDouble();
      LineResistance line =
          new LineResistance(
              copper, conductors.ohmPerKm(ConductorSize.ofMm2(mm2), true).orElseThrow());
      double coil = copper.at(coilCold, 20, air);
      double load = second == 0 ? coil : 1 / (1 / coil + 1 / second);
      String name = "coil " + i;
      expected.put(
          name,
          SupplyDemand.dividedVolts(supply, load, internal + contact + 2 * line.ohms(metres, air)));

      // The simulator scales the resistances itself, from 20 °C by its own coefficient.
      String warmed = " tc1=" + Deck.number(copper.coefficient(20)) + " temp=" + Deck.number(air);
      double ohms = line.ohmPerKilometre().value() * metres / 1000;
      List<String> elements = new ArrayList<>();
      elements.add(".options tnom=20");
      elements.add("V1 s 0 DC " + Deck.number(supply));
      elements.add("Ri s o " + Deck.number(internal));
      elements.add("Rk o k " + Deck.number(contact));
      elements.add("Rl1 k a " + Deck.number(ohms) + warmed);
      elements.add("Rc a b " + Deck.number(coilCold) + warmed);
      if (second != 0) {
        elements.add("Rd a b " + Deck.number(second));
      }
      elements.add("Rl2 b 0 " + Deck.number(ohms) + warmed);
      decks.add(Deck.operatingPoint(name, elements, List.of("v(a)-v(b)")));
    }
    Map<String, Map<String, Double>> answers = Simulator.recordedIn("coil-voltage").answers(decks);
    assertEquals(CIRCUITS, answers.size());
    expected.forEach(
        (name, volts) ->
            assertEquals(
                volts,
                answers.getOrDefault(name, Map.of()).getOrDefault("v(a)-v(b)", Double.NaN),
                1e-6 * volts,
                name));
  }
}
