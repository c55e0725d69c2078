package halfgram.pages.audit;

import halfgram.book.Moments;
import halfgram.desk.Audit;
import halfgram.desk.Desk;
import halfgram.desk.House;
import halfgram.pages.Rooms;
import halfgram.web.Server;
import halfgram.web.Visit;
import halfgram.words.Messages;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.List;
import java.util.Optional;

/** The audit, a page at a time. */
public final class AuditPages implements Server.Part {
  private static final int LINES = 50;

  private final Desk desk;
  private final Audit audit;

  public AuditPages(Desk desk, Audit audit) {
    this.desk = desk;
    this.audit = audit;
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get("/k/{kitchen}/audit", this::audit);
  }

  private void audit(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    Messages words = visit.words();
    AuditTyped typed = AuditTyped.of(visit);
    boolean right = isDay(typed.from()) && isDay(typed.to()) && typed.isKind();
    Audit.Part part =
        right
            ? audit.list(house, typed.asked(), typed.number(), LINES)
            : new Audit.Part(List.of(), Optional.empty());
    AuditView view = AuditView.of(house, part, typed, words);
    if (!right) {
      visit.notice(words.say("audit.accept", String.join(", ", Audit.KINDS)));
    }
    visit.page(right ? 200 : 422, "audit", words.say("audit.title"), view);
  }

  private static boolean isDay(String typed) {
    return typed.isEmpty() || Moments.date(typed).isPresent();
  }
}
