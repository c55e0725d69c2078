package halfgram.pages.stock;

import halfgram.desk.Coming;
import halfgram.lot.Lot;
import halfgram.web.Visit;
import java.util.ArrayList;
import java.util.List;

/**
 * A tub on the way.
 *
 * @param ready when the plan says that it is ready
 * @param late that this moment is over; may be empty
 * @param takes for whom it is
 * @param href the task that fills it
 */
record ComingRow(
    String what,
    String amount,
    String ready,
    String late,
    String useBy,
    List<String> takes,
    String href) {

  static List<ComingRow> of(Shelf shelf) {
    return shelf.coming().stream().map(one -> of(shelf, one)).toList();
  }

  private static ComingRow of(Shelf shelf, Coming coming) {
    Lot lot = coming.lot();
    List<String> takes = new ArrayList<>();
    coming
        .takers()
        .forEach(
            (user, amount) ->
                takes.add(
                    shelf
                        .words()
                        .say(
                            "stock.takes",
                            shelf.names().amount(amount),
                            shelf.names().user(user, shelf.today()))));
    List<halfgram.prep.Task> tasks = coming.begun().tasks();
    String last = tasks.isEmpty() ? "" : tasks.get(tasks.size() - 1).id();
    String task = shelf.planned().flatMap(of -> of.findTask(last)).map(of -> last).orElse("");
    return new ComingRow(
        shelf.names().componentName(lot.component()),
        shelf.names().amount(lot.left()),
        shelf.words().moment(lot.made()),
        lot.made().isBefore(shelf.now()) ? shelf.words().say("stock.coming-late") : "",
        shelf.date(lot.useBy()),
        takes,
        task.isEmpty()
            ? ""
            : shelf.address("task?date=" + shelf.today() + "&id=" + Visit.encoded(task)));
  }
}
