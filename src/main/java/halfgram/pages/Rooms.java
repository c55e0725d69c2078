package halfgram.pages;

import halfgram.desk.Desk;
import halfgram.desk.House;
import halfgram.web.Visit;

/** Opens the kitchen of a visit. */
public final class Rooms {
  private Rooms() {}

  /** The kitchen as it stood when the request came in, which the visit then speaks as it reads. */
  public static House house(Desk desk, Visit visit) {
    House house = desk.open(visit.kitchen());
    visit.reads(house.book().kitchen());
    return house;
  }
}
