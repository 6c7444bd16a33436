package org.coilwright.behaviour;

import java.util.Optional;

/**
 * What the settings act on: the controlled load with its water, and the battery.
 *
 * @param loadWatts what the controlled load takes while contact and thermostat are closed
 * @param battery if there is one
 * @param water if the load heats any; without it the load takes its power whenever the contact is
 *     closed
 */
public record Plant(double loadWatts, Optional<Battery> battery, Optional<Water> water) {}
