/**
 * Projects of activities with lags and renewable resources, as the scheduling literature states
 * them (RCPSP and RCPSP/max): reading the standard texts, longest paths with their reasons, why a
 * project cannot be scheduled, and an anytime search for a short schedule. Refuses: to know of
 * kitchens, cooks and clocks; to draw a random number without a seed.
 */
@NullMarked
package halfgram.prep.schedule.project;

import org.jspecify.annotations.NullMarked;
