package halfgram.api;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.desk.Desk;
import halfgram.desk.House;
import halfgram.desk.LogKind;
import halfgram.desk.Logbook;
import halfgram.kitchen.KitchenStore.Change;
import halfgram.pages.Rooms;
import halfgram.prep.Tick;
import halfgram.prep.TickStore;
import halfgram.web.Halt;
import halfgram.web.Server;
import halfgram.web.Visit;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.Optional;
import java.util.function.Predicate;

/** What happened, newest first. */
public final class LogApi implements Server.Part {
  private final Desk desk;
  private final Logbook logbook;

  public LogApi(Desk desk, Logbook logbook) {
    this.desk = desk;
    this.logbook = logbook;
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get("/k/{kitchen}/api/v1/log", this::log);
  }

  private void log(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    long after = Query.findNumber(visit, "after").orElse(Long.MAX_VALUE);
    Logbook.Part part = logbook.list(house, after, Query.limit(visit), wanted(visit, house));
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    ArrayNode entries = node.putArray("entries");
    part.entries().forEach(entry -> entry(entries.addObject(), entry, part, house));
    part.before().ifPresent(next -> node.put("next", next));
    visit.json(200, node.toString());
  }

  // ---- behind the handler ----

  private static Predicate<Logbook.Entry> wanted(Visit visit, House house) {
    Optional<LogKind> kind = kind(visit.query("kind"));
    Optional<LocalDate> from = Query.findDate(visit, "from");
    Optional<LocalDate> to = Query.findDate(visit, "to");
    String who = visit.query("who");
    return entry -> {
      LocalDate day = house.day(entry.at());
      return kind.map(of -> of.includes(entry)).orElse(true)
          && from.map(first -> !day.isBefore(first)).orElse(true)
          && to.map(last -> !day.isAfter(last)).orElse(true)
          && (who.isEmpty() || entry.who().equals(who));
    };
  }

  private static Optional<LogKind> kind(String word) {
    Optional<LogKind> kind = LogKind.find(word);
    if (kind.isEmpty() && !word.isEmpty()) {
      String known = String.join("|", Arrays.stream(LogKind.values()).map(LogKind::word).toList());
      throw Halt.unreadable("kind=" + known);
    }
    return kind;
  }

  private static void entry(ObjectNode node, Logbook.Entry entry, Logbook.Part part, House house) {
    node.put("number", entry.number());
    node.put("at", Answers.moment(entry.at(), Answers.zone(house)));
    node.put("who", entry.who());
    if (entry instanceof Logbook.Entered entered) {
      ticked(node, entered.tick(), part, Answers.zone(house));
    } else if (entry instanceof Logbook.Changed changed) {
      Change change = changed.change();
      node.put("kind", change.kind());
      node.put("subject", change.subject());
      node.set("detail", Logbook.detail(change));
    }
  }

  private static void ticked(
      ObjectNode node, TickStore.Entered entered, Logbook.Part part, ZoneId zone) {
    Tick tick = entered.tick();
    node.put("kind", LogKind.TICK.word());
    node.put("subject", tick.task());
    ObjectNode detail = node.putObject("detail");
    detail.put("tick", tick.id().toString());
    detail.put("kind", Call.word(tick.kind()));
    Optional.ofNullable(part.tasks().get(tick.task()))
        .ifPresent(
            ticked -> {
              detail.put("formula", ticked.task().version().formula());
              detail.put("station", ticked.task().station());
            });
    tick.line().ifPresent(line -> detail.put("line", line));
    tick.amount().ifPresent(amount -> Answers.amount(detail, "amount", amount));
    tick.note().ifPresent(note -> detail.put("note", note));
    tick.undoes().ifPresent(undoes -> detail.put("undoes", undoes.toString()));
    detail.put("device", entered.origin().device().toString());
    detail.put("deviceTime", Answers.moment(entered.origin().time(), zone));
    entered
        .later()
        .ifPresent(
            later -> {
              detail.put("doneAt", Answers.moment(tick.at(), zone));
              detail.put("enteredBy", later.by());
            });
  }
}
