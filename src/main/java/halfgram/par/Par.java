package halfgram.par;

import halfgram.formula.ComponentRef;
import halfgram.measure.Amount;
import java.time.DayOfWeek;
import java.util.Map;

/** What a regular service uses of a component, by weekday, in the component's own unit. */
public record Par(String service, ComponentRef component, Map<DayOfWeek, Amount> amounts) {}
