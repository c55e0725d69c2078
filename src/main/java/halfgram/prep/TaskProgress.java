package halfgram.prep;

import halfgram.measure.Amount;
import halfgram.measure.Dimension;
import halfgram.measure.Mass;
import halfgram.measure.Message;
import halfgram.measure.Rounding;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.UUID;
import java.util.function.Function;

/**
 * What a task has come to, folded from its ticks by the {@link TickTable}.
 *
 * <p>Rules. An undone tick counts as if it had never been; an undo itself is not undone, and
 * nothing is undone twice. A tick that comes twice counts once. What the table refuses changes
 * nothing and is kept in sight. What a later tick rests on is not undone before that: no done of
 * what failed since, not the first of two dones, because it was the one that moved tubs, and
 * nothing without which a later tick would not have been taken. No clock wins time by it: what is
 * said to be done again waits since it was first said so, unless that was a slip of the hand.
 *
 * @param beneath where it is but for an open problem; without one where it is
 * @param onIt who is on it; the last to say so, while nobody has said that it is part done or done
 * @param begun when somebody first said to be on it; empty when only that it was done
 * @param weighed why paths of the lines weighed, each with what was asked for when it was
 * @param amount so far, or really made when done; empty when nobody said, and then as planned
 * @param givenAt when the first of it was there: partly done, or done
 * @param doneAt when the first done was said
 * @param since the same two, of what was taken back before it was said again too
 * @param problem what the open problem is, or why it failed, when somebody said
 * @param dones every done that counts; more than one is for the office to look at
 * @param last the last tick that can be undone and moved it
 * @param words what was said about it beside, in order ({@link Tick.Kind#isWord})
 * @param refused ticks that came and do not count
 */
public record TaskProgress(
    TaskState state,
    TaskState beneath,
    Optional<OnIt> onIt,
    Optional<Instant> begun,
    SortedMap<String, Mass> weighed,
    Optional<Amount> amount,
    Optional<Instant> givenAt,
    Optional<Instant> doneAt,
    Since since,
    Optional<String> problem,
    List<Tick> dones,
    Optional<Tick> last,
    List<Tick> words,
    List<Refusal> refused) {

  private static final Set<Tick.Kind> GIVES = EnumSet.of(Tick.Kind.PART_DONE, Tick.Kind.DONE);

  /** Nobody has said anything. */
  public static final TaskProgress NONE = fold(List.of());

  /**
   * Who is on it, and since when.
   *
   * @param worked since when anybody has been, one after the other
   */
  public record OnIt(String cook, Instant since, Instant worked) {}

  /**
   * From when a limit may count.
   *
   * @param given when the first of it was there
   * @param done when all of it was
   */
  public record Since(Optional<Instant> given, Optional<Instant> done) {}

  /** A tick that does not count, and why. */
  public record Refusal(Tick tick, Message because) {}

  /** What became of one more tick. */
  public sealed interface Ticked permits Taken, Repeated, Refused {
    /** The value for whichever of the three it is. */
    <T> T fold(
        Function<TaskProgress, ? extends T> taken,
        Function<TaskProgress, ? extends T> repeated,
        Function<Message, ? extends T> refused);
  }

  /** It counts. */
  public record Taken(TaskProgress progress) implements Ticked {
    @Override
    public <T> T fold(
        Function<TaskProgress, ? extends T> taken,
        Function<TaskProgress, ? extends T> repeated,
        Function<Message, ? extends T> refused) {
      return taken.apply(progress);
    }
  }

  /** It was here before. */
  public record Repeated(TaskProgress progress) implements Ticked {
    @Override
    public <T> T fold(
        Function<TaskProgress, ? extends T> taken,
        Function<TaskProgress, ? extends T> repeated,
        Function<Message, ? extends T> refused) {
      return repeated.apply(progress);
    }
  }

  /** It does not count. */
  public record Refused(Message because) implements Ticked {
    @Override
    public <T> T fold(
        Function<TaskProgress, ? extends T> taken,
        Function<TaskProgress, ? extends T> repeated,
        Function<Message, ? extends T> refused) {
      return refused.apply(because);
    }
  }

  /** What was said of one kind, in order. */
  public List<Tick> words(Tick.Kind kind) {
    return words.stream().filter(word -> word.kind() == kind).toList();
  }

  /**
   * From when what the task gave waits for what comes after: it was done, or in parts, should have
   * been. The rest of a batch may take as long as was planned, since limits are said from the end
   * of a step; what takes longer is not waited for by its first part. Empty while it gave nothing.
   */
  public Optional<Instant> waitsSince(Task task) {
    return since.given.map(
        first -> {
          Duration planned = Duration.between(task.start(), task.end());
          Instant whole = begun.orElse(first).plus(planned);
          Instant end = since.done.filter(whole::isAfter).orElse(whole);
          return end.isBefore(first) ? first : end;
        });
  }

  /** The call for the chef that nobody has answered; the first that still stands. */
  public Optional<Tick> call() {
    List<Tick> calls =
        words.stream()
            .filter(word -> word.kind() == Tick.Kind.CALLED || word.kind() == Tick.Kind.ANSWERED)
            .toList();
    Optional<Tick> open = Optional.empty();
    for (Tick one : calls) {
      open = one.kind() == Tick.Kind.ANSWERED ? Optional.empty() : open.or(() -> Optional.of(one));
    }
    return open;
  }

  /** The same when another task of its make has failed: what is not done will not be. */
  public TaskProgress lost(Optional<String> because) {
    return state == TaskState.DONE || state == TaskState.FAILED
        ? this
        : new TaskProgress(
            TaskState.FAILED,
            TaskState.FAILED,
            Optional.empty(),
            begun,
            weighed,
            amount,
            givenAt,
            doneAt,
            since,
            because,
            dones,
            last,
            words,
            refused);
  }

  /** What one more tick does to a task with these. */
  public static Ticked tick(List<Tick> before, Tick tick) {
    if (before.stream().anyMatch(other -> other.id().equals(tick.id()))) {
      return new Repeated(fold(before));
    }
    List<Tick> all = new ArrayList<>(before);
    all.add(tick);
    TaskProgress progress = fold(all);
    Optional<Message> because =
        progress.refused().stream()
            .filter(refusal -> refusal.tick().equals(tick))
            .map(Refusal::because)
            .findFirst()
            .or(() -> rests(fold(before), progress, tick));
    return because.isPresent() ? new Refused(because.get()) : new Taken(progress);
  }

  /** Why an undo cannot be while a later tick rests on what it takes back. */
  private static Optional<Message> rests(TaskProgress before, TaskProgress after, Tick undo) {
    if (undo.kind() != Tick.Kind.UNDO) {
      return Optional.empty();
    }
    List<UUID> dones = before.dones.stream().map(Tick::id).toList();
    int done = dones.indexOf(undo.undoes().orElseThrow());
    if (done >= 0 && after.state == TaskState.FAILED) {
      return Optional.of(Message.of("tick.refused.failed"));
    }
    boolean replaced = done == 0 && dones.size() > 1;
    boolean lost = after.refused.size() > before.refused.size();
    return replaced || lost ? Optional.of(Message.of("tick.refused.rests")) : Optional.empty();
  }

  /**
   * What a task has come to.
   *
   * @param ticks of this one task, in the order the server had them
   */
  public static TaskProgress fold(List<Tick> ticks) {
    return new Fold(ticks).progress();
  }

  /** Taken back so soon after it, it was a slip of the hand. */
  private static final Duration SLIP = Duration.ofMinutes(1);

  /** That something was there, until that was taken back. */
  private record Back(Tick.Kind kind, Instant at, Instant until) {}

  /** The working memory of one fold. */
  private static final class Fold {
    private TaskState state = TaskState.TO_DO;
    private TaskState beneath = TaskState.TO_DO;
    private Optional<OnIt> onIt = Optional.empty();
    private Optional<Instant> begun = Optional.empty();
    private final NavigableMap<String, Mass> weighed = new TreeMap<>();
    private Optional<Amount> amount = Optional.empty();
    private Optional<Instant> given = Optional.empty();
    private final List<Back> back = new ArrayList<>();
    private Since since = new Since(Optional.empty(), Optional.empty());
    private Optional<String> problem = Optional.empty();
    private final List<Tick> dones = new ArrayList<>();
    private Optional<Tick> last = Optional.empty();
    private final List<Tick> words = new ArrayList<>();
    private final List<Refusal> refused = new ArrayList<>();

    private Fold(List<Tick> ticks) {
      Map<UUID, Instant> undone = new HashMap<>();
      ticks.forEach(tick -> tick.undoes().ifPresent(of -> undone.putIfAbsent(of, tick.at())));
      Set<UUID> seen = new HashSet<>();
      Set<UUID> undoable = new HashSet<>();
      for (Tick tick : ticks) {
        if (!seen.add(tick.id())) {
          continue;
        }
        if (tick.kind() == Tick.Kind.UNDO) {
          if (tick.undoes().filter(undoable::remove).isEmpty()) {
            boolean before = tick.undoes().filter(seen::contains).isPresent();
            String why = before ? "tick.refused.undone" : "tick.refused.nothing-to-undo";
            refused.add(new Refusal(tick, Message.of(why)));
          }
          continue;
        }
        undoable.add(tick.id());
        Instant until = undone.get(tick.id());
        if (until == null) {
          take(tick);
        } else if (GIVES.contains(tick.kind()) && tick.at().plus(SLIP).isBefore(until)) {
          back.add(new Back(tick.kind(), tick.at(), until));
        }
      }
    }

    private void take(Tick tick) {
      Optional<Message> because =
          TickTable.get(tick.kind(), state)
              .<Optional<Message>>fold(
                  to -> {
                    go(tick, to);
                    return Optional.empty();
                  },
                  () -> {
                    state = beneath;
                    problem = Optional.empty();
                    return Optional.empty();
                  },
                  Optional::of);
      if (because.isPresent()) {
        refused.add(new Refusal(tick, because.get()));
      } else if (tick.kind().isWord()) {
        words.add(tick);
      } else {
        last = Optional.of(tick);
      }
    }

    /** Takes note, and goes to a state; under a problem the task goes on to where it will be. */
    private void go(Tick tick, TaskState to) {
      boolean more = dones.isEmpty();
      switch (tick.kind()) {
        case START -> onIt = onIt.filter(on -> on.cook().equals(tick.cook())).or(() -> on(tick));
        case WEIGHED -> {
          tick.line().ifPresent(line -> weighed.put(line, asked(tick)));
          onIt = more ? onIt.or(() -> on(tick)) : onIt;
        }
        case PART_DONE -> {
          amount = more ? tick.amount().or(() -> amount) : amount;
          onIt = Optional.empty();
          give(tick);
        }
        case DONE -> {
          amount = more ? tick.amount() : amount;
          onIt = Optional.empty();
          dones.add(tick);
          give(tick);
        }
        case PROBLEM -> problem = tick.note();
        case FAILED -> {
          problem = tick.note();
          onIt = Optional.empty();
        }
        case SOLVED, UNDO -> {}
        case NOTE, CALLED, ANSWERED, TIMED, LATER, HEARD, TASTED -> {}
      }
      if (state != TaskState.PROBLEM) {
        beneath = to == TaskState.PROBLEM ? state : to;
      } else if (tick.kind() != Tick.Kind.PROBLEM) {
        beneath =
            TickTable.get(tick.kind(), beneath).fold(next -> next, () -> beneath, no -> beneath);
      }
      state = to;
    }

    private void give(Tick tick) {
      given = earlier(given, tick.at());
      Optional<Instant> done =
          tick.kind() == Tick.Kind.DONE
              ? since.done.or(() -> Optional.of(first(tick, EnumSet.of(tick.kind()))))
              : since.done;
      since = new Since(earlier(since.given, first(tick, GIVES)), done);
    }

    private static Optional<Instant> earlier(Optional<Instant> one, Instant other) {
      return one.filter(other::isAfter).or(() -> Optional.of(other));
    }

    /** When it was first said: by this tick, or by one that was taken back before it. */
    private Instant first(Tick tick, Set<Tick.Kind> kinds) {
      return back.stream()
          .filter(of -> kinds.contains(of.kind) && !tick.at().isBefore(of.until))
          .map(Back::at)
          .min(Comparator.naturalOrder())
          .orElse(tick.at());
    }

    private static Mass asked(Tick tick) {
      return tick.amount()
          .filter(of -> of.dimension() == Dimension.MASS)
          .map(of -> of.mass(Rounding.TO_MICROGRAM))
          .orElse(Mass.ZERO);
    }

    private Optional<OnIt> on(Tick tick) {
      begun = begun.or(() -> Optional.of(tick.at()));
      return Optional.of(
          new OnIt(tick.cook(), tick.at(), onIt.map(OnIt::worked).orElse(tick.at())));
    }

    private TaskProgress progress() {
      return new TaskProgress(
          state,
          state == TaskState.PROBLEM ? beneath : state,
          onIt,
          begun,
          Collections.unmodifiableNavigableMap(weighed),
          amount,
          given,
          dones.stream().map(Tick::at).findFirst(),
          since,
          problem,
          List.copyOf(dones),
          last,
          List.copyOf(words),
          List.copyOf(refused));
    }
  }
}
