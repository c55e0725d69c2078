package halfgram.lot;

import halfgram.measure.Amount;

/** Part of a tub kept for one event. */
public record Reservation(String event, Amount amount) {}
