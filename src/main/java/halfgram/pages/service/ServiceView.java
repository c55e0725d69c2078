package halfgram.pages.service;

import halfgram.kitchen.Kitchen;
import halfgram.pages.EntryFields;
import halfgram.pass.AtPass;
import halfgram.pass.Entry;
import halfgram.pass.Outage;
import halfgram.prep.Fire;
import halfgram.words.PlatingWords;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.LongSupplier;

/**
 * One service at the pass.
 *
 * @param facts what comes next
 * @param open whether anything can be entered: not on an earlier day
 * @param ends when it is over, as milliseconds, for a script that asks again then
 * @param over what was sent of a service that is over, and what was not; empty until then
 * @param after what was just entered, to be undone
 * @param ask what is asked before more plates are sent than there are guests
 * @param standIns whether something may stand in for what its pars ask for
 * @param last what was entered last, to be undone
 * @param form what was typed into a form that was not taken, with what is wrong
 */
record ServiceView(
    String id,
    String name,
    String hours,
    String phase,
    String covers,
    String cook,
    Clock clock,
    List<Fact> facts,
    boolean open,
    long ends,
    String over,
    List<OutView> outs,
    Optional<After> after,
    Optional<Ask> ask,
    List<Last> last,
    Form form,
    List<CourseBox> courses,
    TrayRows trays,
    boolean standIns,
    List<Wave> waves,
    LongSupplier numbers) {

  /** The time, in the kitchen's zone. */
  record Clock(String time, long millis, String zone, boolean halfDay) {}

  /**
   * Something that comes next.
   *
   * @param millis when, for a script that counts down; 0 when there is nothing to count
   */
  record Fact(String what, String name, String left, long millis, String more) {}

  /** What was just entered. */
  record After(String what, String entry) {}

  /** A question, and the fields of the form that goes on with yes. */
  record Ask(String said, String yes, Map<String, String> fields) {}

  /** Something entered a while ago. */
  record Last(String what, String who, String entry) {}

  private static final int LAST = 6;

  /** A form that was not taken. */
  record Form(
      String kind,
      String course,
      String dish,
      String diets,
      String item,
      String number,
      String note,
      String at,
      String fault) {
    private Form(EntryForm typed, String fault) {
      this(
          typed.kind(),
          typed.course(),
          typed.dish(),
          typed.diets(),
          typed.item(),
          typed.number(),
          typed.note(),
          typed.at(),
          fault);
    }
  }

  /** A wave: when it has to start, and how that went. */
  record Wave(String name, String start, String amount, String said, boolean late) {}

  /** What came with the request. */
  record Typed(EntryForm form, String fault, String entry) {}

  /** A number for one form. */
  public long next() {
    return numbers.getAsLong();
  }

  static ServiceView of(PassScene scene, AtPass at, Typed typed, LongSupplier numbers) {
    EntryForm form = typed.form();
    Touched touched = Touched.of(scene, typed);
    List<CourseBox> courses = CourseBox.list(scene, at, touched, numbers);
    return new ServiceView(
        at.run().id(),
        scene.text(at.run().name()),
        scene.time(at.run().window().start()) + "–" + scene.time(at.run().window().end()),
        scene.phase(at.run()),
        at.run().covers().isPresent() ? String.valueOf(at.run().covers().getAsInt()) : "",
        scene.cook().map(person -> person.name()).orElse(""),
        new Clock(
            scene.words().time(scene.now()),
            scene.now().toEpochMilli(),
            scene.book().kitchen().clock().zone().getId(),
            scene.words().hours() == Kitchen.Hours.TWELVE),
        facts(scene, at),
        !scene.isPast(),
        at.run().window().end().toEpochMilli(),
        at.run().isOver(scene.now()) ? over(scene, at) : "",
        OutView.list(scene),
        after(scene, typed.entry()),
        ask(scene, at, form),
        last(scene, at, typed.entry()),
        new Form(form, typed.fault()),
        courses,
        TrayRows.of(scene, at, courses, touched),
        !at.run().isOver(scene.now())
            && at.run().event().isEmpty()
            && !scene.board().swaps(at).isEmpty(),
        waves(scene, at),
        numbers);
  }

  /** Whether plates can still be called, plated and sent. */
  public boolean runs() {
    return open && over.isEmpty();
  }

  private static String over(PassScene scene, AtPass at) {
    if (at.lines().isEmpty()) {
      return scene.words().say("pass.over-said");
    }
    int sent = at.lines().stream().mapToInt(AtPass.Line::sent).sum();
    return sent == 0
        ? scene.words().say("pass.over-none")
        : scene.words().say("pass.over-sent", sent, AtPass.toGo(at.lines()));
  }

  private static List<Fact> facts(PassScene scene, AtPass at) {
    List<Fact> facts = new ArrayList<>();
    if (at.run().isOver(scene.now())) {
      return facts;
    }
    at.fires().stream()
        .filter(one -> one.called().isEmpty())
        .findFirst()
        .ifPresent(
            one -> {
              Fire fire = one.fire();
              String name = PlatingWords.fire(scene.words(), fire);
              String time = scene.time(fire.at());
              facts.add(
                  new Fact(
                      scene.words().say("pass.next-fire"),
                      name,
                      scene.until(fire.at()),
                      fire.at().toEpochMilli(),
                      name.equals(time) ? "" : time));
            });
    scene
        .board()
        .drop(at.run())
        .ifPresent(
            drop ->
                facts.add(
                    new Fact(
                        scene.words().say("pass.next-drop"),
                        scene.text(drop.task().version().name()),
                        scene.until(drop.at()),
                        drop.at().toEpochMilli(),
                        scene.words().say("pass.drops", drop.left(), drop.perDrop()))));
    return facts;
  }

  /** What was just entered, while nobody has undone it. */
  private static Optional<After> after(PassScene scene, String entry) {
    return EntryFields.isId(entry)
        ? scene
            .board()
            .called()
            .find(UUID.fromString(entry))
            .map(one -> new After(said(scene, one), entry))
        : Optional.empty();
  }

  /** Asked when more plates are sent than there are guests. */
  private static Optional<Ask> ask(PassScene scene, AtPass at, EntryForm form) {
    if (form.isEmpty() || form.lacksNumber()) {
      return Optional.empty();
    }
    return at.lines().stream()
        .filter(form::isDoubtful)
        .findFirst()
        .map(
            line -> {
              int number = Integer.parseInt(form.number().strip());
              return new Ask(
                  ask(scene, line, line.sent() + number),
                  scene.words().say("pass.ask-yes", number),
                  form.sureFields());
            });
  }

  private static String ask(PassScene scene, AtPass.Line line, int plates) {
    String name = scene.name(line.plates());
    return plates > line.planned()
        ? scene.words().say("pass.ask-more", plates, name, line.planned())
        : scene.words().say("pass.ask-choice", plates, name, line.among().orElse(0));
  }

  /** What was entered last in this service and counts, newest first. */
  private static List<Last> last(PassScene scene, AtPass at, String shown) {
    List<Entry> own =
        scene.board().called().standing().stream()
            .filter(entry -> entry.service().equals(at.run().id()))
            .filter(entry -> !entry.id().toString().equals(shown))
            .toList();
    List<Last> last = new ArrayList<>();
    for (int i = own.size() - 1; i >= 0 && last.size() < LAST; i--) {
      Entry entry = own.get(i);
      String who = scene.time(entry.at()) + " " + scene.person(entry.who());
      last.add(new Last(said(scene, entry), who, entry.id().toString()));
    }
    return last;
  }

  private static String said(PassScene scene, Entry entry) {
    String course =
        scene.board().find(entry.service()).stream()
            .flatMap(at -> at.fires().stream())
            .filter(one -> one.fire().code().equals(entry.course()))
            .map(one -> PlatingWords.fire(scene.words(), one.fire()))
            .findFirst()
            .orElse(entry.course());
    return switch (entry.kind()) {
      case FIRE -> scene.words().say("pass.said.fire", course);
      case SENT -> scene.words().say("pass.said.sent", entry.number(), dish(scene, entry));
      case OUT -> scene.words().say("pass.said.out", scene.name(entry.what()));
      case BACK -> scene.words().say("pass.said.back", scene.name(entry.what()));
      case SWAP -> scene.words().say("pass.said.swap", dish(scene, entry));
      case READY -> scene.words().say("pass.said.ready", scene.station(entry.station()), course);
      case PLATING -> scene.words().say("pass.said.plating", dish(scene, entry), course);
      case PLATED -> scene.words().say("pass.said.plated", entry.number(), dish(scene, entry));
      case DONE -> scene.words().say("pass.said.done", dish(scene, entry), course);
      case GO -> scene.words().say("pass.said.go", course);
      case UNDO -> "";
    };
  }

  private static String dish(PassScene scene, Entry entry) {
    String diets = scene.diets(entry.diets());
    String dish = scene.name(new Outage.What(entry.dish(), ""));
    return diets.isEmpty() ? dish : diets + ": " + dish;
  }

  private static List<Wave> waves(PassScene scene, AtPass at) {
    List<Wave> waves = new ArrayList<>();
    for (halfgram.pass.Wave wave : scene.board().waves().getOrDefault(at.run().id(), List.of())) {
      waves.add(
          new Wave(
              scene.text(wave.make().version().name()),
              scene.time(wave.first().start()),
              scene.names().amount(wave.make().scaled().output(0)),
              said(scene, wave, at.run().isOver(scene.now())),
              isLate(scene, wave)));
    }
    return waves;
  }

  private static boolean isLate(PassScene scene, halfgram.pass.Wave wave) {
    return wave.late(scene.now()).filter(late -> late.toMinutes() > 0).isPresent();
  }

  private static String said(PassScene scene, halfgram.pass.Wave wave, boolean over) {
    Optional<Duration> late = wave.late(scene.now());
    if (late.isEmpty()) {
      return scene.words().say("pass.wave-unknown");
    }
    if (wave.started().isEmpty()) {
      if (over) {
        return scene.words().say("pass.wave-unknown");
      }
      return isLate(scene, wave)
          ? scene.words().say("pass.wave-behind", late.get())
          : scene.until(wave.first().start());
    }
    String started = scene.time(wave.started().get());
    return isLate(scene, wave)
        ? scene.words().say("pass.wave-late", started, late.get())
        : scene.words().say("pass.wave-on-time", started);
  }
}
