package halfgram.prep.schedule;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/** Reads a workday and a rota, slot by slot, and says every rule that is broken. */
public final class Checker {
  private final Workday day;
  private final Rota rota;
  private final List<String> wrong = new ArrayList<>();

  /** What each cook does in each slot. */
  private final Map<String, String> doing = new HashMap<>();

  /** By machine, unit and the two jobs: from the end of one to when the other is on it. */
  private final Map<List<Integer>, Cook.Span> between = new LinkedHashMap<>();

  private Checker(Workday day, Rota rota) {
    this.day = day;
    this.rota = rota;
  }

  /** What is wrong; jobs that are fixed may lie over each other. */
  public static List<String> wrong(Workday day, Rota rota) {
    Checker checker = new Checker(day, rota);
    checker.jobs();
    checker.lags();
    checker.cooks();
    checker.machines();
    checker.washes();
    checker.unnamed();
    checker.spaces();
    checker.bill();
    return checker.wrong;
  }

  private Optional<Rota.Place> at(int j) {
    return rota.places().get(j);
  }

  private void jobs() {
    for (int j = 0; j < day.jobs().size(); j++) {
      Job job = day.jobs().get(j);
      if (at(j).isEmpty()) {
        if (job.fixed().isPresent()) {
          wrong.add(job.id() + " is fixed and left out");
        }
        continue;
      }
      Rota.Place place = at(j).get();
      if (job.fixed().isPresent()) {
        if (place.start() != job.fixed().get().start()) {
          wrong.add(job.id() + " is fixed and moved");
        }
        continue;
      }
      if (place.start() < job.earliest() || place.start() + job.length() > day.slots()) {
        wrong.add(job.id() + " lies outside its day");
      }
      if (new HashSet<>(place.cooks()).size() != job.hands()) {
        wrong.add(job.id() + " has " + place.cooks() + " for " + job.hands());
      }
      if (!job.able().containsAll(place.cooks())) {
        wrong.add(job.id() + " is done by somebody who cannot");
      }
    }
  }

  private void lags() {
    for (Between lag : day.lags()) {
      if (at(lag.from()).isEmpty() || at(lag.to()).isEmpty()) {
        continue;
      }
      boolean bothFixed =
          day.jobs().get(lag.from()).fixed().isPresent()
              && day.jobs().get(lag.to()).fixed().isPresent();
      int apart =
          at(lag.to()).get().start()
              - at(lag.from()).get().start()
              - day.jobs().get(lag.from()).length();
      if (apart < lag.min() && !bothFixed) {
        wrong.add(lag + " is only " + apart);
      }
      boolean holds = lag.max().isPresent() && !(lag.yields() && rota.yielding());
      if (holds && apart > lag.max().getAsInt() && !bothFixed) {
        wrong.add(lag + " is " + apart);
      }
    }
  }

  private void cooks() {
    for (int j = 0; j < day.jobs().size(); j++) {
      if (at(j).isEmpty()) {
        continue;
      }
      Job job = day.jobs().get(j);
      for (int c : at(j).get().cooks()) {
        for (int t = at(j).get().start(); t < at(j).get().start() + job.handsOn(); t++) {
          int slot = t;
          boolean here =
              day.cooks().get(c).here().stream().anyMatch(s -> s.from() <= slot && slot < s.to());
          boolean fixed = job.fixed().isPresent();
          if (!here && !fixed) {
            wrong.add(job.id() + " at " + t + ": cook " + c + " is not there");
          }
          String other = doing.put(c + "@" + t, fixed ? "fixed" : job.id());
          if (other != null && !(fixed && other.equals("fixed"))) {
            wrong.add(job.id() + " at " + t + ": cook " + c + " does " + other);
          }
        }
      }
    }
    for (Rota.Wash wash : rota.washes()) {
      Machine machine = day.machines().get(wash.machine());
      if (!machine.washers().contains(wash.cook())) {
        wrong.add(wash + " is by somebody who does not wash it");
      }
      for (int t = wash.start(); t < wash.start() + machine.scrub(); t++) {
        int slot = t;
        Cook cook = day.cooks().get(wash.cook());
        if (cook.here().stream().noneMatch(s -> s.from() <= slot && slot < s.to())) {
          wrong.add(wash + ": nobody is there");
        }
        String other = doing.put(wash.cook() + "@" + t, "washing");
        if (other != null) {
          wrong.add(wash + ": the cook does " + other);
        }
      }
    }
  }

  /** What does not move and names nobody has as many as it takes, or all who are free. */
  private void unnamed() {
    for (int j = 0; j < day.jobs().size(); j++) {
      Job job = day.jobs().get(j);
      boolean named = job.fixed().map(spot -> !spot.cooks().isEmpty()).orElse(true);
      if (named || job.hands() == 0 || at(j).isEmpty()) {
        continue;
      }
      List<Integer> who = at(j).get().cooks();
      if (new HashSet<>(who).size() != who.size() || !job.able().containsAll(who)) {
        wrong.add(job.id() + " is done by " + who);
      }
      for (int c : job.able()) {
        if (!who.contains(c) && who.size() < job.hands() && isFree(c, at(j).get().start(), job)) {
          wrong.add(job.id() + " has " + who + " though " + c + " is free");
        }
      }
    }
  }

  private boolean isFree(int cook, int from, Job job) {
    for (int t = from; t < from + job.handsOn(); t++) {
      int slot = t;
      boolean here =
          day.cooks().get(cook).here().stream().anyMatch(s -> s.from() <= slot && slot < s.to());
      if (!here || doing.containsKey(cook + "@" + t)) {
        return false;
      }
    }
    return true;
  }

  /** Every wash that is needed is there, in time, and no other. */
  private void washes() {
    for (Rota.Wash wash : rota.washes()) {
      if (!between.containsKey(List.of(wash.machine(), wash.unit(), wash.after(), wash.before()))) {
        wrong.add(wash + " is not needed");
      }
    }
    between.forEach(
        (which, span) -> {
          Machine machine = day.machines().get(which.get(0));
          List<Rota.Wash> mine =
              rota.washes().stream()
                  .filter(w -> which.equals(List.of(w.machine(), w.unit(), w.after(), w.before())))
                  .toList();
          boolean moves =
              day.jobs().get(which.get(2)).fixed().isEmpty()
                  || day.jobs().get(which.get(3)).fixed().isEmpty();
          if (mine.size() > 1 || (mine.isEmpty() && moves)) {
            wrong.add(which + " on " + machine.id() + " is washed " + mine.size() + " times");
          }
          for (Rota.Wash wash : mine) {
            int dry = machine.wash() - machine.scrub();
            int start = at(wash.before()).orElseThrow().start();
            int off = wash.start() + machine.scrub();
            if (wash.start() < span.from() || off + dry > span.to() || off > start) {
              wrong.add(wash + " is not in time: " + span);
            }
          }
        });
  }

  private void machines() {
    for (int m = 0; m < day.machines().size(); m++) {
      Machine machine = day.machines().get(m);
      for (int u = 0; u < machine.units(); u++) {
        machine(machine, m, u);
      }
    }
  }

  private void machine(Machine machine, int m, int u) {
    TreeMap<Integer, Integer> starts = new TreeMap<>();
    Map<Integer, Integer> ends = new HashMap<>();
    for (int j = 0; j < day.jobs().size(); j++) {
      if (at(j).isEmpty()) {
        continue;
      }
      Job job = day.jobs().get(j);
      int start = at(j).get().start();
      int next = 0;
      for (Job.Use use : job.uses()) {
        List<Integer> of = at(j).get().units();
        List<Integer> mine =
            of.subList(Math.min(of.size(), next), Math.min(of.size(), next + use.units()));
        next += use.units();
        if (mine.size() < use.units() && job.fixed().isEmpty()) {
          wrong.add(job.id() + " has too few of " + machine.id());
        }
        if (use.machine() != m || !mine.contains(u)) {
          continue;
        }
        int from = start + (use.during() == Job.During.ALONE ? job.handsOn() : 0);
        int to = start + (use.during() == Job.During.HANDS ? job.handsOn() : job.length());
        if (use.during() != Job.During.HANDS) {
          to = Math.max(to, takenOut(j).orElse(to));
        }
        if (from == to) {
          continue;
        }
        for (Machine.Out out : machine.out()) {
          boolean broken = u >= machine.units() - out.units();
          if (broken && from < out.span().to() && out.span().from() < to) {
            wrong.add(job.id() + " is on a " + machine.id() + " that does not work");
          }
        }
        Integer before = starts.put(from, j);
        if (before != null) {
          wrong.add(job.id() + " and " + day.jobs().get(before).id() + " on " + machine.id());
        }
        ends.put(j, to);
      }
    }
    Integer before = null;
    for (Map.Entry<Integer, Integer> entry : starts.entrySet()) {
      if (before != null) {
        Job a = day.jobs().get(before);
        Job b = day.jobs().get(entry.getValue());
        int wash = day.cleans().get(a.leaves()).get(b.leaves()) ? machine.wash() : 0;
        if (entry.getKey() < ends.get(before) + wash) {
          wrong.add(b.id() + " follows " + a.id() + " too soon on " + machine.id() + " " + u);
        } else if (wash > 0 && machine.scrub() > 0 && !machine.washers().isEmpty()) {
          Cook.Span span = new Cook.Span(ends.get(before), entry.getKey());
          between.put(List.of(m, u, before, entry.getValue()), span);
        }
      }
      before = entry.getValue();
    }
  }

  /** When somebody has taken out what a job leaves standing. */
  private Optional<Integer> takenOut(int j) {
    return day.lags().stream()
        .filter(lag -> lag.holds() >= 0 && lag.from() == j && at(lag.to()).isPresent())
        .map(lag -> at(lag.to()).get().start() + lag.holds())
        .findFirst();
  }

  private void spaces() {
    for (int s = 0; s < day.spaces().size(); s++) {
      Space space = day.spaces().get(s);
      for (int t = 0; t < day.slots(); t++) {
        int taken = t < space.taken().size() ? space.taken().get(t) : 0;
        for (int j = 0; j < day.jobs().size(); j++) {
          for (Job.Keep keep : day.jobs().get(j).keeps()) {
            boolean there =
                at(j).isPresent()
                    && at(j).get().start() + day.jobs().get(j).length() <= t
                    && t < keep.until();
            taken += keep.space() == s && there ? keep.amount() : 0;
          }
        }
        if (taken > space.room()) {
          wrong.add(space.id() + " holds " + taken + " at " + t);
        }
      }
    }
  }

  /** The bill, added up in another way. */
  private void bill() {
    Prices prices = day.prices();
    long total = 0;
    Map<Integer, Integer> atWork = new HashMap<>();
    Map<Integer, Integer> works = new HashMap<>();
    for (int j = 0; j < day.jobs().size(); j++) {
      Job job = day.jobs().get(j);
      if (at(j).isEmpty()) {
        total += prices.leftOut();
        continue;
      }
      int end = at(j).get().start() + job.length();
      if (job.due().isPresent()) {
        Job.Due due = job.due().get();
        total += prices.late() * due.weight() * Math.max(0, end - due.slot());
        total += prices.slack() * Math.max(0, end - (due.slot() - due.slack()));
        if (due.fresh().isPresent()) {
          total += prices.early() * Math.max(0, due.slot() - due.fresh().getAsInt() - end);
        }
      }
      if (job.previous().isPresent() && job.fixed().isEmpty()) {
        int moved = Math.abs(job.previous().get().start() - at(j).get().start());
        total += (moved > 0 ? prices.moved() : 0) + (moved > prices.near() ? prices.far() : 0);
        Set<Integer> before = new HashSet<>(job.previous().get().cooks());
        boolean same = before.isEmpty() || before.containsAll(at(j).get().cooks());
        total += same ? 0 : prices.other();
      }
      for (int c : at(j).get().cooks()) {
        works.merge(c, job.handsOn(), Integer::sum);
        for (int t = 0; t < job.handsOn(); t++) {
          atWork.merge(at(j).get().start() + t, 1, Integer::sum);
        }
      }
    }
    for (Between lag : day.lags()) {
      if (at(lag.from()).isPresent() && at(lag.to()).isPresent()) {
        int end = at(lag.from()).get().start() + day.jobs().get(lag.from()).length();
        int apart = at(lag.to()).get().start() - end;
        total += (long) lag.dear() * Math.max(0, apart - lag.min());
        if (lag.max().isPresent()) {
          total += prices.overrun() * Math.max(0, apart - lag.max().getAsInt());
        }
      }
    }
    for (int c = 0; c < day.cooks().size(); c++) {
      int here = day.cooks().get(c).here().stream().mapToInt(Cook.Span::length).sum();
      long over = 100L * works.getOrDefault(c, 0) - (long) prices.shiftPercent() * here;
      total += prices.shift() * (long) Math.ceil(Math.max(0, over) / 100.0);
    }
    for (Cook.Span rush : day.rushes()) {
      for (int from = rush.from(); from < rush.to(); from += 6) {
        long over = 0;
        for (int t = from; t < Math.min(from + 6, rush.to()); t++) {
          int slot = t;
          long crew =
              day.cooks().stream()
                  .filter(
                      cook -> cook.here().stream().anyMatch(s -> s.from() <= slot && slot < s.to()))
                  .count();
          over += 100L * atWork.getOrDefault(t, 0) - prices.rushPercent() * crew;
        }
        total += prices.rush() * (long) Math.ceil(Math.max(0, over) / 100.0);
      }
    }
    if (total != rota.bill().total()) {
      wrong.add("the bill says " + rota.bill() + ", added up it is " + total);
    }
  }
}
