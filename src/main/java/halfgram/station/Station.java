package halfgram.station;

import halfgram.kitchen.Text;

/** A place in the kitchen with work of its own: cold, hot, pastry, pass. */
public record Station(String code, Text name) {}
