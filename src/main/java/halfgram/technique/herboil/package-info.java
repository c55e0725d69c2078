/**
 * Blanched herb blended with oil and strained: oil, yields, waits, and how long it may be kept.
 * Refuses: room temperature without a tested acid and its pH, and a date later than the fourth day.
 */
@NullMarked
package halfgram.technique.herboil;

import org.jspecify.annotations.NullMarked;
