package halfgram.pages.stock;

import halfgram.lot.Freed;
import halfgram.lot.Movement;
import halfgram.measure.Amount;
import halfgram.measure.Dated;
import halfgram.pages.CostWords;
import halfgram.words.Messages;
import java.util.Locale;

/** What happened to a tub, in words. */
final class MoveWords {
  private MoveWords() {}

  static String kind(Shelf shelf, Movement movement) {
    Messages words = shelf.words();
    boolean in = movement.amount().isPositive();
    return switch (movement.kind()) {
      case MADE -> words.say("stock.made");
      case BROUGHT -> words.say("stock.brought");
      case USED -> words.say("stock.used");
      case ASSUMED -> words.say("stock.assumed-used");
      case COUNTED ->
          words.say(
              "stock.counted", shelf.names().amount(movement.stated().orElse(movement.amount())));
      case BINNED -> words.say("stock.binned");
      case WASTED -> words.say("stock.wasted");
      case BROKE -> words.say("stock.broke");
      case SPLIT -> words.say(in ? "stock.split-in" : "stock.split");
      case COMBINED -> words.say(in ? "stock.combined-in" : "stock.combined");
      case MOVED -> words.say("stock.moved", movement.turn().place().orElse(""));
      case FROZEN -> words.say("stock.frozen", until(shelf, movement));
      case THAWED -> words.say("stock.thawed", until(shelf, movement));
      case RESERVED -> kept(shelf, movement, in ? "stock.reserved" : "stock.freed");
      case DIPPED -> kept(shelf, movement, in ? "stock.dipped-back" : "stock.dipped");
      case UNDONE -> words.say("stock.undone");
    };
  }

  private static Dated until(Shelf shelf, Movement movement) {
    return shelf.dated(movement.turn().useBy().orElse(movement.at()));
  }

  private static String kept(Shelf shelf, Movement movement, String key) {
    Amount amount = movement.amount();
    return shelf
        .words()
        .say(
            key,
            shelf.names().amount(amount.isPositive() ? amount : amount.times(-1)),
            shelf.event(movement.event().orElse("")));
  }

  /** What took of what is kept: "used", "a count". */
  static String cause(Messages words, Movement dipped) {
    String kind = dipped.reason().orElse("").toLowerCase(Locale.ROOT);
    return switch (kind) {
      case "counted" -> words.say("stock.cause-count");
      case "assumed" -> words.say("stock.assumed-used");
      case "binned" -> words.say("stock.binned");
      case "wasted" -> words.say("stock.wasted");
      case "broke" -> words.say("stock.broke");
      default -> words.say("stock.used");
    };
  }

  /** Why an event keeps nothing of it. */
  static String freed(Messages words, Freed freed) {
    return switch (freed) {
      case CANCELLED -> words.say("stock.freed-cancelled");
      case DRAFT -> words.say("stock.freed-draft");
    };
  }

  /** What it had cost; empty when nothing was lost. */
  static String loss(Messages words, Movement movement, String currency) {
    return movement
        .loss()
        .map(loss -> CostWords.said(words, loss.cost(), loss.unpriced(), currency))
        .orElse("");
  }
}
