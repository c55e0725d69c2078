package halfgram.pages.log;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.book.BookStore;
import halfgram.book.Moments;
import halfgram.desk.House;
import halfgram.desk.LogKind;
import halfgram.desk.Logbook;
import halfgram.desk.Plans;
import halfgram.desk.Waste;
import halfgram.kitchen.KitchenStore.Change;
import halfgram.measure.Amount;
import halfgram.measure.Message;
import halfgram.pages.ServiceLine;
import halfgram.prep.Things;
import halfgram.prep.Tick;
import halfgram.prep.TickStore;
import halfgram.prep.WeighLine;
import halfgram.web.Visit;
import halfgram.words.Messages;
import halfgram.words.SheetWords;
import halfgram.words.TickWords;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * What happened, newest first.
 *
 * @param older address of what is older; empty when this is all
 */
record LogView(
    List<Day> days,
    List<Choice> kinds,
    List<Choice> people,
    boolean narrow,
    boolean newest,
    String older) {

  /**
   * What happened on one business day.
   *
   * @param waste what was lost on it: none or one
   */
  record Day(String date, List<Line> lines, List<WasteView> waste) {}

  /**
   * One thing that happened.
   *
   * @param what its name; linked when there is a page of it
   * @param href within the kitchen; empty without a page
   * @param device the time on the device, when that was another; when and by whom it was entered
   *     later
   */
  record Line(
      String time, String who, String said, String what, String href, String more, String device) {}

  /** Something the log can be narrowed to. */
  record Choice(String value, String name, boolean chosen) {}

  private static final Duration SAME_TIME = Duration.ofMinutes(1);

  /**
   * @param waste of the days shown
   */
  static LogView of(
      House house, Logbook.Part part, List<Waste.Day> waste, LogAsked asked, Messages words) {
    return new Builder(house, part, words).build(asked, waste);
  }

  /** Puts entries into words. */
  private static final class Builder {
    private final House house;
    private final Logbook.Part part;
    private final Messages words;
    private final IdentityHashMap<Plans.Computation, SheetWords> names = new IdentityHashMap<>();

    private Builder(House house, Logbook.Part part, Messages words) {
      this.house = house;
      this.part = part;
      this.words = words;
    }

    private LogView build(LogAsked asked, List<Waste.Day> waste) {
      List<Day> days = new ArrayList<>();
      List<Line> lines = new ArrayList<>();
      LocalDate day = LocalDate.MIN;
      for (Logbook.Entry entry : part.entries()) {
        LocalDate of = house.day(entry.at());
        if (!of.equals(day)) {
          lines = new ArrayList<>();
          List<WasteView> lost =
              waste.stream()
                  .filter(one -> one.date().equals(of))
                  .map(one -> WasteView.of(house, one, words))
                  .toList();
          days.add(new Day(words.date(of), lines, lost));
          day = of;
        }
        lines.add(line(entry));
      }
      return new LogView(
          days,
          kinds(asked),
          people(asked),
          asked.isNarrow(),
          asked.isNewest(),
          part.before().map(asked::older).orElse(""));
    }

    private Line line(Logbook.Entry entry) {
      return entry instanceof Logbook.Entered entered
          ? ticked(entered.tick())
          : changed(((Logbook.Changed) entry).change());
    }

    private Line ticked(TickStore.Entered entered) {
      Tick tick = entered.tick();
      Optional<Logbook.Ticked> task = Optional.ofNullable(part.tasks().get(tick.task()));
      String name = named(tick.task());
      List<String> more = new ArrayList<>();
      Optional<WeighLine> line = tick.line().flatMap(path -> line(task, path));
      tick.line().ifPresent(path -> more.add(line.map(of -> words.text(of.name())).orElse("")));
      tick.amount().ifPresent(amount -> more.add(read(line, amount)));
      tick.note().ifPresent(more::add);
      String href =
          task.map(of -> "task?date=" + of.plan().sheet().request().from())
              .map(at -> at + "&id=" + Visit.encoded(tick.task()))
              .orElse("");
      return new Line(
          done(tick, new Logbook.Entered(entered).at()),
          person(tick.cook()),
          TickWords.said(words, tick.kind()),
          name,
          href,
          String.join(", ", more),
          entered.later().map(later -> later(tick, later)).orElseGet(() -> device(entered)));
    }

    /** When it was done; with its weekday when it was entered on another day. */
    private String done(Tick tick, Instant entered) {
      return house.day(tick.at()).equals(house.day(entered))
          ? words.time(tick.at())
          : words.dayTime(tick.at());
    }

    /** "entered later, at 17:40, by Ines". */
    private String later(Tick tick, TickStore.Later later) {
      boolean same = house.day(tick.at()).equals(house.day(later.came()));
      String at = same ? words.time(later.came()) : words.moment(later.came());
      return words.say("log.entered-later", at, person(later.by()));
    }

    private String device(TickStore.Entered entered) {
      Instant time = entered.origin().time();
      Duration apart = Duration.between(time, entered.tick().at()).abs();
      return apart.compareTo(SAME_TIME) > 0 ? words.say("log.device-time", words.moment(time)) : "";
    }

    /** What a task was called; its id when no plan knows it any more. */
    private String named(String task) {
      return Optional.ofNullable(part.tasks().get(task)).map(this::title).orElse(task);
    }

    private String day(JsonNode detail) {
      String said = detail.path("day").asText();
      return Moments.date(said).map(words::shortDate).orElse(said);
    }

    /** What a task was called in its plan. */
    private String title(Logbook.Ticked task) {
      SheetWords of =
          names.computeIfAbsent(
              task.plan(), plan -> new SheetWords(plan.book(), plan.sheet(), words));
      return of.title(task.task());
    }

    private static Optional<WeighLine> line(Optional<Logbook.Ticked> task, String path) {
      return task.stream()
          .flatMap(of -> of.task().weigh().stream())
          .flatMap(group -> group.lines().stream())
          .filter(line -> line.path().equals(path))
          .findFirst();
    }

    /** As fine as its scale reads it. */
    private String read(Optional<WeighLine> line, Amount amount) {
      return line.flatMap(of -> of.weighing().scale())
          .map(on -> words.figures().read(on.display(amount.number())) + " " + on.reads().symbol())
          .orElseGet(() -> words.amount(amount));
    }

    private Line changed(Change change) {
      JsonNode detail = BookStore.parse(change.detail());
      String subject = change.subject();
      PlanLine plan = new PlanLine(words, house.book().kitchen().clock());
      return switch (change.kind()) {
        case "plan" ->
            new Line(
                words.time(change.at()),
                plan.isFirst(subject) ? words.say("log.clock") : person(change.who()),
                words.say("log.plan"),
                plan.name(subject),
                plan.href(subject),
                plan.more(change),
                "");
        case "event" -> {
          EventLines event = new EventLines(house, words);
          yield line(
              change,
              "log.event",
              event.name(subject, detail),
              event.more(detail),
              event.href(subject));
        }
        case "par" -> line(change, "log.par", subject, fromTo(detail), "pars");
        case "formula" ->
            line(change, "log.formula", formula(subject), version(detail), "formulas/" + subject);
        case "stock" ->
            line(
                change,
                "log.stock",
                subject,
                new StockLine(house, words).of(detail, change.at()),
                "stock/" + Visit.encoded(subject));
        case "service" ->
            line(
                change,
                "log.service",
                RunName.of(house, subject, words),
                new ServiceLine(house.book(), words).said(detail),
                "");
        case "slip" -> line(change, "log.slip", slipped(subject, detail), slip(detail), "");
        case "bath" ->
            line(
                change,
                BathLines.key(detail),
                words.say("log.bath", subject),
                BathLines.more(words, detail),
                BathLines.href(change, detail));
        case "gate" ->
            line(
                change,
                "gate.kind." + detail.path("kind").asText(),
                formula(detail.path("formula").asText()) + ", " + detail.path("step").asText(),
                new GateLines(house, words).more(detail),
                "formulas/" + detail.path("formula").asText());
        case "delivery" ->
            line(
                change,
                "log.delivery",
                detail.path("supplier").asText(subject),
                delivery(detail),
                "deliveries/" + Visit.encoded(subject));
        case "kit" ->
            line(
                change,
                "log.kit",
                words.say(Message.of("wall.thing", Things.name(house.book(), subject))),
                detail.path("how").asText(),
                "kit");
        case "crew" -> {
          CrewLines crew = new CrewLines(house, words);
          yield line(change, "nav.crew", crew.name(subject), crew.more(detail), "crew");
        }
        case "lanes" ->
            line(
                change,
                switch (detail.path("how").asText()) {
                  case "pinned" -> "log.lanes-pinned";
                  case "longer" -> "log.lanes-longer";
                  case "unpinned" -> "log.lanes-unpinned";
                  default -> "log.lanes-accepted";
                },
                detail.has("task") ? named(detail.path("task").asText()) : day(detail),
                "",
                "lanes?date=" + detail.path("day").asText());
        case "book" -> {
          String one = words.say("book.one." + detail.path("list").asText());
          yield line(change, "log.book", words.say("book.logged", one, subject), "", "book");
        }
        case "import" -> line(change, "log.import", subject, "", "");
        default -> line(change, "log.other", change.kind() + " " + subject, "", "");
      };
    }

    private Line line(Change change, String said, String what, String more, String href) {
      return new Line(
          words.time(change.at()), person(change.who()), words.say(said), what, href, more, "");
    }

    /** "Bar evening, Sat 5 Dec". */
    private String slipped(String code, JsonNode detail) {
      String name =
          Optional.ofNullable(house.book().services().get(code))
              .map(service -> words.text(service.name()))
              .orElse(code);
      return Moments.date(detail.path("date").asText())
          .map(date -> words.say("log.slip-of", name, words.shortDate(date)))
          .orElse(name);
    }

    private String slip(JsonNode detail) {
      List<String> parts = new ArrayList<>();
      if (detail.has("minutes")) {
        int by = detail.path("minutes").asInt();
        parts.add(words.say(by < 0 ? "log.slip-earlier" : "log.slip-later", Math.abs(by)));
      }
      if (detail.has("covers")) {
        parts.add(words.say("log.slip-covers", detail.path("covers").asInt()));
      }
      if (detail.has("swapped")) {
        parts.add(words.say("log.slip-swapped"));
      }
      return String.join(", ", parts);
    }

    private String fromTo(JsonNode detail) {
      String none = words.say("log.none");
      String from = detail.path("from").asText();
      String to = detail.path("to").asText();
      return words.say("log.from-to", from.isEmpty() ? none : from, to.isEmpty() ? none : to);
    }

    private String formula(String code) {
      return house
          .book()
          .formulary()
          .find(code)
          .map(of -> words.text(of.current().name()))
          .orElse(code);
    }

    private String version(JsonNode detail) {
      if (detail.has("version")) {
        return words.say("log.version", detail.path("version").asInt());
      }
      boolean out = detail.path("after").path("takenOut").asBoolean(false);
      return words.say(out ? "log.formula-out" : "log.formula-back");
    }

    /** What was entered or edited of a delivery. */
    private String delivery(JsonNode detail) {
      JsonNode entry = detail.path("entry");
      List<String> more = new ArrayList<>();
      more.add(deliveryKind(detail.path("kind").asText()));
      for (String key : List.of("expected", "ingredient", "came", "reason", "reading")) {
        if (entry.path(key).isTextual()) {
          more.add(entry.path(key).asText());
        }
      }
      return String.join(", ", more);
    }

    private String deliveryKind(String kind) {
      return switch (kind) {
        case "added" -> words.say("log.delivery-added");
        case "edited" -> words.say("log.delivery-edited");
        case "arrived" -> words.say("deliveries.entry-arrived");
        case "late" -> words.say("log.delivery-late");
        case "short" -> words.say("log.delivery-short");
        case "rejected" -> words.say("log.delivery-rejected");
        case "cancelled" -> words.say("deliveries.entry-cancelled");
        case "undo" -> words.say("log.undo");
        default -> kind;
      };
    }

    private String person(String code) {
      return house.book().personName(code);
    }

    private List<Choice> kinds(LogAsked asked) {
      Map<LogKind, String> names = LogKinds.names(words);
      List<Choice> choices = new ArrayList<>();
      for (LogKind kind : LogKind.values()) {
        String name = names.getOrDefault(kind, kind.name().toLowerCase(Locale.ROOT));
        choices.add(new Choice(kind.word(), name, asked.kind().filter(kind::equals).isPresent()));
      }
      return choices;
    }

    private List<Choice> people(LogAsked asked) {
      return house.book().people().stream()
          .map(
              one ->
                  new Choice(
                      one.code(), one.name(), asked.who().filter(one.code()::equals).isPresent()))
          .toList();
    }
  }
}
