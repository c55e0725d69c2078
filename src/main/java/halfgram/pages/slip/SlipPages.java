package halfgram.pages.slip;

import halfgram.desk.DayWith;
import halfgram.desk.Desk;
import halfgram.desk.House;
import halfgram.desk.Push;
import halfgram.desk.SheetEffects;
import halfgram.desk.Slips;
import halfgram.desk.WhatIf;
import halfgram.input.Problem;
import halfgram.pages.Rooms;
import halfgram.pages.WhatIfLink;
import halfgram.pages.lanes.ThenView;
import halfgram.web.Halt;
import halfgram.web.Server;
import halfgram.web.Visit;
import halfgram.words.Messages;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * A service later or earlier, or with other covers. Every press shows what it would do; nothing is
 * stored before somebody says so.
 */
public final class SlipPages implements Server.Part {
  /** What can be pressed: to look, to note it, to put it in force; anything else stores nothing. */
  private static final Set<String> ACTS = Set.of("", "note", "force");

  private final Desk desk;
  private final Slips slips;
  private final SheetEffects effects;
  private final DayWith dayWith;

  public SlipPages(Desk desk, Slips slips, SheetEffects effects, WhatIf whatIf) {
    this.desk = desk;
    this.slips = slips;
    this.effects = effects;
    this.dayWith = new DayWith(desk, whatIf);
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get("/k/{kitchen}/slip/{run}", this::form);
    routes.post("/k/{kitchen}/slip/{run}", this::sent);
  }

  private void form(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    Slips.Found found = found(visit, house);
    SlipForm form = SlipForm.linked(visit, found).stepped();
    if (form.isMinutes() && form.isCovers() && form.asked(found).isSomething()) {
      look(visit, house, 200, form, form.asked(found));
    } else {
      show(visit, house, 200, form, Optional.empty(), List.of());
    }
  }

  private void sent(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    Slips.Found found = found(visit, house);
    SlipForm form = SlipForm.of(visit).stepped();
    if (!form.isMinutes() || !form.isCovers()) {
      show(visit, house, 422, form, Optional.empty(), List.of());
      return;
    }
    if (!ACTS.contains(form.act())) {
      throw Halt.unreadable("do");
    }
    Slips.Asked asked = form.asked(found);
    if (!asked.isSomething()) {
      show(visit, house, 200, form, Optional.empty(), List.of());
    } else if (form.act().isEmpty()) {
      look(visit, house, 200, form, asked);
    } else {
      store(visit, house, found, form, asked);
    }
  }

  // ---- behind the handlers ----

  private static Slips.Found found(Visit visit, House house) {
    String run = visit.part("run");
    return Slips.find(house, run).orElseThrow(() -> Halt.notFound(run));
  }

  private void look(Visit visit, House house, int status, SlipForm form, Slips.Asked asked) {
    Slips.Tried tried = slips.look(house, asked);
    if (tried.house().isEmpty()) {
      show(visit, house, 422, form, Optional.empty(), tried.problems());
      return;
    }
    Slips.Found found = Slips.find(house, asked.run()).orElseThrow();
    Optional<ThenView> crew = crew(visit, house, tried.house().get(), found.date());
    SheetEffects.Slipped slipped = effects.slip(house, tried.house().get(), found.date());
    SlipView.Looked looked =
        new SlipView.Looked(
            Slips.find(tried.house().get(), asked.run()).orElseThrow(),
            slipped.sheets(),
            slipped.consequences(),
            crew,
            lanes(visit, found, asked));
    show(visit, house, status, form, Optional.of(looked), List.of());
  }

  /** Whether the day fits people and machines with it, of days of which the lanes say so. */
  private Optional<ThenView> crew(Visit visit, House house, House after, LocalDate day) {
    return dayWith
        .find(house, after, day, visit.who())
        .map(answer -> ThenView.of(answer, house, desk.now(), visit));
  }

  /** Where the lanes are asked the same; empty for what they cannot be asked. */
  private static String lanes(Visit visit, Slips.Found found, Slips.Asked asked) {
    boolean part = asked.push().flatMap(Push::from).isPresent();
    if (part || asked.serving().isPresent()) {
      return "";
    }
    int now = found.covers().orElse(0);
    return WhatIfLink.of(
        visit.path(""),
        found.date(),
        found.run(),
        asked.covers().orElse(now) - now,
        asked.push().map(Push::minutes).orElse(0));
  }

  private void store(
      Visit visit, House house, Slips.Found found, SlipForm form, Slips.Asked asked) {
    String seen = visit.field("seen");
    if (!seen.matches("\\d{1,18}")) {
      throw Halt.unreadable("seen");
    }
    Slips.Outcome outcome = slips.save(house, asked, Long.parseLong(seen), visit.who());
    if (outcome instanceof Slips.Stale) {
      visit.notice(visit.words().say("slip.stale"));
      House now = desk.again(house);
      look(visit, now, 409, form, form.asked(found(visit, now)));
    } else if (outcome instanceof Slips.Wrong wrong) {
      show(visit, house, 422, form, Optional.empty(), wrong.problems());
    } else if (outcome instanceof Slips.NoSuch) {
      throw Halt.notFound(found.run());
    } else {
      accept(visit, house, found, form);
    }
  }

  /** Puts the plan with it in force when that was asked for; else it is offered on Today. */
  private void accept(Visit visit, House before, Slips.Found found, SlipForm form) {
    boolean today = found.date().equals(before.day(desk.now()));
    if (form.act().equals("force")) {
      slips.force(before, found, visit.who());
    }
    visit.seeOther(today ? "" : "?date=" + found.date());
  }

  private void show(
      Visit visit,
      House house,
      int status,
      SlipForm form,
      Optional<SlipView.Looked> looked,
      List<Problem> problems) {
    Messages words = visit.words();
    Slips.Found found = found(visit, house);
    boolean today = found.date().equals(house.day(desk.now()));
    SlipView view =
        SlipView.of(
            house,
            found,
            new SlipView.When(today, slips.isBegun(house, found)),
            form,
            looked,
            problems,
            words);
    visit.page(status, "slip", view.title(), view);
  }
}
