/**
 * Who and what can work, when, and what it can hold: stations, people and shifts, machines,
 * containers. Refuses: to decide what is done where.
 */
@NullMarked
package halfgram.station;

import org.jspecify.annotations.NullMarked;
