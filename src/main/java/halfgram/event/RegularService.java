package halfgram.event;

import halfgram.kitchen.Text;
import java.time.DayOfWeek;
import java.time.LocalTime;
import java.util.Map;
import java.util.SortedSet;

/**
 * A service the kitchen runs every week; planned from pars.
 *
 * @param covers usual covers by weekday, shown and not planned from
 */
public record RegularService(
    String code,
    Text name,
    SortedSet<DayOfWeek> days,
    LocalTime start,
    LocalTime end,
    Curve curve,
    Map<DayOfWeek, Integer> covers) {}
