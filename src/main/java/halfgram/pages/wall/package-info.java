/**
 * The wall: what a cook sees on the tablet of a station, and the ticks entered there; the label of
 * a tub. Refuses: rules of the trade, which it only shows.
 */
@NullMarked
package halfgram.pages.wall;

import org.jspecify.annotations.NullMarked;
