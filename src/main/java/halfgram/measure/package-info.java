/**
 * Values the kitchen counts in: masses, volumes, pieces, ratios, money, temperatures, times. Exact
 * at rest, 34 digits in flight, and every rounding has a name. Refuses: anything but the JDK, and
 * any number whose unit is not in its type.
 */
@NullMarked
package halfgram.measure;

import org.jspecify.annotations.NullMarked;
