package halfgram.ingredient;

import halfgram.measure.Ratio;
import halfgram.measure.Standing;

/** A value and where it comes from: entered in the book, or a reference row and its source. */
public record Stated(Ratio value, Standing standing, String source) {}
