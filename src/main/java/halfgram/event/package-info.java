/**
 * Who comes and when: events, services, courses and pick-ups, covers, buffer, diets. Refuses: to
 * know what a dish is made of.
 */
@NullMarked
package halfgram.event;

import org.jspecify.annotations.NullMarked;
