/**
 * What is bought: density, trim per cut, allergens, look-alikes, packs and prices, and how a mass
 * of it is weighed on the scales there are. Refuses: to guess a density.
 */
@NullMarked
package halfgram.ingredient;

import org.jspecify.annotations.NullMarked;
