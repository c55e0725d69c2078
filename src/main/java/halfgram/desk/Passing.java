package halfgram.desk;

import halfgram.prep.Difference;

/**
 * What a proposal changes, in two steps: as the day has gone on, and by what was entered in the
 * book since the plan in force was made.
 *
 * @param byTime what would change were the book still the plan's: the hour, what was done and what
 *     is on hand
 * @param byEntries what the book of now changes beyond that
 */
public record Passing(Difference byTime, Difference byEntries) {

  public static Passing of(Plans plans, House house, InForce inForce, Plans.Proposal proposal) {
    Plans.Proposal same = plans.propose(house, inForce, inForce.book());
    return new Passing(
        same.difference(),
        Difference.of(same.book(), same.sheet(), proposal.book(), proposal.sheet()));
  }
}
