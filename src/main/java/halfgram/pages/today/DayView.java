package halfgram.pages.today;

import halfgram.desk.Dipped;
import halfgram.desk.InForce;
import halfgram.desk.Withdrawn;
import halfgram.lot.Tub;
import halfgram.pages.MissedLines;
import halfgram.pages.deliveries.Told;
import halfgram.prep.Behind;
import halfgram.prep.Missed;
import halfgram.prep.PlanStore;
import halfgram.prep.ShortBatch;
import halfgram.prep.Stretch;
import halfgram.web.Visit;
import halfgram.words.NightWords;
import halfgram.words.StretchWords;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * What the page of a day shows.
 *
 * @param standing which plan this is, or that none is on the wall yet
 * @param preview whether nobody has put this plan in force
 * @param isEmpty whether there is neither a service nor a task
 * @param bare whether the book has nothing that could be cooked
 * @param missed what last night has left undone
 * @param lacking what services will not have in time
 * @param outs what there is none of today
 * @param lanes what who does what when would be from now on; none or one
 * @param change none or one
 * @param orders how the sheet can be sorted; the one it is has no address
 * @param dips what somebody took of what is kept for an event
 * @param baths where the baths of the day are; empty when it has none
 * @param again where the plan from now on is proposed; empty when that makes no sense
 */
record DayView(
    String date,
    String day,
    List<Link> days,
    String standing,
    boolean preview,
    boolean isEmpty,
    boolean bare,
    Verdict verdict,
    MissedLines missed,
    List<Lacking> lacking,
    List<ServiceBox> services,
    List<String> outs,
    List<Told.One> deliveries,
    List<LanesLine> lanes,
    List<Change> change,
    Drawing drawing,
    List<Link> orders,
    String by,
    List<Group> groups,
    List<Bin> bins,
    List<Dip> dips,
    String baths,
    String again) {

  /** A way somewhere; without an address it is where one is. */
  record Link(String text, String href) {}

  /**
   * Something a service will not have in time.
   *
   * @param choices what can be done instead
   * @param slip where the service is pushed, or its covers changed
   */
  record Lacking(String what, List<Way> choices, String slip) {}

  /** What can be done instead, and where that is looked at first; empty where hands alone can. */
  record Way(String said, String act, String href) {}

  private static Way way(StretchWords.Choice choice, String slip) {
    String asked =
        choice.minutes() > 0
            ? "minutes=" + choice.minutes()
            : "serve=" + Visit.encoded(choice.serve());
    return new Way(choice.said(), choice.act(), choice.act().isEmpty() ? "" : slip + "?" + asked);
  }

  private static List<Lacking> lacking(Shown shown) {
    StretchWords said = new StretchWords(shown.book(), shown.sheet(), shown.words());
    return Stretch.of(shown.sheet()).stream()
        .filter(one -> shown.isThere(one.service()))
        .map(
            one -> {
              String slip = "slip/" + Visit.encoded(one.service().id());
              return new Lacking(
                  said.head(one),
                  said.doable(one).stream().map(choice -> way(choice, slip)).toList(),
                  slip);
            })
        .toList();
  }

  /**
   * What is no part of the plan: how people and machines hold it, what would change it, the tubs,
   * what is missed, gone or out.
   */
  record Live(
      Optional<LanesLine> lanes,
      String crew,
      Optional<Change> change,
      List<Tub> tubs,
      List<Missed> missed,
      List<Dipped.Dip> dips,
      List<String> outs,
      List<Told.One> deliveries,
      List<Withdrawn.Told> withdrawn,
      List<Behind> behind,
      List<ShortBatch> shorts,
      boolean bare) {}

  static DayView of(Shown shown, Optional<InForce> inForce, Live live, Group.By by) {
    NightWords night = new NightWords(shown.book(), shown.sheet(), shown.words());
    boolean now = shown.phase() == Shown.Phase.NOW;
    boolean idle = shown.sheet().tasks().isEmpty() && shown.sheet().services().isEmpty();
    return new DayView(
        shown.words().date(shown.day()),
        shown.day().toString(),
        days(shown),
        standing(shown, inForce),
        shown.phase() == Shown.Phase.PREVIEW,
        idle,
        live.bare(),
        Verdict.of(shown, live.crew(), live.withdrawn(), live.behind(), live.shorts()),
        MissedLines.of(live.missed().stream().map(night::missed).toList(), shown.day(), ""),
        now ? lacking(shown) : List.of(),
        ServiceBox.of(shown),
        live.outs(),
        live.deliveries(),
        live.lanes().stream().toList(),
        live.change().stream().toList(),
        Draughting.draw(shown),
        orders(shown, by),
        by.word(),
        Group.of(shown, by),
        now ? Bin.of(shown, live.tubs()) : List.of(),
        live.dips().stream().map(dip -> Dip.of(shown, dip)).toList(),
        baths(shown),
        now ? shown.address("?again=yes") : "");
  }

  private static String baths(Shown shown) {
    boolean none = shown.phase() == Shown.Phase.PREVIEW || shown.sheet().runs().isEmpty();
    boolean today = shown.day().equals(shown.clock().of(shown.now()));
    return none ? "" : today ? "baths" : "baths?date=" + shown.day();
  }

  private static List<Link> days(Shown shown) {
    LocalDate day = shown.day();
    LocalDate today = shown.clock().of(shown.now());
    Link middle =
        new Link(shown.words().say("today.today"), day.equals(today) ? "" : shown.address(""));
    return List.of(link(shown, day.minusDays(1)), middle, link(shown, day.plusDays(1)));
  }

  private static Link link(Shown shown, LocalDate day) {
    return new Link(shown.words().shortDate(day), shown.dayLink(day));
  }

  private static String standing(Shown shown, Optional<InForce> inForce) {
    return inForce
        .map(InForce::plan)
        .map(plan -> standing(shown, plan))
        .orElse(shown.words().say("today.preview"));
  }

  /** The first plan of a day is nobody's: it is in force once anybody looks. */
  private static String standing(Shown shown, PlanStore.Accepted plan) {
    String since = shown.words().moment(plan.at());
    return plan.number() == 1
        ? shown.words().say("today.plan-opened", since)
        : shown.words().say("today.plan", plan.number(), since, shown.person(plan.who()));
  }

  private static List<Link> orders(Shown shown, Group.By now) {
    return List.of(
        order(shown, Group.By.STATION, "today.by-station", now),
        order(shown, Group.By.START, "today.by-start", now),
        order(shown, Group.By.SERVICE, "today.by-service", now));
  }

  private static Link order(Shown shown, Group.By by, String key, Group.By now) {
    String href = shown.dayLink(shown.day()) + "&by=" + by.word() + "#sheet";
    return new Link(shown.words().say(key), by == now ? "" : href);
  }
}
