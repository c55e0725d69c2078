package halfgram.prep;

import halfgram.formula.Fills;
import halfgram.formula.FormulaVersion;
import halfgram.formula.Output;
import halfgram.formula.Scaled;
import halfgram.ingredient.Pack;
import halfgram.lot.Lot;
import halfgram.measure.Amount;
import halfgram.measure.Mass;
import halfgram.measure.Message;
import halfgram.measure.Rounding;
import halfgram.prep.netting.Draw;
import halfgram.prep.netting.Joint;
import halfgram.prep.netting.LotSizing;
import halfgram.prep.netting.Need;
import halfgram.prep.netting.Netting;
import halfgram.prep.netting.Stock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * From the needs of one formula to its makes.
 *
 * <p>Rules. Tubs first ({@link Netting}), those in the freezer after all others ({@link Thawing}),
 * then batches into which more can still be weighed ({@link TopUp}), then what is late but sooner
 * than anything new ({@link LateTubs}); what is left is made together where set-up minutes saved
 * are worth the standing ({@link LotSizing}); each make is sized to its needs, raised to its
 * machines and packs ({@link Fills}), and timed backwards from when it must be ready ({@link
 * Timeline}). What a make gives over and still holds goes to later needs before they are made.
 */
final class Making {

  /**
   * What tubs gave, what is made, what was begun, grown where it takes on more, and what is pulled
   * from the freezer for it.
   */
  record Result(List<Draw> draws, List<Make> makes, List<Begun> stand, Thawing thawing) {}

  private final KitchenBook book;

  private final OpenHours hours;
  private final Set<String> apart;
  private final Set<String> taken;
  private final Instant asOf;

  /**
   * Making for one explosion.
   *
   * @param apart codes of formulas made for each time of need by itself
   * @param taken ids of makes begun, now or before, given to no other
   * @param asOf moment of the plan
   */
  Making(KitchenBook book, OpenHours hours, Set<String> apart, Set<String> taken, Instant asOf) {
    this.book = book;
    this.hours = hours;
    this.apart = apart;
    this.taken = taken;
    this.asOf = asOf;
  }

  Result make(Worked worked, List<Need> needs, List<Stock> stock, List<Begun> stand) {
    List<Need> sorted = new ArrayList<>(needs);
    sorted.sort(Need.ORDER);
    List<Stock> out = stock.stream().filter(one -> !one.lot().isFrozen()).toList();
    List<Lot> frozen = stock.stream().map(Stock::lot).filter(Lot::isFrozen).toList();
    Netting.Netted netted =
        Netting.net(sorted, out, worked.outputCodes, need -> !TopUp.mayTake(worked, stand, need));
    Thawing thawing = Thawing.of(book, worked, netted.open(), frozen, hours, asOf);
    TopUp topUp = TopUp.of(worked, stand, thawing.open());
    List<Draw> draws = new ArrayList<>(netted.draws());
    draws.addAll(thawing.draws());
    draws.addAll(topUp.draws());
    LateTubs late = LateTubs.of(worked, topUp.stand(), draws, topUp.open());
    draws.addAll(late.draws());
    List<Make> makes = late.open().isEmpty() ? List.of() : makes(worked, late.open());
    return new Result(draws, makes, topUp.stand(), thawing);
  }

  /**
   * The makes of what is open. Lot sizing groups the needs; each group takes first what earlier
   * makes gave over, and what remains of it is made, in several makes when it exceeds the most.
   */
  private List<Make> makes(Worked worked, List<Need> open) {
    List<Make> makes = new ArrayList<>();
    Surplus surplus = new Surplus(makes);
    Ids ids = new Ids(worked.word, taken);
    for (List<Need> group : groups(worked, open)) {
      List<Need> rest = surplus.serve(group);
      if (!rest.isEmpty()) {
        for (List<Need> part : new Split(worked).parts(rest)) {
          makes.add(make(worked, ids, part));
          if (worked.mayGiveOver()) {
            surplus.add();
          }
        }
      }
    }
    return makes;
  }

  /**
   * Which needs are made together. A need that by its amount asks for no more mix, being covered by
   * what other outputs leave, joins the make before it as long as it holds, and else waits its
   * turn.
   */
  private List<List<Need>> groups(Worked worked, List<Need> open) {
    List<Instant> made = open.stream().map(need -> made(worked, need)).toList();
    List<Joint.Increment> increments = Joint.increments(open, worked.jointParts, made);
    int[] asking =
        IntStream.range(0, open.size())
            .filter(i -> increments.get(i).outputMass().isPositive())
            .toArray();
    LotSizing.Question question =
        new LotSizing.Question(
            asking.length,
            worked.economy,
            apart.contains(worked.version.formula())
                ? LotSizing.TOO_DEAR
                : book.kitchen().holdingWeight().doubleValue());
    for (int i = 0; i < asking.length; i++) {
      Joint.Increment increment = increments.get(asking[i]);
      question.put(
          i,
          open.get(asking[i]).readyBy().getEpochSecond(),
          made.get(asking[i]).getEpochSecond(),
          increment.oldest().getEpochSecond(),
          LotSizing.units(
              worked.isSingle() ? open.get(asking[i]).amount() : increment.outputMass()),
          worked.economy.setUp());
    }
    List<List<Need>> groups = new ArrayList<>();
    for (LotSizing.Run run : LotSizing.solve(question).runs()) {
      int first = asking[run.first()];
      int end = run.last() + 1 < asking.length ? asking[run.last() + 1] : open.size();
      List<Need> together = new ArrayList<>();
      List<List<Need>> alone = new ArrayList<>();
      for (int i = first; i < end; i++) {
        Need need = open.get(i);
        Duration hold = worked.jointParts.get(need.output()).hold();
        boolean asks = increments.get(i).outputMass().isPositive();
        if (asks || !made.get(first).plus(hold).isBefore(need.lastUse())) {
          together.add(need);
        } else {
          alone.add(List.of(need));
        }
      }
      groups.add(together);
      groups.addAll(alone);
    }
    return groups;
  }

  /** When something made for this need alone would be ready. */
  private Instant made(Worked worked, Need need) {
    Instant end = deadline(worked, need);
    Timeline.Length last = worked.lastFixed();
    if (!last.handsOn().isZero()) {
      Instant start = end.minus(last.whole());
      end = hours.latestStart(start, last.handsOn()).plus(last.whole());
    }
    return end.plus(worked.version.outputs().get(need.output()).rest().min());
  }

  /** The latest end of the last step with which a need is met: rested, and made in its evening. */
  private Instant deadline(Worked worked, Need need) {
    Instant end = need.readyBy().minus(worked.version.outputs().get(need.output()).rest().min());
    if (!worked.version.evening()) {
      return end;
    }
    Instant evening = hours.eveningBefore(need.readyBy());
    return evening.isBefore(end) ? evening : end;
  }

  private Make make(Worked worked, Ids ids, List<Need> served) {
    Scaled wanted = worked.sized(served);
    Scaled scaled = wanted;
    List<Message> raisedBy = List.of();
    if (worked.mayRaise) {
      Fills fills = Fills.fit(wanted, this::pack);
      scaled = fills.scaled();
      raisedBy = fills.raisedBy();
    }
    Need first = served.get(0);
    Duration rest = Duration.ZERO;
    Instant deadline = Instant.MAX;
    for (Need need : served) {
      Duration own = worked.version.outputs().get(need.output()).rest().min();
      rest = own.compareTo(rest) > 0 ? own : rest;
      Instant end = deadline(worked, need);
      deadline = end.isBefore(deadline) ? end : deadline;
    }
    Timeline timeline =
        Timeline.latest(worked.version, worked.lengths(scaled), deadline, rest, hours);
    return new Make(
        ids.next(first.service()),
        worked.version,
        first.service(),
        oneEvent(served),
        served,
        List.of(),
        first.readyBy(),
        scaled,
        wanted,
        raisedBy,
        timeline,
        useBys(worked, scaled, timeline));
  }

  private List<Instant> useBys(Worked worked, Scaled scaled, Timeline timeline) {
    return worked.useBys(scaled, timeline, book.kitchen().clock());
  }

  private Optional<Mass> pack(String ingredient) {
    return book.ingredient(ingredient).packs().stream().map(Pack::mass).findFirst();
  }

  private static Optional<String> oneEvent(List<Need> served) {
    Optional<String> event = served.get(0).event();
    for (int i = 1; i < served.size(); i++) {
      if (!served.get(i).event().equals(event)) {
        return Optional.empty();
      }
    }
    return event;
  }

  /** What needs a make's parts have. */
  static List<Need> partNeeds(Make make, Worked.Part part) {
    FormulaVersion of = part.version();
    Output output = of.outputs().get(part.output());
    Amount mass = make.scaled().setOut(part.line());
    Amount amount = output.isPieces() ? output.inUnit(mass).rounded(Rounding.UP_TO_WHOLE) : mass;
    if (!amount.isPositive()) {
      return List.of();
    }
    Instant at = make.timeline().steps().get(part.step()).start();
    Instant eaten = part.renewed() ? at : make.eaten();
    Instant lastUse = output.hold().reason().isSafety() ? eaten : at;
    return List.of(
        new Need(
            make.id(),
            make.service(),
            make.event(),
            part.output(),
            amount,
            at,
            lastUse,
            part.dated() ? eaten : at,
            eaten));
  }

  /** Names makes: the component, the service each is first for, and which of several. */
  private static final class Ids {
    private final String word;
    private final Set<String> taken;
    private final Map<String, Integer> made = new HashMap<>();

    private Ids(String word, Set<String> taken) {
      this.word = word;
      this.taken = taken;
    }

    private String next(String service) {
      String id = number(service);
      while (taken.contains(id)) {
        id = number(service);
      }
      return id;
    }

    private String number(String service) {
      return word + "/" + service + "/" + made.merge(service, 1, Integer::sum);
    }
  }
}
