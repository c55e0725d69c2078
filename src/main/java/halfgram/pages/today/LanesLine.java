package halfgram.pages.today;

import halfgram.desk.CrewPlans;
import halfgram.prep.crew.CrewDifference;
import halfgram.words.Messages;
import java.util.ArrayList;
import java.util.List;

/**
 * What who does what when would be from now on.
 *
 * @param said how many tasks it moves
 * @param parts what it does to them, part by part
 * @param number of the crew plan in force
 * @param mark of what it was worked out from
 */
record LanesLine(String said, List<String> parts, int number, String mark) {

  static LanesLine of(Shown shown, CrewPlans.Proposal proposal) {
    CrewDifference by = proposal.difference();
    Messages words = shown.words();
    int count = by.count();
    List<String> parts = new ArrayList<>();
    add(parts, words, "today.lanes-moved", by.moved().size());
    add(parts, words, "today.lanes-given", by.given().size());
    add(parts, words, "today.lanes-added", by.added().size());
    add(parts, words, "today.lanes-left-out", by.leftOut().size());
    add(parts, words, "today.lanes-over", by.over().size());
    return new LanesLine(
        count == 1 ? words.say("today.lanes-one") : words.say("today.lanes-many", count),
        parts,
        proposal.seen().number(),
        proposal.seen().mark());
  }

  private static void add(List<String> parts, Messages words, String key, int count) {
    if (count > 0) {
      parts.add(words.say(key, count));
    }
  }
}
