package halfgram.pages.stock;

import halfgram.desk.Desk;
import halfgram.desk.House;
import halfgram.desk.Plans;
import halfgram.desk.Stock;
import halfgram.lot.Tub;
import halfgram.pages.Rooms;
import halfgram.web.Server;
import halfgram.web.Visit;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.List;

/**
 * Bins what is past its date, all of it or what is chosen, for one reason. Wired before the pages of
 * stock, where "past" would be a tub's code.
 */
public final class PastPages implements Server.Part {
  private final Desk desk;
  private final Stock stock;
  private final Shelves shelves;

  public PastPages(Desk desk, Plans plans, Stock stock) {
    this.desk = desk;
    this.stock = stock;
    this.shelves = new Shelves(desk, plans);
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get("/k/{kitchen}/stock/past", this::asked);
    routes.post("/k/{kitchen}/stock/past", this::bin);
  }

  private void asked(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    List<Tub> past = stock.listPast(house);
    String binned = visit.query("binned");
    List<String> gone = binned.isEmpty() ? List.of() : List.of(binned.split(","));
    BinForm form = new BinForm(visit.words().say("stock.reason-past"), "");
    show(visit, 200, PastView.blank(shelves.of(visit, house), past, form, gone));
  }

  private void bin(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    BinForm form = BinForm.of(visit);
    List<String> chosen = visit.fields("tub");
    if (form.reason().isEmpty() || chosen.isEmpty()) {
      List<Tub> past = stock.listPast(house);
      show(visit, 422, PastView.wrong(shelves.of(visit, house), past, form, chosen));
    } else {
      List<String> binned = stock.binPast(house, chosen, form.reason().get(), visit.who());
      visit.seeOther("stock/past?binned=" + Visit.encoded(String.join(",", binned)));
    }
  }

  private static void show(Visit visit, int status, PastView view) {
    visit.page(status, "stock/past", visit.words().say("stock.past-title"), view);
  }
}
