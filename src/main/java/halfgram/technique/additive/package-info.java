/**
 * How much of an additive ends in the finished food, against published maxima. Refuses: to stand in
 * for the local code, to reckon an ingoing level without the raw weight, and to let anything above
 * a maximum pass.
 */
@NullMarked
package halfgram.technique.additive;

import org.jspecify.annotations.NullMarked;
