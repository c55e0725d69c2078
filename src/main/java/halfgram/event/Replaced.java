package halfgram.event;

import halfgram.menu.Swap;

/** A swap in force for a service: in every course that has the dish. */
public record Replaced(String dish, Swap swap) {}
