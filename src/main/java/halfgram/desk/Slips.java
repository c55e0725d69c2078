package halfgram.desk;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookReader;
import halfgram.book.BookStore;
import halfgram.db.Tx;
import halfgram.event.Event;
import halfgram.event.RegularService;
import halfgram.event.Service;
import halfgram.event.ServiceDate;
import halfgram.input.Problem;
import halfgram.kitchen.KitchenStore;
import halfgram.kitchen.KitchenStore.News;
import halfgram.kitchen.KitchenStore.Stand;
import halfgram.measure.BusinessDay;
import halfgram.measure.Message;
import halfgram.prep.KitchenBook;
import halfgram.prep.Serving;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.format.DateTimeParseException;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * One service on one date, later or earlier than planned, or with other covers: an event's as the
 * event has it, a regular one's for that date alone.
 *
 * <p>Rules. Of a service that has begun only what is left moves, unless a time is named. The whole
 * book is read with it before anything is stored, and nothing is when facts have changed since it
 * was looked at, so that pressing twice pushes once. No plan in force changes: that is for whoever
 * accepts the next one.
 */
public final class Slips {
  private static final String SLIP = "slip";

  /**
   * What is asked.
   *
   * @param run id of the service as a plan has it: an event's code, with the service's code behind
   *     a dot where it has several, or a regular service's code and date
   * @param push none for a service that stays where it is
   * @param covers counted guests; empty for as many as now
   * @param serving how it is served otherwise; an event's alone
   */
  public record Asked(
      String run, Optional<Push> push, OptionalInt covers, Optional<Serving> serving) {
    public Asked(String run, Optional<Push> push, OptionalInt covers) {
      this(run, push, covers, Optional.empty());
    }

    public boolean isSomething() {
      return push.isPresent() || covers.isPresent() || serving.isPresent();
    }
  }

  /**
   * A service that can slip.
   *
   * @param times of courses or pick-ups, in order; none for a service that is even
   */
  public record Found(
      String run,
      Optional<Event> event,
      Optional<RegularService> regular,
      LocalDate date,
      LocalTime start,
      LocalTime end,
      List<Moment> times,
      OptionalInt covers) {}

  /**
   * A time from which on a service can be pushed.
   *
   * @param name of the course; empty for a pick-up
   */
  public record Moment(LocalTime at, Optional<halfgram.kitchen.Text> name) {}

  /** The kitchen as it would be; empty when there are problems. */
  public record Tried(Optional<House> house, List<Problem> problems) {}

  /** What became of it. */
  public sealed interface Outcome permits Saved, Stale, Wrong, NoSuch {}

  /** It is stored. */
  public record Saved() implements Outcome {}

  /** Facts have changed since it was looked at. */
  public record Stale() implements Outcome {}

  /** The book does not read with it. */
  public record Wrong(List<Problem> problems) implements Outcome {}

  /** There is no such service. */
  public record NoSuch() implements Outcome {}

  private final Desk desk;
  private final Plans plans;
  private final Events events;
  private final KitchenStore kitchens = new KitchenStore();
  private final BookStore books = new BookStore();

  public Slips(Desk desk, Plans plans, Events events) {
    this.desk = desk;
    this.plans = plans;
    this.events = events;
  }

  /** The service that a plan calls so. */
  public static Optional<Found> find(House house, String run) {
    for (Event event : house.book().events()) {
      for (Service service : event.services()) {
        String id =
            event.services().size() == 1 ? event.code() : event.code() + "." + service.code();
        if (id.equals(run)) {
          return Optional.of(found(run, event, service));
        }
      }
    }
    int dot = run.lastIndexOf('.');
    RegularService service = dot < 0 ? null : house.book().services().get(run.substring(0, dot));
    return service == null
        ? Optional.empty()
        : date(run.substring(dot + 1))
            .filter(date -> service.days().contains(date.getDayOfWeek()))
            .map(date -> found(run, service, service.on(date)));
  }

  /** What services are called: an event's by its code, a regular one's with a date behind it. */
  public static List<String> known(House house) {
    List<String> known = new ArrayList<>();
    for (Event event : house.book().events()) {
      for (Service service : event.services()) {
        known.add(
            event.services().size() == 1 ? event.code() : event.code() + "." + service.code());
      }
    }
    house.book().services().keySet().forEach(code -> known.add(code + ".YYYY-MM-DD"));
    return known;
  }

  private static Found found(String run, Event event, Service service) {
    List<Moment> times =
        service.courses().isEmpty()
            ? service.curve().pickUps().stream()
                .map(one -> new Moment(one.at(), Optional.empty()))
                .toList()
            : service.courses().stream()
                .map(one -> new Moment(one.at(), Optional.of(one.name())))
                .toList();
    return new Found(
        run,
        Optional.of(event),
        Optional.empty(),
        event.date(),
        service.start(),
        service.end(),
        times,
        OptionalInt.of(event.covers().counted()));
  }

  private static Found found(String run, RegularService service, ServiceDate on) {
    return new Found(
        run,
        Optional.empty(),
        Optional.of(service),
        on.date(),
        on.start(),
        on.end(),
        on.curve().pickUps().stream().map(one -> new Moment(one.at(), Optional.empty())).toList(),
        on.covers());
  }

  private static Optional<LocalDate> date(String text) {
    try {
      return Optional.of(LocalDate.parse(text));
    } catch (DateTimeParseException e) {
      return Optional.empty();
    }
  }

  /** Whether it runs, or has run: what is left of it can still be pushed. */
  public boolean isBegun(House house, Found found) {
    return desk.now().isAfter(house.book().kitchen().clock().at(found.date(), found.start()));
  }

  /** The kitchen with it; nothing is stored. */
  public Tried look(House house, Asked asked) {
    Found found = find(house, asked.run()).orElseThrow();
    List<Problem> problems = new ArrayList<>();
    Optional<ObjectNode> body = body(house, found, asked, problems);
    if (body.isEmpty()) {
      return new Tried(Optional.empty(), problems);
    }
    if (found.event().isPresent()) {
      Events.Tried tried = events.look(house, body.get());
      return new Tried(tried.house(), tried.problems().list());
    }
    ObjectNode tree = with(house, body.get());
    BookReader.Outcome read = desk.check(tree);
    Optional<KitchenBook> book = read.problems().isEmpty() ? read.book() : Optional.empty();
    return new Tried(book.map(one -> new House(house.stand(), one, tree)), read.problems());
  }

  private static Problem leavesTheDay(Asked asked) {
    String minutes = String.valueOf(asked.push().map(Push::minutes).orElse(0));
    return new Problem("$.minutes", minutes, Message.of("slip.leaves-day"));
  }

  private static Problem noServing(Asked asked) {
    String words = asked.serving().map(Serving::words).orElse("");
    return new Problem("$.serve", words, Message.of("slip.no-serving"));
  }

  /**
   * Puts today's plan in force with what was stored.
   *
   * @return whether it is: not for another day, nor when somebody has changed the kitchen since
   */
  public boolean force(House before, Found found, String who) {
    House house = desk.again(before);
    if (!found.date().equals(house.day(desk.now()))) {
      return false;
    }
    plans.open(house, found.date(), who);
    return plans.accept(house, found.date(), house.stand().facts(), who)
        == Plans.Accepting.IN_FORCE;
  }

  /**
   * Stores it.
   *
   * @param facts number of the last fact that was known when it was looked at
   */
  public Outcome save(House house, Asked asked, long facts, String who) {
    return desk.write(
        house,
        tx -> {
          Stand stand = kitchens.lock(tx, house.id());
          if (stand.facts() != facts) {
            return new Stale();
          }
          House now = desk.open(tx, stand);
          return find(now, asked.run())
              .<Outcome>map(found -> save(tx, now, found, asked, who))
              .orElseGet(NoSuch::new);
        });
  }

  private Outcome save(Tx tx, House house, Found found, Asked asked, String who) {
    List<Problem> problems = new ArrayList<>();
    Optional<ObjectNode> made = body(house, found, asked, problems);
    if (made.isEmpty()) {
      return new Wrong(problems);
    }
    ObjectNode body = made.get();
    if (found.event().isPresent()) {
      Events.Outcome outcome = events.keep(tx, house, body, who);
      return outcome instanceof Events.Problems wrong ? new Wrong(wrong.list()) : new Saved();
    }
    BookReader.Outcome read = desk.check(with(house, body));
    if (!read.problems().isEmpty()) {
      return new Wrong(read.problems());
    }
    String code = found.regular().orElseThrow().code();
    ObjectNode detail = JsonNodeFactory.instance.objectNode();
    detail.put("date", found.date().toString());
    asked.push().ifPresent(push -> detail.put("minutes", push.minutes()));
    asked.covers().ifPresent(covers -> detail.put("covers", covers));
    for (JsonNode before : house.tree().path("services")) {
      if (before.path("code").asText().equals(code)) {
        detail.set("before", before);
      }
    }
    detail.set("after", body);
    News news = News.fact(SLIP, code, detail.toString(), who);
    long change = kitchens.change(tx, house.id(), news, desk.now());
    books.save(tx, house.id(), "services", code, 0, body.toString(), change);
    return new Saved();
  }

  /**
   * The event, or the regular service, as the book would write it; empty when the push would leave
   * the business day, or it cannot be served so.
   */
  private Optional<ObjectNode> body(House house, Found found, Asked asked, List<Problem> problems) {
    BusinessDay clock = house.book().kitchen().clock();
    Optional<Push> push = asked.push().map(of -> leaving(house, found, of));
    boolean fits = true;
    boolean served = asked.serving().isEmpty();
    ObjectNode body;
    if (found.event().isPresent()) {
      Event event = found.event().get();
      body = item(house, "events", event.code()).deepCopy();
      ObjectNode of = body;
      asked.covers().ifPresent(covers -> of.withObject("/covers").put("final", covers));
      String code = found.run().substring(Math.min(found.run().length(), event.code().length()));
      for (JsonNode service : body.path("services")) {
        boolean it = code.isEmpty() || code.equals("." + service.path("code").asText());
        if (push.isPresent() && it) {
          fits = push.get().move((ObjectNode) service, clock.dayStart());
        }
        if (asked.serving().isPresent() && it) {
          served = new Served(house.tree(), (ObjectNode) service, asked.serving().get()).write();
        }
      }
    } else {
      body = item(house, "services", found.regular().orElseThrow().code()).deepCopy();
      ObjectNode date = date(body, found);
      fits = push.isEmpty() || push.get().move(date, clock.dayStart());
      asked.covers().ifPresent(covers -> date.put("covers", covers));
    }
    if (!fits) {
      problems.add(leavesTheDay(asked));
    }
    push.flatMap(of -> inPast(clock, found, of)).ifPresent(problems::add);
    if (!served) {
      problems.add(noServing(asked));
    }
    return problems.isEmpty() ? Optional.of(body) : Optional.empty();
  }

  /** Nothing is moved to a time that is over. */
  private Optional<Problem> inPast(BusinessDay clock, Found found, Push push) {
    Instant first = clock.at(found.date(), push.from().orElse(found.start()));
    long least = -Math.floorDiv(Duration.between(desk.now(), first).toSeconds(), 60L);
    String minutes = String.valueOf(push.minutes());
    return push.minutes() < 0 && push.minutes() < least
        ? Optional.of(new Problem("$.minutes", minutes, Message.of("slip.in-past", least)))
        : Optional.empty();
  }

  /** A push of a service that has begun leaves alone what should be out by now. */
  private Push leaving(House house, Found found, Push push) {
    if (push.from().isPresent() || !isBegun(house, found)) {
      return push;
    }
    LocalTime now = desk.now().atZone(house.book().kitchen().clock().zone()).toLocalTime();
    return new Push(Optional.of(now.truncatedTo(ChronoUnit.MINUTES)), push.minutes());
  }

  /** What the book says of the date, or would when it were as usual. */
  static ObjectNode date(ObjectNode service, Found found) {
    ArrayNode dates = service.withArray("dates");
    ObjectNode date = null;
    for (JsonNode one : dates) {
      if (one.path("date").asText().equals(found.date().toString())) {
        date = (ObjectNode) one;
      }
    }
    if (date == null) {
      date = dates.addObject();
      date.put("date", found.date().toString());
    }
    date.put("start", found.start().toString());
    date.put("end", found.end().toString());
    if (!found.times().isEmpty()) {
      ArrayNode curve = date.putArray("curve");
      List<halfgram.event.Curve.PickUp> pickUps =
          found.regular().orElseThrow().on(found.date()).curve().pickUps();
      for (halfgram.event.Curve.PickUp pickUp : pickUps) {
        ObjectNode one = curve.addObject();
        one.put("at", pickUp.at().toString());
        one.put("share", pickUp.share().percent());
      }
    }
    return date;
  }

  static ObjectNode item(House house, String list, String code) {
    for (JsonNode one : house.tree().path(list)) {
      if (one.path("code").asText().equals(code)) {
        return (ObjectNode) one;
      }
    }
    throw new IllegalStateException("no " + code + " in " + list);
  }

  static ObjectNode with(House house, ObjectNode service) {
    ObjectNode tree = house.tree().deepCopy();
    ArrayNode list = tree.withArray("services");
    for (int i = 0; i < list.size(); i++) {
      if (list.get(i).path("code").equals(service.path("code"))) {
        list.set(i, service);
      }
    }
    return tree;
  }
}
