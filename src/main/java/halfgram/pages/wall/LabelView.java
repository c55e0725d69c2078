package halfgram.pages.wall;

import halfgram.desk.House;
import halfgram.desk.Stock;
import halfgram.formula.AllergenTrace;
import halfgram.formula.ComponentRef;
import halfgram.formula.FormulaVersion;
import halfgram.lot.Lot;
import halfgram.lot.Movement;
import halfgram.measure.Amount;
import halfgram.pages.Qr;
import halfgram.prep.Components;
import halfgram.prep.Task;
import halfgram.web.Visit;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;

/** What stands on the label of a tub. */
record LabelView(
    String code,
    String name,
    String amount,
    String beside,
    String made,
    String by,
    String useBy,
    String place,
    String contains,
    String back,
    Qr qr) {

  /**
   * The label of a tub as it was filled.
   *
   * @param task the task that filled it, when the day still has it
   * @param back where whoever looks at it came from
   * @param address of this server, to which printed codes lead
   */
  static LabelView of(
      Scene scene, Stock.Life life, Optional<Task> task, String back, String address) {
    Lot lot = life.tub().lot();
    House house = scene.house();
    ComponentRef ref = lot.component();
    Optional<FormulaVersion> version = house.book().formulary().find(ref);
    SortedSet<String> allergens = new TreeSet<>();
    version.ifPresent(
        of ->
            allergens.addAll(
                new AllergenTrace(house.book().formulary(), house.book()::ingredient)
                    .of(of)
                    .allergenCodes()));
    task.ifPresent(of -> allergens.addAll(of.allergens()));
    Optional<Movement> filled =
        life.movements().stream()
            .filter(one -> one.kind().fills() && one.amount().isPositive())
            .findFirst();
    Amount amount = filled.map(Movement::amount).orElse(lot.left());
    return new LabelView(
        lot.code(),
        version
            .map(of -> Components.name(of, of.outputIndex(ref.output())))
            .map(scene.words()::text)
            .orElse(ref.formula()),
        scene.words().shown(amount).first(),
        scene.words().shown(amount).beside(),
        scene.words().moment(lot.made()),
        filled.map(Movement::who).map(scene::person).orElse(""),
        scene.words().moment(lot.useBy()),
        scene.words().text(house.book().placeName(lot.place())),
        scene.names().contains(allergens),
        back,
        Qr.of(address + Codes.TUB + Visit.encoded(lot.code())));
  }
}
