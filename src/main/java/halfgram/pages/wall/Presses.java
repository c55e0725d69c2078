package halfgram.pages.wall;

import halfgram.book.Moments;
import halfgram.desk.Bathing;
import halfgram.desk.Desk;
import halfgram.desk.Gating;
import halfgram.prep.GateEntry;
import halfgram.station.Person;
import halfgram.web.Halt;
import halfgram.web.Visit;
import java.time.LocalDate;
import java.util.Optional;

/** What is pressed at baths and gates: entered, or why not. */
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
  private final Bathing bathing;
  private final Gating gating;

  Presses(Desk desk, Bathing bathing, Gating gating) {
    this.desk = desk;
    this.bathing = bathing;
    this.gating = gating;
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

  private static String task(Scene scene, String task) {
    return "wall/" + Visit.encoded(scene.station()) + "?task=" + Visit.encoded(task);
  }
}
