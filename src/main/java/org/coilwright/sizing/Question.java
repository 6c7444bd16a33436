package org.coilwright.sizing;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.coilwright.netlist.Method;
import org.coilwright.netlist.Mounting;
import org.coilwright.netlist.Site;
import org.coilwright.quantity.Rating;
import org.coilwright.table.Cited;

/**
 * Which contactor for this load, in this place?
 *
 * @param title what is asked, in words
 * @param basis what the currents of the load rest on
 */
public record Question(
    String title,
    Load load,
    Place place,
    Laid wire,
    Supply supply,
    Service service,
    Drive drive,
    List<Cited<?>> basis) {

  /**
   * What is switched.
   *
   * @param nominal A at rated power and nominal voltage
   * @param worst A at the highest voltage and power
   * @param worstWords where {@code worst} is reached
   * @param volts nominal, line to line with several lines
   * @param wires conductors that carry its current: 2 or 3
   * @param poles poles that take every line, and the neutral of a two-wire load, off it
   * @param kind row word of the table of load categories
   * @param delta true if it is joined in delta
   */
  public record Load(
      double nominal,
      double worst,
      String worstWords,
      double volts,
      int wires,
      int poles,
      String kind,
      boolean delta) {
    Load withThirdOfPower() {
      return new Load(nominal / 3, worst / 3, worstWords, volts, wires, poles, kind, delta);
    }
  }

  /**
   * Where the contactor and the device before it stand.
   *
   * @param air °C around them
   * @param ratedAir °C the contactor's rating holds to; empty: the standard's
   * @param altitude m above the sea; empty: taken as within the normal service conditions
   */
  public record Place(
      double air, OptionalDouble ratedAir, Mounting mounting, OptionalDouble altitude) {
    boolean isClose() {
      return mounting == Mounting.SIDE_BY_SIDE;
    }

    Place in(double celsius) {
      return new Place(celsius, ratedAir, mounting, altitude);
    }

    Place spaced() {
      return new Place(air, ratedAir, Mounting.SPACED, altitude);
    }

    Place ratedFor(double celsius) {
      return new Place(air, OptionalDouble.of(celsius), mounting, altitude);
    }
  }

  /**
   * The wire to the load.
   *
   * @param air °C around it
   * @param metres its length, one way
   * @param core its metal and insulation
   */
  public record Laid(Method method, double air, OptionalDouble metres, Core core) {}

  /**
   * The mains.
   *
   * @param earthAlone true where the way back of an earth fault is the ground alone (TT)
   * @param faultAmps greatest current of a short-circuit, A
   * @param loopOhms impedance of the loop of an earth fault, Ω
   */
  public record Supply(
      Site.Practice practice,
      boolean earthAlone,
      OptionalDouble faultAmps,
      OptionalDouble loopOhms) {
    boolean isNec() {
      return practice == Site.Practice.NEC;
    }

    double hertz() {
      return isNec() ? 60 : 50;
    }
  }

  /**
   * How much it is asked to do.
   *
   * @param startsPerDay empty if life is not asked
   * @param years it shall last
   * @param life cycles of one closing and one opening, at a current, from the data sheet
   */
  public record Service(
      OptionalDouble startsPerDay, double years, Duty duty, Optional<Rating> life) {}

  /**
   * What closes it.
   *
   * @param outputs the contacts that shall drive the coil, all of them in its way
   * @param coil its coil, if that is given; else one of a usual size
   */
  public record Drive(List<Output> outputs, Optional<Coil> coil) {}

  /**
   * A contact that shall drive the coil.
   *
   * @param name how it is spoken of: {@code the output}
   * @param rating current, and the voltage it is rated at; empty if none is written
   * @param category utilization category of the rating; empty text if it is not said
   */
  public record Output(String name, Optional<Rating> rating, String category) {}

  /**
   * The contactor's coil.
   *
   * @param volts nominal
   * @param direct true on direct voltage, where it draws the same while it pulls in and holds
   * @param holding VA while it holds, W on direct voltage; 0 if that is not written
   * @param pickUp VA while it pulls in; empty if it is not known
   */
  public record Coil(double volts, boolean direct, double holding, OptionalDouble pickUp) {}

  /** The same in other air. */
  public Question inAir(double celsius) {
    return with(place.in(celsius));
  }

  /** The same with a gap on both sides. */
  public Question spaced() {
    return with(place.spaced());
  }

  /** The same for a contactor whose rating holds in warmer air. */
  public Question ratedFor(double celsius) {
    return with(place.ratedFor(celsius));
  }

  /** The same with a third of the power: a delta joined in star. */
  public Question inStar() {
    return new Question(title, load.withThirdOfPower(), place, wire, supply, service, drive, basis);
  }

  private Question with(Place other) {
    return new Question(title, load, other, wire, supply, service, drive, basis);
  }
}
