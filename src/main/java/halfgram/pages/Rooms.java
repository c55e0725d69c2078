package halfgram.pages;

import halfgram.desk.Desk;
import halfgram.desk.House;

/** Opens the kitchen of a visit. */
public final class Rooms {
  private Rooms() {}

  /** The kitchen by its code; it was there a moment ago. */
  public static House house(Desk desk, String code) {
    return desk.find(code).orElseThrow();
  }
}
