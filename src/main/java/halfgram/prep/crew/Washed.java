package halfgram.prep.crew;

import java.time.Instant;

/**
 * A machine is washed by hand between two tasks; then it may dry.
 *
 * @param person code of whoever does it
 * @param after id of the task that was on it
 * @param before id of the task that needs it clean
 */
public record Washed(
    Placed.Unit unit, Instant from, Instant to, String person, String after, String before) {}
