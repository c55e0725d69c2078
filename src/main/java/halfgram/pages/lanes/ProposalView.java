package halfgram.pages.lanes;

import halfgram.desk.CrewPlans;
import halfgram.kitchen.Text;
import halfgram.menu.Dish;
import halfgram.prep.crew.CrewDifference;
import halfgram.prep.crew.Placed;
import halfgram.prep.crew.Plated;
import halfgram.words.Messages;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * What the lanes would be from now on, beside what they are.
 *
 * @param said how many tasks it moves
 * @param compared rows that say the same of both
 * @param moved every task that is elsewhere, part by part
 * @param number of the crew plan in force
 * @param mark of what it was worked out from
 */
record ProposalView(
    String said,
    List<ThenView.Compared> compared,
    List<WhatIfView.Moved> moved,
    String day,
    int number,
    String mark) {

  static ProposalView of(Crewed now, Crewed then, CrewPlans.Proposal proposal) {
    CrewDifference by = proposal.difference();
    Messages words = now.words();
    List<WhatIfView.Moved> moved = new ArrayList<>();
    by.leftOut().forEach(id -> moved.add(gone(now, id)));
    by.added()
        .forEach(
            at ->
                moved.add(row(now, at.task(), words.say("lanes.moved-new"), Optional.empty(), at)));
    by.moved().stream()
        .sorted(
            Comparator.comparing(
                    (CrewDifference.Change one) ->
                        Duration.between(one.was().start(), one.is().start()).abs())
                .reversed())
        .forEach(
            one ->
                moved.add(row(now, one.task(), how(words, one), Optional.of(one.was()), one.is())));
    by.given()
        .forEach(
            one ->
                moved.add(
                    row(
                        now,
                        one.task(),
                        words.say("lanes.moved-other"),
                        Optional.of(one.was()),
                        one.is())));
    by.plated().forEach(line -> moved.add(plated(now, line)));
    return new ProposalView(
        by.count() == 1 ? words.say("lanes.would-one") : words.say("lanes.would", by.count()),
        ThenView.compared(now, then),
        moved,
        now.day().toString(),
        proposal.seen().number(),
        proposal.seen().mark());
  }

  private static String how(Messages words, CrewDifference.Change one) {
    Duration by = Duration.between(one.was().start(), one.is().start());
    return words.say(by.isNegative() ? "lanes.earlier" : "lanes.later", by.abs());
  }

  private static WhatIfView.Moved plated(Crewed now, Plated line) {
    List<Plated> was =
        now.crew().platings().stream().filter(one -> one.id().equals(line.id())).toList();
    Object dish =
        Optional.ofNullable(now.book().dishes().get(line.dish()))
            .<Object>map(Dish::name)
            .orElse(Text.of(line.dish()));
    return new WhatIfView.Moved(
        now.words().say("lanes.plate", dish),
        now.service(line.run()),
        now.words().say("lanes.moved-other"),
        was.isEmpty() ? "\u2013" : where(now, was.get(0)),
        where(now, line));
  }

  private static String where(Crewed day, Plated line) {
    List<String> who = new ArrayList<>(line.people().stream().map(day::person).toList());
    if (line.missing() > 0) {
      who.add(day.words().say("lanes.missing", line.missing()));
    }
    return day.time(line.from()) + " " + String.join(", ", who);
  }

  private static WhatIfView.Moved gone(Crewed day, String id) {
    return new WhatIfView.Moved(
        day.find(id).map(day::title).orElse(id),
        day.find(id).map(day::link).orElse(""),
        day.words().say("lanes.state.left"),
        day.crew().find(id).map(at -> WhatIfView.where(day, at)).orElse("\u2013"),
        "\u2013");
  }

  private static WhatIfView.Moved row(
      Crewed day, String id, String how, Optional<Placed> was, Placed is) {
    return new WhatIfView.Moved(
        day.find(id).map(day::title).orElse(id),
        day.find(id).map(day::link).orElse(""),
        how,
        was.map(at -> WhatIfView.where(day, at)).orElse("\u2013"),
        WhatIfView.where(day, is));
  }
}
