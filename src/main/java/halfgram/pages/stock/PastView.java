package halfgram.pages.stock;

import halfgram.desk.Stock;
import halfgram.lot.Lot;
import halfgram.lot.Movement;
import halfgram.lot.Tub;
import halfgram.web.Visit;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What is past its date and can be binned together.
 *
 * @param asks how many there are
 * @param reasons to choose from
 * @param other a reason as it was typed
 * @param noTub that none was chosen; may be empty
 * @param noReason that there is no reason; may be empty
 * @param gone what was binned just now
 */
record PastView(
    String asks,
    List<Row> tubs,
    List<Reason> reasons,
    String other,
    String noTub,
    String noReason,
    List<Gone> gone) {

  /**
   * A tub that was binned.
   *
   * @param back its code and the number of the change, to take it out again; empty when something
   *     else has happened to it since
   */
  record Gone(String code, String href, String back) {
    static Gone of(Shelf shelf, String code, Optional<Stock.Life> life) {
      String back =
          life.flatMap(of -> Stock.findLast(of.movements()))
              .filter(last -> last.kind() == Movement.Kind.BINNED)
              .filter(last -> Stock.asksBack(shelf.house(), last, shelf.now()).isEmpty())
              .map(last -> code + " " + last.change())
              .orElse("");
      return new Gone(code, shelf.address("stock/" + Visit.encoded(code)), back);
    }
  }

  /** Whether any of what was binned can be taken out again. */
  public boolean canGoBack() {
    return gone.stream().anyMatch(one -> !one.back().isEmpty());
  }

  /** A tub of them. */
  record Row(String code, String what, String left, String until, String place, boolean chosen) {}

  /** A reason to choose. */
  record Reason(String text, boolean chosen) {}

  /** With all of them chosen. */
  static PastView blank(Shelf shelf, List<Tub> past, BinForm form, List<Gone> gone) {
    List<String> all = past.stream().map(tub -> tub.lot().code()).toList();
    return of(shelf, past, form, all, gone);
  }

  /** As it was sent, with what is wrong. */
  static PastView wrong(Shelf shelf, List<Tub> past, BinForm form, List<String> chosen) {
    PastView view = of(shelf, past, form, chosen, List.of());
    return new PastView(
        view.asks,
        view.tubs,
        view.reasons,
        view.other,
        chosen.isEmpty() ? shelf.words().say("stock.past-which") : "",
        form.reason().isEmpty() ? shelf.words().say("stock.no-reason") : "",
        List.of());
  }

  private static PastView of(
      Shelf shelf, List<Tub> past, BinForm form, List<String> chosen, List<Gone> gone) {
    return new PastView(
        past.size() == 1
            ? shelf.words().say("stock.past-one")
            : shelf.words().say("stock.past-many", past.size()),
        past.stream().map(tub -> row(shelf, tub.lot(), chosen)).toList(),
        Stream.of("stock.reason-past", "stock.reason-quality", "stock.reason-unsafe")
            .map(shelf.words()::say)
            .map(text -> new Reason(text, text.equals(form.chosen())))
            .toList(),
        form.typed(),
        "",
        "",
        gone);
  }

  private static Row row(Shelf shelf, Lot lot, List<String> chosen) {
    return new Row(
        lot.code(),
        shelf.names().componentName(lot.component()),
        shelf.names().amount(lot.left()),
        shelf.date(lot.useBy()),
        lot.place(),
        chosen.contains(lot.code()));
  }
}
