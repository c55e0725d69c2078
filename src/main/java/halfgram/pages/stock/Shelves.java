package halfgram.pages.stock;

import halfgram.desk.Desk;
import halfgram.desk.House;
import halfgram.desk.InForce;
import halfgram.desk.Plans;
import halfgram.prep.PrepSheet;
import halfgram.web.Visit;
import halfgram.words.Messages;
import java.time.LocalDate;
import java.util.Optional;

/**
 * The shelf of a house at a moment: by the plan in force today; without one, by what it would be.
 */
final class Shelves {
  private final Desk desk;
  private final Plans plans;

  Shelves(Desk desk, Plans plans) {
    this.desk = desk;
    this.plans = plans;
  }

  Shelf of(Visit visit, House house) {
    return of(visit, house, visit.words());
  }

  Shelf of(Visit visit, House house, Messages words) {
    LocalDate today = house.day(desk.now());
    Optional<InForce> inForce = plans.find(house, today);
    PrepSheet sheet =
        inForce.map(InForce::sheet).orElseGet(() -> plans.preview(house, today, 1).sheet());
    return new Shelf(house, desk.now(), sheet, inForce, visit.path(""), words);
  }
}
