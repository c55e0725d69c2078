package halfgram.station;

import halfgram.measure.Amount;

/**
 * A place where tubs stand and how much goes into it.
 *
 * @param name as holds name it: "walk-in"
 */
public record Place(String name, Amount volume) {}
