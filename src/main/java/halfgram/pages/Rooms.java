package halfgram.pages;

import halfgram.desk.Desk;
import halfgram.desk.House;
import halfgram.web.Visit;

/** Opens the kitchen of a visit. */
public final class Rooms {
  private Rooms() {}

  /** The kitchen as it stood when the request came in. */
  public static House house(Desk desk, Visit visit) {
    return desk.open(visit.kitchen());
  }
}
