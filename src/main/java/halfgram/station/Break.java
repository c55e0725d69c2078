package halfgram.station;

import java.time.Duration;
import java.time.LocalTime;

/** A pause of one person inside a shift, by the clock on the wall. */
public record Break(LocalTime start, Duration length) {}
