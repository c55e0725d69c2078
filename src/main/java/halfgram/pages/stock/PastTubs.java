package halfgram.pages.stock;

import halfgram.desk.Desk;
import halfgram.desk.Handled;
import halfgram.desk.House;
import halfgram.desk.Stock;
import halfgram.lot.Tub;
import halfgram.pages.Rooms;
import halfgram.web.Halt;
import halfgram.web.Visit;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What is past its date, binned at once and taken out of the bin at once. */
final class PastTubs {
  /** A tub and the number of the change that binned it. */
  private static final Pattern BINNED = Pattern.compile("([a-z0-9-]{1,60}) (\\d{1,18})");

  private final Desk desk;
  private final Stock stock;
  private final Shelves shelves;

  PastTubs(Desk desk, Stock stock, Shelves shelves) {
    this.desk = desk;
    this.stock = stock;
    this.shelves = shelves;
  }

  void list(Visit visit) {
    String binned = visit.query("binned");
    list(visit, 200, binned.isEmpty() ? List.of() : List.of(binned.split(",")));
  }

  /** With the tubs that have just been binned, or stay so. */
  private void list(Visit visit, int status, List<String> codes) {
    House house = Rooms.house(desk, visit);
    List<Tub> past = stock.listPast(house);
    Shelf shelf = shelves.of(visit, house);
    List<PastView.Gone> gone =
        codes.stream().map(code -> PastView.Gone.of(shelf, code, stock.find(house, code))).toList();
    BinForm form = new BinForm(visit.words().say("stock.reason-past"), "");
    show(visit, status, PastView.blank(shelf, past, form, gone));
  }

  void bin(Visit visit) {
    House house = Rooms.house(desk, visit);
    BinForm form = BinForm.of(visit);
    List<String> chosen = visit.fields("tub");
    List<String> back = visit.fields("back");
    if (!back.isEmpty()) {
      outOfTheBin(visit, house, back);
    } else if (form.reason().isEmpty() || chosen.isEmpty()) {
      List<Tub> past = stock.listPast(house);
      show(visit, 422, PastView.wrong(shelves.of(visit, house), past, form, chosen));
    } else {
      List<String> binned = stock.binPast(house, chosen, form.reason().get(), visit.who());
      visit.seeOther("stock/past?binned=" + Visit.encoded(String.join(",", binned)));
    }
  }

  /** Takes what was binned together out again; what cannot be is told. */
  private void outOfTheBin(Visit visit, House house, List<String> back) {
    Map<String, String> kept = new LinkedHashMap<>();
    for (String one : back) {
      Matcher typed = BINNED.matcher(one);
      if (!typed.matches()) {
        throw Halt.unreadable("back");
      }
      OptionalLong change = OptionalLong.of(Long.parseLong(typed.group(2)));
      Handled handled = stock.takeBack(house, typed.group(1), change, false, visit.who());
      if (handled instanceof Handled.Asks) {
        kept.put(typed.group(1), visit.words().say("stock.past-asked", typed.group(1)));
      } else if (handled instanceof Handled.Refused refused) {
        kept.put(typed.group(1), visit.words().say(refused.because()));
      }
    }
    if (kept.isEmpty()) {
      visit.seeOther("stock/past");
    } else {
      visit.notice(String.join(" ", kept.values()));
      list(visit, 409, List.copyOf(kept.keySet()));
    }
  }

  private static void show(Visit visit, int status, PastView view) {
    visit.page(status, "stock/past", visit.words().say("stock.past-title"), view);
  }
}
