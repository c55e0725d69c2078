package halfgram.pages.baths;

import halfgram.desk.BathBoard;
import halfgram.desk.House;
import halfgram.desk.InForce;
import halfgram.formula.ComponentRef;
import halfgram.words.Messages;
import halfgram.words.SheetWords;
import java.time.Instant;

/** The baths of a day with what they are called. */
record Pool(
    House house, InForce inForce, BathBoard board, Messages words, SheetWords names, Instant now) {

  static Pool of(House house, InForce inForce, BathBoard board, Messages words, Instant now) {
    SheetWords names = new SheetWords(inForce.book(), inForce.sheet(), words);
    return new Pool(house, inForce, board, words, names, now);
  }

  String formula(BathBoard.Basin basin) {
    return names.componentName(ComponentRef.of(basin.formula()));
  }

  /** What somebody is called. */
  String person(String code) {
    return house.book().personName(code);
  }

  /** What a run is called, and for whom. */
  String run(String id) {
    return names.user(id);
  }
}
