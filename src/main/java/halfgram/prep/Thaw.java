package halfgram.prep;

import halfgram.formula.ComponentRef;
import halfgram.formula.Dose;
import halfgram.formula.FormulaVersion;
import halfgram.formula.Formulary;
import halfgram.formula.Instruction;
import halfgram.formula.Item;
import halfgram.formula.Line;
import halfgram.formula.MassBalance;
import halfgram.formula.Output;
import halfgram.formula.Reason;
import halfgram.formula.Residue;
import halfgram.formula.Scaled;
import halfgram.formula.Scaling;
import halfgram.formula.Step;
import halfgram.formula.Work;
import halfgram.kitchen.Text;
import halfgram.lot.Lot;
import halfgram.measure.Amount;
import halfgram.measure.Ratio;
import halfgram.prep.netting.Draw;
import halfgram.prep.netting.Need;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;

/**
 * A frozen tub that is pulled to thaw: a make of one step and one line, the tub itself, that gives
 * the same, and rests for as long as it thaws. So it is asked for, timed, linked, shown and missed
 * like any other make; it is kept apart from the makes of a sheet, because nothing is made.
 *
 * @param tub as it stands in the freezer
 * @param make its id is the component, the service it is first for, and the tub: {@code
 *     dill-oil/harvest-dinner/thaw-1126-3}
 * @param begun what has come of it, when somebody has pulled it already
 */
public record Thaw(Lot tub, Make make, Optional<Begun> begun) {
  /** The code of its only step. */
  public static final String STEP = "thaw";

  /** Going to the freezer and back. */
  static final Duration PULL = Duration.ofMinutes(5);

  private static final String MARK = "/" + STEP + "-";

  /**
   * A tub that is pulled.
   *
   * @param out the tub as it stands when it is out
   * @param word what its component is called in ids
   * @param draws what it gives, at least one
   */
  static Thaw of(
      KitchenBook book, Lot tub, Lot out, String word, List<Draw> draws, OpenHours hours) {
    FormulaVersion of = book.formulary().get(tub.component());
    int index = of.outputIndex(tub.component().output());
    Duration time = findTime(book.formulary(), tub).orElseThrow();
    FormulaVersion version = version(of, index, tub.component(), time);
    List<Need> needs = draws.stream().map(Thaw::need).toList();
    Need first = needs.get(0);
    Scaled size = new Scaling(version, MassBalance.of(version)).byOutput(0, out.left());
    Timeline timeline =
        Timeline.latest(
            version,
            List.of(new Timeline.Length(PULL, Duration.ZERO)),
            first.readyBy().minus(time),
            time,
            hours);
    Optional<String> event = first.event();
    boolean one = needs.stream().allMatch(need -> need.event().equals(event));
    Make make =
        new Make(
            word + "/" + first.service() + MARK + tub.code(),
            version,
            first.service(),
            one ? event : Optional.empty(),
            needs,
            List.of(),
            first.readyBy(),
            size,
            size,
            List.of(),
            timeline,
            List.of(out.useBy()));
    return new Thaw(tub, make, Optional.empty());
  }

  /** How long a tub takes to thaw: as its formula says today, else as it did. */
  public static Optional<Duration> findTime(Formulary formulary, Lot tub) {
    FormulaVersion made = formulary.get(tub.component());
    Output own = made.outputs().get(made.outputIndex(tub.component().output()));
    return formulary.find(made.formula()).orElseThrow().current().outputs().stream()
        .filter(output -> output.code().equals(own.code()))
        .flatMap(output -> output.thaw().stream())
        .findFirst()
        .or(own::thaw);
  }

  /**
   * From when a tub that is out of the freezer, or never was in it, may be used: thawed, and rested
   * where that is for safety's sake.
   */
  public static Instant ready(Formulary formulary, Lot tub) {
    Instant soft = tub.thawed().isEmpty() ? tub.made() : tub.ready(findTime(formulary, tub));
    FormulaVersion version = formulary.get(tub.component());
    Output.Rest rest = version.outputs().get(version.outputIndex(tub.component().output())).rest();
    Instant rested = rest.reason().isSafety() ? tub.made().plus(rest.min()) : soft;
    return rested.isAfter(soft) ? rested : soft;
  }

  /** One that somebody has pulled: it stands as it is. */
  static Thaw of(Begun begun, Lot tub) {
    return new Thaw(tub, begun.make(), Optional.of(begun));
  }

  /** What a tub gives to a need; the pulling of it has one output. */
  private static Need need(Draw draw) {
    Need of = draw.need();
    return new Need(
        of.user(),
        of.service(),
        of.event(),
        0,
        draw.amount(),
        of.readyBy(),
        of.lastUse(),
        of.tubUntil(),
        of.eaten());
  }

  /** The tub goes in, and the same comes out. */
  private static FormulaVersion version(
      FormulaVersion of, int index, ComponentRef ref, Duration time) {
    Output output = of.outputs().get(index).with(new Output.Rest(time, Reason.NONE));
    String station = of.steps().get(of.steps().size() - 1).station();
    return new FormulaVersion(
        of.formula(),
        Components.name(of, index),
        of.number(),
        Optional.empty(),
        "",
        Optional.empty(),
        List.of(line(ref)),
        List.of(step(station)),
        List.of(whole(output)),
        false,
        Optional.empty(),
        List.of());
  }

  private static Output whole(Output output) {
    return new Output(
        output.code(),
        output.name(),
        output.unit(),
        Ratio.ONE,
        output.pieceMass(),
        output.rest(),
        output.hold(),
        output.container(),
        output.fill(),
        output.split(),
        output.thaw());
  }

  private static Line line(ComponentRef ref) {
    return new Line(
        STEP,
        new Item.OfComponent(ref),
        Ratio.ONE,
        Line.Weighed.PREPARED,
        Dose.basis(Ratio.ONE),
        Ratio.ZERO,
        Optional.empty(),
        STEP,
        Optional.empty(),
        Optional.empty(),
        false,
        false);
  }

  private static Step step(String station) {
    return new Step(
        STEP,
        Text.of(STEP),
        List.of(Instruction.of(Text.of(STEP))),
        station,
        1,
        new Work(PULL, Duration.ZERO, Duration.ZERO),
        Work.NONE,
        Duration.ZERO,
        List.of(),
        false,
        Ratio.ONE,
        Residue.NONE,
        Ratio.ZERO,
        List.of(),
        Optional.empty(),
        Optional.empty(),
        false,
        List.of());
  }

  public Output output() {
    return make.version().outputs().get(0);
  }

  /** How much of it is pulled. */
  public Amount amount() {
    return make.scaled().output(0);
  }

  /** How long it takes to thaw. */
  public Duration time() {
    return output().rest().min();
  }

  /** The tub that a task pulls, by its code. */
  public static String tub(Task task) {
    return tub(task.make().id());
  }

  /** As above, by the id of its make. */
  static String tub(String id) {
    return id.substring(id.lastIndexOf(MARK) + MARK.length());
  }

  /** What a task waits for that takes from it. */
  Task.Link link() {
    return new Task.Link(
        taskId(),
        time(),
        Optional.of(Duration.between(make.timeline().steps().get(0).end(), make.useBy(0))),
        output().hold().reason());
  }

  /** Of the task that pulls it. */
  public String taskId() {
    return make.id() + "/" + STEP;
  }

  /** Ids of what it is for. */
  SortedSet<String> users() {
    SortedSet<String> users = new TreeSet<>();
    make.served().forEach(need -> users.add(need.user()));
    return users;
  }

  /** When its hands-on minutes begin, by lags alone. */
  public Instant pull() {
    return make.timeline().start();
  }
}
