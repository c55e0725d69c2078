package halfgram.pages.log;

import halfgram.desk.House;
import halfgram.desk.Waste;
import halfgram.pages.CostWords;
import halfgram.prep.Components;
import halfgram.words.Messages;
import java.util.ArrayList;
import java.util.List;

/**
 * What was lost on a day, whatever part of the day's log is shown.
 *
 * @param cost of all of it
 */
record WasteView(List<Row> rows, String cost) {

  /** One component: how much, for which reasons, what it had cost. */
  record Row(String what, String amount, String reasons, String cost) {}

  static WasteView of(House house, Waste.Day day, Messages words) {
    String currency = house.book().kitchen().currency();
    List<Row> rows = new ArrayList<>();
    for (Waste.Line line : day.lines()) {
      List<String> reasons = new ArrayList<>();
      line.reasons()
          .forEach(
              (reason, amount) ->
                  reasons.add(
                      line.reasons().size() == 1
                          ? reason
                          : words.say("log.waste-reason", words.amount(amount), reason)));
      rows.add(
          new Row(
              words.text(Components.name(house.book().formulary(), line.component())),
              line.planned()
                  ? words.say("log.waste-planned", words.amount(line.amount()))
                  : words.amount(line.amount()),
              String.join("; ", reasons),
              CostWords.said(words, line.cost(), line.unpriced(), currency)));
    }
    return new WasteView(rows, CostWords.said(words, day.cost(), day.unpriced(), currency));
  }
}
