package halfgram.event;

import halfgram.measure.Ratio;

/** A dish on a menu: the share of the guests who get it and how many plates each. */
public record Share(String dish, Ratio share, int perCover) {}
