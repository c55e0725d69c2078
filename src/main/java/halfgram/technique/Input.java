package halfgram.technique;

import halfgram.measure.Standing;

/**
 * One input of a technique.
 *
 * @param unit in which its numbers are given
 * @param least and most: outside of them a number is refused
 * @param usual the default
 * @param standing how far the default can be believed
 * @param source where the default comes from, in words
 */
public record Input(
    String name,
    String unit,
    double least,
    double most,
    double usual,
    Standing standing,
    String source) {}
