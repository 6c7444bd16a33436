package org.coilwright.quantity;

import java.util.Optional;

/**
 * A value that holds under a condition, as trade data states it: {@code 16 A at 250 V}, {@code 70 %
 * at 20 °C}, {@code 50000 at 16 A}, {@code 8 x for 5 s}, {@code 1.6 W per pole}.
 *
 * @param amount what is rated
 * @param at the condition it holds at, if one is written
 * @param perPole true for {@code … per pole}
 */
public record Rating(Quantity amount, Optional<Quantity> at, boolean perPole) {}
