package halfgram.prep.schedule;

import com.google.ortools.Loader;
import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CircuitConstraint;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.CpSolver;
import com.google.ortools.sat.CpSolverStatus;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.IntervalVar;
import com.google.ortools.sat.LinearArgument;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import com.google.ortools.sat.Literal;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;

/**
 * A workday as a model for a general solver (OR-Tools CP-SAT): the same rules and the same prices,
 * written down a second time. Longest times all hold; space is not in it.
 */
final class Optimum {
  private final Workday day;
  private final CpModel model = new CpModel();
  private final LinearExprBuilder cost = LinearExpr.newBuilder();
  private final IntVar[] start;
  private final List<List<BoolVar>> works = new ArrayList<>();

  /** What each cook does, and when they are away. */
  private final List<List<IntervalVar>> does = new ArrayList<>();

  private Optimum(Workday day) {
    this.day = day;
    this.start = new IntVar[day.jobs().size()];
  }

  /** What a solver found out. */
  record Answer(boolean proved, OptionalLong cost) {
    boolean isInfeasible() {
      return proved && cost.isEmpty();
    }
  }

  static Answer of(Workday day, double seconds) {
    Loader.loadNativeLibraries();
    return new Optimum(day).solve(seconds);
  }

  private Answer solve(double seconds) {
    for (int j = 0; j < start.length; j++) {
      Job job = day.jobs().get(j);
      start[j] = model.newIntVar(job.earliest(), day.slots() - job.length(), "s" + j);
      due(j, job);
    }
    lags();
    cooks();
    machines();
    does.forEach(model::addNoOverlap);
    rushes();
    model.minimize(cost);
    CpSolver solver = new CpSolver();
    solver.getParameters().setMaxTimeInSeconds(seconds).setNumWorkers(2).setRandomSeed(1);
    CpSolverStatus status = solver.solve(model);
    boolean found = status == CpSolverStatus.OPTIMAL || status == CpSolverStatus.FEASIBLE;
    return new Answer(
        status == CpSolverStatus.OPTIMAL || status == CpSolverStatus.INFEASIBLE,
        found ? OptionalLong.of(Math.round(solver.objectiveValue())) : OptionalLong.empty());
  }

  /** At least zero, and at least an expression. */
  private IntVar over(LinearArgument least) {
    IntVar over = model.newIntVar(0, 1_000_000, "over");
    model.addGreaterOrEqual(over, least);
    return over;
  }

  private void due(int j, Job job) {
    if (job.due().isEmpty()) {
      return;
    }
    Job.Due due = job.due().get();
    Prices prices = day.prices();
    cost.addTerm(
        over(LinearExpr.affine(start[j], 1, job.length() - due.slot())),
        prices.late() * due.weight());
    cost.addTerm(
        over(LinearExpr.affine(start[j], 1, job.length() - due.slot() + due.slack())),
        prices.slack());
    if (due.fresh().isPresent()) {
      int least = due.slot() - due.fresh().getAsInt() - job.length();
      cost.addTerm(over(LinearExpr.affine(start[j], -1, least)), prices.early());
    }
  }

  private void lags() {
    for (Between lag : day.lags()) {
      int length = day.jobs().get(lag.from()).length();
      LinearExpr apart =
          LinearExpr.newBuilder()
              .addTerm(start[lag.to()], 1)
              .addTerm(start[lag.from()], -1)
              .add(-length)
              .build();
      model.addGreaterOrEqual(apart, lag.min());
      if (lag.max().isPresent()) {
        model.addLessOrEqual(apart, lag.max().getAsInt());
      }
      cost.addTerm(start[lag.to()], lag.dear());
      cost.addTerm(start[lag.from()], -lag.dear());
      cost.add(-(long) lag.dear() * (length + lag.min()));
    }
  }

  private void cooks() {
    List<LinearExprBuilder> minutes = new ArrayList<>();
    for (Cook cook : day.cooks()) {
      List<IntervalVar> away = new ArrayList<>();
      int from = 0;
      for (Cook.Span span : cook.here()) {
        away.add(model.newFixedInterval(from, span.from() - from, "away"));
        from = span.to();
      }
      away.add(model.newFixedInterval(from, day.slots() - from, "away"));
      does.add(away);
      minutes.add(LinearExpr.newBuilder());
    }
    for (int j = 0; j < start.length; j++) {
      Job job = day.jobs().get(j);
      List<BoolVar> who = new ArrayList<>();
      for (int c : job.able()) {
        BoolVar does1 = model.newBoolVar("x" + j + "," + c);
        who.add(does1);
        does.get(c).add(model.newOptionalFixedSizeIntervalVar(start[j], job.handsOn(), does1, "i"));
        minutes.get(c).addTerm(does1, 100L * job.handsOn());
      }
      if (job.hands() > 0) {
        model.addEquality(LinearExpr.sum(who.toArray(LinearArgument[]::new)), job.hands());
      }
      works.add(who);
    }
    for (int c = 0; c < day.cooks().size(); c++) {
      int here = day.cooks().get(c).here().stream().mapToInt(Cook.Span::length).sum();
      hundredths(minutes.get(c), (long) day.prices().shiftPercent() * here, day.prices().shift());
    }
  }

  /** Pays for each whole one, begun ones too, of what an expression in hundredths has over. */
  private void hundredths(LinearExprBuilder sum, long allowed, long price) {
    IntVar over = model.newIntVar(0, 1_000_000, "over");
    model.addLessOrEqual(LinearExpr.newBuilder().add(sum).addTerm(over, -100).build(), allowed);
    cost.addTerm(over, price);
  }

  /** A job on a unit: from so many slots after its own start to so many after that of another. */
  private record On(int job, int from, int last, int to, BoolVar unit) {}

  private On on(int j, Job.Use use, BoolVar unit) {
    Job job = day.jobs().get(j);
    int from = use.during() == Job.During.ALONE ? job.handsOn() : 0;
    int to = use.during() == Job.During.HANDS ? job.handsOn() : job.length();
    if (use.during() != Job.During.HANDS) {
      for (Between lag : day.lags()) {
        if (lag.holds() >= 0 && lag.from() == j) {
          return new On(j, from, lag.to(), lag.holds(), unit);
        }
      }
    }
    return new On(j, from, j, to, unit);
  }

  private void machines() {
    for (int m = 0; m < day.machines().size(); m++) {
      Machine machine = day.machines().get(m);
      List<List<On>> units = new ArrayList<>();
      for (int u = 0; u < machine.units(); u++) {
        units.add(new ArrayList<>());
      }
      for (int j = 0; j < start.length; j++) {
        Job job = day.jobs().get(j);
        for (Job.Use use : job.uses()) {
          if (use.machine() != m) {
            continue;
          }
          List<BoolVar> which = new ArrayList<>();
          for (List<On> unit : units) {
            BoolVar here = model.newBoolVar("y" + j);
            which.add(here);
            unit.add(on(j, use, here));
          }
          model.addEquality(LinearExpr.sum(which.toArray(LinearArgument[]::new)), use.units());
        }
      }
      units.forEach(unit -> unit(machine, unit));
    }
  }

  private void unit(Machine machine, List<On> on) {
    if (machine.scrub() > 0 && !machine.washers().isEmpty()) {
      washes(machine, on);
    }
    for (int i = 0; i < on.size(); i++) {
      for (int k = i + 1; k < on.size(); k++) {
        On one = on.get(i);
        On other = on.get(k);
        BoolVar first = model.newBoolVar("first");
        before(machine, one, other, new Literal[] {one.unit(), other.unit(), first});
        before(machine, other, one, new Literal[] {one.unit(), other.unit(), first.not()});
      }
    }
  }

  /** Who follows whom on a unit as a round trip; before what does not go with it, hands. */
  private void washes(Machine machine, List<On> on) {
    CircuitConstraint round = model.addCircuit();
    round.addArc(0, 0, model.newBoolVar("empty"));
    for (int k = 0; k < on.size(); k++) {
      On next = on.get(k);
      round.addArc(k + 1, k + 1, next.unit().not());
      round.addArc(0, k + 1, model.newBoolVar("first"));
      round.addArc(k + 1, 0, model.newBoolVar("last"));
      IntVar at = model.newIntVar(0, day.slots(), "wash");
      List<Literal> dirty = new ArrayList<>();
      for (int i = 0; i < on.size(); i++) {
        if (i == k) {
          continue;
        }
        On one = on.get(i);
        BoolVar follows = model.newBoolVar("follows");
        round.addArc(i + 1, k + 1, follows);
        model
            .addLessOrEqual(
                LinearExpr.affine(start[one.last()], 1, one.to()),
                LinearExpr.affine(start[next.job()], 1, next.from()))
            .onlyEnforceIf(follows);
        if (wash(machine, one, next) > 0) {
          dirty.add(follows);
          model
              .addLessOrEqual(LinearExpr.affine(start[one.last()], 1, one.to()), at)
              .onlyEnforceIf(follows);
        }
      }
      int dry = machine.wash() - machine.scrub();
      BoolVar needed = model.newBoolVar("washed");
      model.addEquality(needed, LinearExpr.sum(dirty.toArray(LinearArgument[]::new)));
      model
          .addLessOrEqual(
              LinearExpr.affine(at, 1, machine.scrub()),
              LinearExpr.affine(start[next.job()], 1, Math.min(0, next.from() - dry)))
          .onlyEnforceIf(needed);
      List<LinearArgument> who = new ArrayList<>();
      for (int c : machine.washers()) {
        BoolVar washes = model.newBoolVar("washes");
        who.add(washes);
        does.get(c).add(model.newOptionalFixedSizeIntervalVar(at, machine.scrub(), washes, "w"));
      }
      model.addEquality(LinearExpr.sum(who.toArray(LinearArgument[]::new)), needed);
    }
  }

  private int wash(Machine machine, On one, On next) {
    int left = day.jobs().get(one.job()).leaves();
    return day.cleans().get(left).get(day.jobs().get(next.job()).leaves()) ? machine.wash() : 0;
  }

  private void before(Machine machine, On one, On other, Literal[] when) {
    int wash = wash(machine, one, other);
    model
        .addLessOrEqual(
            LinearExpr.affine(start[one.last()], 1, one.to() + wash),
            LinearExpr.affine(start[other.job()], 1, other.from()))
        .onlyEnforceIf(when);
  }

  private void rushes() {
    for (Cook.Span rush : day.rushes()) {
      for (int from = rush.from(); from < rush.to(); from += 6) {
        int to = Math.min(from + 6, rush.to());
        LinearExprBuilder busy = LinearExpr.newBuilder();
        for (int j = 0; j < start.length; j++) {
          Job job = day.jobs().get(j);
          if (job.hands() == 0) {
            continue;
          }
          long[] overlap = new long[day.slots()];
          for (int t = 0; t < overlap.length; t++) {
            overlap[t] =
                100L
                    * job.hands()
                    * Math.max(0, Math.min(t + job.handsOn(), to) - Math.max(t, from));
          }
          IntVar in = model.newIntVar(0, 100L * job.hands() * (to - from), "in");
          model.addElement(start[j], overlap, in);
          busy.add(in);
        }
        long crew = 0;
        for (Cook cook : day.cooks()) {
          for (Cook.Span span : cook.here()) {
            crew += Math.max(0, Math.min(to, span.to()) - Math.max(from, span.from()));
          }
        }
        hundredths(busy, day.prices().rushPercent() * crew, day.prices().rush());
      }
    }
  }
}
