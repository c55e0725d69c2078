/**
 * Green herbs and vegetables dipped in boiling salted water and cooled in ice: how much water, how
 * far the boil drops, how much ice. Refuses: to know how strong a stove is.
 */
@NullMarked
package halfgram.technique.blanch;

import org.jspecify.annotations.NullMarked;
