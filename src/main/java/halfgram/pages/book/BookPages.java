package halfgram.pages.book;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookStore;
import halfgram.desk.BookItems;
import halfgram.desk.Desk;
import halfgram.desk.House;
import halfgram.desk.SheetEffects;
import halfgram.pages.Effect;
import halfgram.pages.Rooms;
import halfgram.web.Halt;
import halfgram.web.Server;
import halfgram.web.Visit;
import halfgram.words.Messages;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Optional;

/** The kitchen's book: what there is of each kind, and a form for each thing. */
public final class BookPages implements Server.Part {
  private static final String PLACE = "/k/{kitchen}/book";

  private final Desk desk;
  private final BookItems items;
  private final SheetEffects effects;

  public BookPages(Desk desk, SheetEffects effects) {
    this.desk = desk;
    this.items = new BookItems(desk);
    this.effects = effects;
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get(PLACE, this::list);
    routes.get(PLACE + "/{kind}/new", this::blank);
    routes.post(PLACE + "/{kind}/new", context -> sent(context, Optional.empty()));
    routes.get(PLACE + "/{kind}/{code}", this::one);
    routes.post(
        PLACE + "/{kind}/{code}", context -> sent(context, Optional.of(context.pathParam("code"))));
  }

  private void list(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    Messages words = visit.words();
    visit.page(
        "book",
        words.say("book.title"),
        ListView.of(house, visit.query("saved"), items.findOut(house, visit.query("out")), words));
  }

  private void blank(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    String kind = kind(visit);
    if (kind.equals(BookItems.KITCHEN)) {
      throw Halt.notFound(kind);
    }
    form(visit, house, 200, Editing.blank(kind), List.of());
  }

  private void one(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    String kind = kind(visit);
    ObjectNode item = item(visit, house, kind).orElseThrow(() -> Halt.notFound(visit.part("code")));
    form(visit, house, 200, Editing.of(kind, house.book(), item), List.of());
  }

  private void sent(Context context, Optional<String> code) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    String kind = kind(visit);
    Editing editing = Editing.sent(kind, code, base(visit, code.isPresent()), visit.form());
    String act = visit.field("act");
    switch (act) {
      case "back" -> putBack(visit, house, kind);
      case "save", "look", "out" -> answer(visit, house, editing, act);
      default -> {
        editing.act(act);
        form(visit, house, 200, editing, List.of());
      }
    }
  }

  // ---- behind the handlers ----

  private static String kind(Visit visit) {
    String kind = visit.part("kind");
    if (!BookItems.KINDS.contains(kind)) {
      throw Halt.notFound(kind);
    }
    return kind;
  }

  private static Optional<ObjectNode> item(Visit visit, House house, String kind) {
    return BookItems.find(house, kind, visit.part("code"));
  }

  /** What the thing was when the form was made. */
  private static ObjectNode base(Visit visit, boolean there) {
    String sent = visit.field("base");
    try {
      JsonNode body = BookStore.parse(sent.isEmpty() ? "{}" : sent);
      if (body instanceof ObjectNode object && (!there || object.has("code"))) {
        return object;
      }
      throw Halt.unreadable("base");
    } catch (UncheckedIOException e) {
      throw Halt.unreadable("base");
    }
  }

  private void answer(Visit visit, House house, Editing editing, String act) {
    Messages words = visit.words();
    boolean out = act.equals("out");
    BookItems.Edit edit = out ? editing.out() : editing.edit(house.book(), words);
    if (out && asksOut(visit, house, editing)) {
      return;
    }
    BookItems.Outcome outcome =
        act.equals("look") || editing.isWrong()
            ? items.look(house, edit)
            : items.save(house, edit, visit.who());
    if (outcome instanceof BookItems.Saved) {
      visit.seeOther(
          (out ? "book?out=" : "book?saved=") + Visit.encoded(edit.code()) + "#" + editing.kind());
    } else if (outcome instanceof BookItems.Looked && editing.isWrong()) {
      form(visit, house, 422, editing, List.of());
    } else if (outcome instanceof BookItems.Looked looked) {
      form(visit, house, 200, editing, effects(house, looked.house(), words));
    } else if (outcome instanceof BookItems.Wrong wrong) {
      if (out) {
        editing.stays(wrong, house.tree(), words);
      } else {
        editing.take(wrong, house.tree(), words);
      }
      form(visit, house, 422, editing, List.of());
    } else if (outcome instanceof BookItems.Stale stale) {
      visit.notice(words.say(stale.theirs().isPresent() ? "book.stale" : "book.gone"));
      form(visit, desk.again(house), 409, editing.rebased(stale.theirs()), List.of());
    }
  }

  /** What was taken out, exactly as it was; where that does not read any more, as a new one. */
  private void putBack(Visit visit, House house, String kind) {
    ObjectNode body = base(visit, true);
    String code = body.path("code").asText();
    BookItems.Edit edit = new BookItems.Edit(kind, code, Optional.empty(), Optional.of(body));
    if (items.save(house, edit, visit.who()) instanceof BookItems.Wrong wrong) {
      Editing editing = Editing.of(kind, house.book(), body).rebased(Optional.empty());
      editing.take(wrong, house.tree(), visit.words());
      form(visit, house, 422, editing, List.of());
      return;
    }
    visit.seeOther("book?saved=" + Visit.encoded(code) + "#" + kind);
  }

  /** Taking out what work goes on with is asked once more, with what that does. */
  private boolean asksOut(Visit visit, House house, Editing editing) {
    BookItems.Edit out = editing.out();
    if (visit.field("sure").equals("yes")
        || !(items.look(house, out) instanceof BookItems.Looked looked)) {
      return false;
    }
    Messages words = visit.words();
    List<String> uses =
        effects.inUse(house, out.kind(), out.code()).stream().map(words::say).toList();
    List<SheetEffects.Effect> found = effects.list(house, looked.house());
    if (uses.isEmpty() && found.isEmpty()) {
      return false;
    }
    editing.askOut(uses);
    visit.notice(words.say("book.out-ask", String.join(" ", uses)).strip());
    form(
        visit,
        house,
        422,
        editing,
        found.stream().map(effect -> Effect.of(effect, words)).toList());
    return true;
  }

  private List<Effect> effects(House house, House after, Messages words) {
    List<Effect> found =
        effects.list(house, after).stream().map(effect -> Effect.of(effect, words)).toList();
    return found.isEmpty() ? List.of(Effect.none(words.say("formulas.effect-none"))) : found;
  }

  private static void form(
      Visit visit, House house, int status, Editing editing, List<Effect> effects) {
    EditView view = editing.view(house.book(), effects, visit.words());
    visit.page(status, "book/edit", view.title(), view);
  }
}
