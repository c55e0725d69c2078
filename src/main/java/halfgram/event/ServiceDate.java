package halfgram.event;

import java.time.LocalDate;
import java.time.LocalTime;
import java.util.OptionalInt;

/**
 * A regular service on one date, when it slips or has other guests than usual.
 *
 * @param covers counted for this date; empty when nobody counts
 */
public record ServiceDate(
    LocalDate date, LocalTime start, LocalTime end, Curve curve, OptionalInt covers) {}
