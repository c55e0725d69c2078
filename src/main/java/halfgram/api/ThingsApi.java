package halfgram.api;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.desk.BookItems;
import halfgram.desk.BookItems.Edit;
import halfgram.desk.BookItems.Kept;
import halfgram.desk.Desk;
import halfgram.desk.House;
import halfgram.desk.SheetEffects;
import halfgram.input.Problem;
import halfgram.measure.Message;
import halfgram.pages.Rooms;
import halfgram.web.Halt;
import halfgram.web.Server;
import halfgram.web.Visit;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * Single things of the book, by the rules of its pages: listed, added, changed whole, taken out.
 * What is changed is answered with what that does to the sheets; with {@code look=yes} nothing is
 * stored.
 */
public final class ThingsApi implements Server.Part {
  private static final String PLACE = "/k/{kitchen}/api/v1/book/{kind}";

  private final Desk desk;
  private final BookItems items;
  private final SheetEffects effects;

  public ThingsApi(Desk desk, SheetEffects effects) {
    this.desk = desk;
    this.items = new BookItems(desk);
    this.effects = effects;
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get(PLACE, this::list);
    routes.post(PLACE, this::add);
    routes.get(PLACE + "/{code}", this::one);
    routes.put(PLACE + "/{code}", this::save);
    routes.delete(PLACE + "/{code}", this::remove);
  }

  private void list(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    String kind = kind(visit);
    Slice.answer(
        visit,
        "things",
        items.listKept(house, kind),
        Kept::code,
        (node, kept) -> thing(node, kind, kept));
  }

  private void add(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    String kind = kind(visit);
    Json.object(
        visit,
        context.body(),
        body -> {
          String code = body.path("code").asText();
          change(visit, house, new Edit(kind, code, Optional.empty(), Optional.of(body)));
        });
  }

  private void one(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    String kind = kind(visit);
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    thing(node, kind, get(house, kind, visit.part("code")));
    visit.json(200, node.toString());
  }

  /** The thing of the address, whole. */
  private void save(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    String kind = kind(visit);
    String code = visit.part("code");
    Json.object(
        visit,
        context.body(),
        body -> {
          String said = body.path("code").asText(code);
          if (!said.equals(code)) {
            Message own = Message.of("api.accept-code", code);
            Call.refuse(visit, List.of(new Problem("$.code", said, own)));
            return;
          }
          body.put("code", code);
          Optional<ObjectNode> seen = seen(visit, house, kind, code, Optional.of(body));
          change(visit, house, new Edit(kind, code, seen, Optional.of(body)));
        });
  }

  private void remove(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    String kind = kind(visit);
    String code = get(house, kind, visit.part("code")).code();
    Optional<ObjectNode> seen = seen(visit, house, kind, code, Optional.empty());
    change(visit, house, new Edit(kind, code, seen, Optional.empty()));
  }

  // ---- behind the handlers ----

  private static String kind(Visit visit) {
    String kind = visit.part("kind");
    if (!BookItems.KINDS.contains(kind)) {
      throw Halt.notFound(kind);
    }
    return kind;
  }

  private Kept get(House house, String kind, String code) {
    return items.findKept(house, kind, code).orElseThrow(() -> Halt.notFound(code));
  }

  /** What whoever calls has seen, by its number; who only looks may say none. */
  private Optional<ObjectNode> seen(
      Visit visit, House house, String kind, String code, Optional<ObjectNode> body) {
    OptionalLong seen = Query.findNumber(visit, "seen");
    Optional<Kept> there = items.findKept(house, kind, code);
    if (there.isEmpty() && seen.isPresent()) {
      throw Halt.notFound(code);
    }
    boolean same = there.map(Kept::body).equals(body);
    boolean looks = Query.isAsked(visit, "look") && seen.isEmpty();
    if (there.isPresent() && !same && !looks && seen.orElse(-1) != there.get().change()) {
      throw Halt.stale();
    }
    return there.map(Kept::body);
  }

  private void change(Visit visit, House house, Edit edit) {
    BookItems.Outcome outcome =
        Query.isAsked(visit, "look")
            ? items.look(house, edit)
            : items.save(house, edit, visit.who());
    if (outcome instanceof BookItems.Saved) {
      stored(visit, house, edit);
    } else if (outcome instanceof BookItems.Looked looked) {
      visit.json(200, written(house, looked.house(), edit).toString());
    } else if (outcome instanceof BookItems.Wrong wrong) {
      // What still uses a thing taken out stands elsewhere in the book, whatever its place is now.
      String place = edit.body().isPresent() ? wrong.path() : "";
      Call.refuse(visit, Call.within(place, wrong.problems()));
    } else {
      throw Halt.stale();
    }
  }

  private void stored(Visit visit, House before, Edit edit) {
    House house = desk.again(before);
    ObjectNode node = written(before, house, edit);
    items
        .findKept(house, edit.kind(), edit.code())
        .ifPresent(kept -> node.put("change", kept.change()));
    boolean fresh =
        edit.body().isPresent() && BookItems.find(before, edit.kind(), edit.code()).isEmpty();
    if (fresh) {
      visit.made("api/v1/book/" + edit.kind() + "/" + Visit.encoded(edit.code()));
    }
    visit.json(fresh ? 201 : 200, node.toString());
  }

  private ObjectNode written(House before, House after, Edit edit) {
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    node.put("kind", edit.kind());
    node.put("code", edit.code());
    edit.body().ifPresent(body -> node.set("thing", body));
    EffectsJson.write(node, effects.list(before, after));
    return node;
  }

  private static void thing(ObjectNode node, String kind, Kept kept) {
    node.put("kind", kind);
    node.put("code", kept.code());
    node.put("change", kept.change());
    node.set("thing", kept.body());
  }
}
