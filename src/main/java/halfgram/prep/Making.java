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
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * From the needs of one formula to its makes.
 *
 * <p>Rules. Tubs first ({@link Netting}); what is left is made together where set-up minutes saved
 * are worth the standing ({@link LotSizing}); each make is sized to its needs, raised to its
 * machines and packs ({@link Fills}), and timed backwards from when it must be ready ({@link
 * Timeline}). What a make gives over and still holds goes to later needs before they are made.
 */
final class Making {

  /** What tubs gave, and what is made. */
  record Result(List<Draw> draws, List<Make> makes) {}

  private final KitchenBook book;
  private final OpenHours hours;

  Making(KitchenBook book, OpenHours hours) {
    this.book = book;
    this.hours = hours;
  }

  Result make(Worked worked, List<Need> needs, List<Lot> lots) {
    List<Need> sorted = new ArrayList<>(needs);
    sorted.sort(Need.ORDER);
    Netting.Netted netted = Netting.net(sorted, lots, worked.outputCodes);
    if (netted.open().isEmpty()) {
      return new Result(netted.draws(), List.of());
    }
    return new Result(
        netted.draws(),
        worked.isSingle() ? single(worked, netted.open()) : joint(worked, netted.open()));
  }

  private List<Make> single(Worked worked, List<Need> open) {
    LotSizing.Question question = question(worked, open.size());
    for (int i = 0; i < open.size(); i++) {
      put(question, i, worked, open.get(i), open.get(i).amount(), open.get(i).lastUse());
    }
    LotSizing.Answer answer = LotSizing.solve(question);
    Ids ids = new Ids(worked.word);
    List<Make> makes = new ArrayList<>();
    Leftover leftover = Leftover.NONE;
    for (LotSizing.Run run : answer.runs()) {
      List<Need> served = leftover.serve(open.subList(run.first(), run.last() + 1));
      if (served.isEmpty()) {
        continue;
      }
      Amount sum = sum(served);
      long parts = parts(worked, sum);
      for (long part = 0; part < parts; part++) {
        Make make = make(worked, ids, served, worked.scaling.byOutput(0, share(sum, parts, part)));
        makes.add(make);
        leftover = leftover(worked, make, sum, parts);
      }
    }
    return makes;
  }

  private static Amount sum(List<Need> needs) {
    if (needs.size() == 1) {
      return needs.get(0).amount();
    }
    List<Amount> amounts = new ArrayList<>(needs.size());
    for (Need need : needs) {
      amounts.add(need.amount());
    }
    return Amount.sum(amounts);
  }

  /** What a make gives over; only one that was raised, or gives whole pieces, gives any. */
  private static Leftover leftover(Worked worked, Make make, Amount sum, long parts) {
    boolean exact = !worked.mayRaise && !worked.version.outputs().get(0).isPieces();
    return exact || parts > 1
        ? Leftover.NONE
        : Leftover.of(make.scaled().output(0).minus(sum), make);
  }

  /** Into how many equal makes a sum is split that exceeds the most of one. */
  private static long parts(Worked worked, Amount sum) {
    return worked
        .version
        .most()
        .map(most -> Rounding.UP_TO_WHOLE.round(sum.over(most).number()).longValueExact())
        .orElse(1L);
  }

  private static Amount share(Amount sum, long parts, long part) {
    if (parts == 1) {
      return sum;
    }
    if (sum.dimension() == halfgram.measure.Dimension.MASS) {
      return sum.dividedBy(parts);
    }
    long pieces = sum.pieces();
    return Amount.pieces(pieces / parts + (part < pieces % parts ? 1 : 0));
  }

  private List<Make> joint(Worked worked, List<Need> open) {
    List<Joint.Part> parts =
        worked.version.outputs().stream()
            .map(output -> new Joint.Part(output.share(), output.hold().max()))
            .toList();
    List<Need> asMass = open.stream().map(need -> need.with(mass(worked, need))).toList();
    List<Joint.Increment> increments = Joint.increments(asMass, parts);
    LotSizing.Question question = question(worked, open.size());
    for (int i = 0; i < open.size(); i++) {
      Joint.Increment increment = increments.get(i);
      put(question, i, worked, open.get(i), increment.outputMass(), increment.lastUse());
    }
    LotSizing.Answer answer = LotSizing.solve(question);
    Ids ids = new Ids(worked.word);
    List<Make> makes = new ArrayList<>();
    for (LotSizing.Run run : answer.runs()) {
      Amount mass = Amount.NO_MASS;
      for (int i = run.first(); i <= run.last(); i++) {
        mass = mass.plus(increments.get(i).outputMass());
      }
      if (mass.isPositive()) {
        Scaled scaled = new Scaled(worked.version, worked.balance, worked.balance.basisFor(mass));
        makes.add(make(worked, ids, open.subList(run.first(), run.last() + 1), scaled));
      }
    }
    return makes;
  }

  private static Amount mass(Worked worked, Need need) {
    Output output = worked.version.outputs().get(need.output());
    return output.massOf(output.isPieces() ? worked.scaling.toForm(need.amount()) : need.amount());
  }

  private LotSizing.Question question(Worked worked, int needs) {
    return new LotSizing.Question(
        needs, worked.economy, book.kitchen().holdingWeight().doubleValue());
  }

  private void put(
      LotSizing.Question question,
      int position,
      Worked worked,
      Need need,
      Amount amount,
      Instant lastUse) {
    Output output = worked.version.outputs().get(need.output());
    question.put(
        position,
        need.readyBy().getEpochSecond(),
        made(worked, need, output).getEpochSecond(),
        lastUse.getEpochSecond() - output.hold().max().toSeconds(),
        LotSizing.units(amount),
        worked.economy.setUp());
  }

  /** When something made for this need alone would be ready. */
  private Instant made(Worked worked, Need need, Output output) {
    Duration rest = output.rest().min();
    Instant end = need.readyBy().minus(rest);
    if (worked.version.evening()) {
      Instant evening = hours.eveningBefore(need.readyBy());
      end = evening.isBefore(end) ? evening : end;
    }
    Timeline.Length last = worked.lastFixed();
    if (!last.handsOn().isZero()) {
      Instant start = end.minus(last.whole());
      end = hours.latestStart(start, last.handsOn()).plus(last.whole());
    }
    return end.plus(rest);
  }

  private Make make(Worked worked, Ids ids, List<Need> served, Scaled wanted) {
    Scaled scaled = wanted;
    List<Message> raisedBy = List.of();
    if (worked.mayRaise) {
      Fills fills = Fills.fit(wanted, this::pack);
      scaled = fills.scaled();
      raisedBy = fills.raisedBy();
    }
    Need first = served.get(0);
    Duration rest = Duration.ZERO;
    for (Need need : served) {
      Duration own = worked.version.outputs().get(need.output()).rest().min();
      rest = own.compareTo(rest) > 0 ? own : rest;
    }
    Timeline timeline =
        Timeline.latest(worked.version, worked.lengths(scaled), first.readyBy(), rest, hours);
    return new Make(
        ids.next(first.service()),
        worked.version,
        first.service(),
        oneEvent(served),
        served,
        first.readyBy(),
        scaled,
        wanted,
        raisedBy,
        timeline);
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
    Instant at = make.timeline().steps().get(part.step()).start();
    return amount.isPositive()
        ? List.of(new Need(make.id(), make.service(), make.event(), part.output(), amount, at, at))
        : List.of();
  }

  /** Names makes: the component, the service each is first for, and which of several. */
  private static final class Ids {
    private final String word;
    private final Map<String, Integer> made = new HashMap<>();

    private Ids(String word) {
      this.word = word;
    }

    private String next(String service) {
      return word + "/" + service + "/" + made.merge(service, 1, Integer::sum);
    }
  }

  /** What makes gave over and until when it holds. */
  private record Leftover(Amount amount, Instant ready, Instant holds) {
    private static final Leftover NONE = new Leftover(Amount.NO_MASS, Instant.MIN, Instant.MIN);

    /** The needs that remain once the leftover is used. */
    private List<Need> serve(List<Need> needs) {
      if (!amount.isPositive()) {
        return needs;
      }
      List<Need> remain = new ArrayList<>();
      Amount left = amount;
      for (Need need : needs) {
        boolean serves = !ready.isAfter(need.readyBy()) && !holds.isBefore(need.lastUse());
        Amount taken = serves ? left.atMost(need.amount()) : Amount.zero(left.dimension());
        left = left.minus(taken);
        if (need.amount().compareTo(taken) > 0) {
          remain.add(need.with(need.amount().minus(taken)));
        }
      }
      return remain;
    }

    /**
     * What the latest make leaves; what an earlier one still left is given up, never counted twice.
     */
    private static Leftover of(Amount over, Make make) {
      return over.isPositive() ? new Leftover(over, make.timeline().ready(), make.useBy(0)) : NONE;
    }
  }
}
