package halfgram.pages.wall;

import halfgram.book.Moments;
import halfgram.desk.Bathing;
import halfgram.desk.Desk;
import halfgram.desk.Gating;
import halfgram.desk.TickDoubts;
import halfgram.desk.Ticking;
import halfgram.measure.Amount;
import halfgram.measure.Message;
import halfgram.prep.GateEntry;
import halfgram.prep.Task;
import halfgram.prep.TaskProgress;
import halfgram.prep.Tick;
import halfgram.station.Person;
import halfgram.web.Halt;
import halfgram.web.Visit;
import halfgram.words.Messages;
import java.time.LocalDate;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What is pressed at tasks, baths and gates: entered, or why not. */
final class Presses {

  /**
   * What became of a press.
   *
   * @param to where it leads; empty when it was not taken
   * @param notice said on top of the page
   */
  record Pressed(String to, int status, String notice, Rejected rejected) {
    static Pressed goOn(String to) {
      return new Pressed(to, 303, "", Rejected.NONE);
    }
  }

  private final Desk desk;
  private final Ticking ticking;
  private final Bathing bathing;
  private final Gating gating;

  Presses(Desk desk, Ticking ticking, Bathing bathing, Gating gating) {
    this.desk = desk;
    this.ticking = ticking;
    this.bathing = bathing;
    this.gating = gating;
  }

  Pressed tick(Visit visit, Scene scene, TickForm form, Task task, Person cook) {
    Messages words = scene.words();
    String fault = form.fault(task, words);
    if (form.lacksTub(task) || !fault.isEmpty()) {
      String notice = form.lacksTub(task) ? words.say("wall.read-first") : "";
      return new Pressed("", 422, notice, Rejected.of(new Hand.Rejected(form, fault)));
    }
    Optional<Amount> said = form.saysAmount(task) ? form.amount(task) : Optional.empty();
    TaskProgress progress = scene.progress(task);
    boolean sure = form.isSure(progress);
    Ticking.Entry entry = form.entry(said, cook.code(), visit.device(), desk.now(), sure);
    Optional<Message> far = form.asks(task, words);
    Ticking.Outcome outcome =
        far.isPresent() && !sure
            ? new Ticking.Asks(
                TickDoubts.of(
                    scene.house(),
                    task,
                    scene.inForce().sheet().before(task),
                    scene::progress,
                    entry,
                    desk.now()))
            : ticking.tick(scene.house(), scene.day(), entry);
    if (outcome instanceof Ticking.Taken taken) {
      return Pressed.goOn(form.leadsTo(scene.wall(), taken));
    }
    if (outcome instanceof Ticking.Refused refused) {
      String notice = words.say("wall.refused", refused.because());
      return new Pressed("", 409, notice, Rejected.of(new Hand.Rejected(form, "")));
    }
    if (outcome instanceof Ticking.Asks asks) {
      String all =
          Stream.concat(asks.because().stream(), far.stream())
              .map(words::say)
              .collect(Collectors.joining("; "));
      // Only a start has no field to say it at.
      String notice = form.tickKind() == Tick.Kind.START ? all : "";
      return new Pressed("", 409, notice, Rejected.of(Hand.Rejected.asked(form, all)));
    }
    throw Halt.notFound(form.task());
  }

  Pressed bath(Visit visit, Scene scene, BathForm form, Person cook) {
    if (!form.isReadable()) {
      throw Halt.unreadable(form.entry());
    }
    Optional<String> fault = form.fault().map(key -> scene.words().say(key));
    if (fault.isPresent()) {
      return new Pressed("", 422, "", Rejected.of(new AtBaths.Rejected(form, fault.get(), false)));
    }
    Bathing.Entry entry = form.entry(cook.code(), visit.device(), desk.now());
    Bathing.Outcome outcome = bathing.enter(scene.house(), scene.day(), entry);
    if (outcome instanceof Bathing.Taken taken) {
      String undo = taken.entry().undoes().isEmpty() ? "&bath=" + taken.entry().id() : "";
      return Pressed.goOn(task(scene, form.task()) + undo);
    }
    if (outcome instanceof Bathing.Worn worn) {
      String asks = scene.words().say(worn.because());
      return new Pressed("", 409, asks, Rejected.of(new AtBaths.Rejected(form, asks, true)));
    }
    if (outcome instanceof Bathing.Refused refused) {
      String because = scene.words().say(refused.because());
      return new Pressed(
          "",
          409,
          scene.words().say("wall.refused", refused.because()),
          Rejected.of(new AtBaths.Rejected(form, because, false)));
    }
    throw Halt.notFound(((Bathing.Unknown) outcome).what());
  }

  Pressed gate(Visit visit, Scene scene, GateForm form, Person cook) {
    if (!form.isReadable()) {
      throw Halt.unreadable(form.get("verdict"));
    }
    Optional<String> fault = form.fault().map(message -> scene.words().say(message));
    if (fault.isPresent()) {
      return new Pressed("", 422, fault.get(), Rejected.of(new AtGate.Rejected(form, fault.get())));
    }
    LocalDate day = Moments.date(form.get("date")).orElse(scene.day());
    Gating.Entry entry = form.entry(cook.code(), visit.device(), desk.now());
    Gating.Outcome outcome = gating.enter(scene.house(), day, entry);
    if (outcome instanceof Gating.Taken taken) {
      return Pressed.goOn(
          form.get("back").equals("stock") ? "stock" : task(scene, shown(form, taken.entry())));
    }
    if (outcome instanceof Gating.Refused refused) {
      String because = scene.words().say(refused.because());
      return new Pressed(
          "",
          409,
          scene.words().say("wall.refused", refused.because()),
          Rejected.of(new AtGate.Rejected(form, because)));
    }
    throw Halt.notFound(((Gating.Unknown) outcome).what());
  }

  private static String shown(GateForm form, GateEntry entry) {
    return form.get("task").isEmpty() ? entry.of().task() : form.get("task");
  }

  /** The wall with a task in hand. */
  static String task(Scene scene, String task) {
    return scene.wall() + "?task=" + Visit.encoded(task);
  }
}
