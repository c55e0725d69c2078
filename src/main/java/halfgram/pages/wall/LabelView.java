package halfgram.pages.wall;

import halfgram.desk.House;
import halfgram.desk.Stock;
import halfgram.formula.AllergenTrace;
import halfgram.formula.ComponentRef;
import halfgram.formula.FormulaVersion;
import halfgram.formula.Output;
import halfgram.lot.Lot;
import halfgram.lot.Movement;
import halfgram.measure.Amount;
import halfgram.pages.Qr;
import halfgram.prep.Components;
import halfgram.prep.Resting;
import halfgram.prep.Task;
import halfgram.web.Visit;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;

/**
 * Labels of tubs, each for a piece of paper of its own.
 *
 * @param back where whoever looks at them came from
 */
record LabelView(List<Label> labels, String back) {

  /**
   * What stands on the label of a tub.
   *
   * @param date of what the date is: by when to use it, or until when to keep it frozen
   * @param frozen since when; empty when it is not
   * @param thawed when it came out of the freezer; empty when it was never in
   */
  record Label(
      String code,
      String name,
      String amount,
      String beside,
      String made,
      String by,
      String date,
      String useBy,
      String frozen,
      String thawed,
      String notBefore,
      String place,
      String contains,
      Qr qr) {}

  /**
   * The label of a tub as it was filled.
   *
   * @param task the task that filled it, when the day still has it
   * @param address of this server, to which printed codes lead
   */
  static Label label(
      Scene scene, Stock.Life life, Optional<Task> task, Instant now, String address) {
    Lot lot = life.tub().lot();
    House house = scene.house();
    ComponentRef ref = lot.component();
    Optional<FormulaVersion> version = house.book().formulary().find(ref);
    SortedSet<String> allergens = new TreeSet<>(lot.known().allergens());
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
    return new Label(
        lot.code(),
        version
            .map(of -> Components.name(of, of.outputIndex(ref.output())))
            .map(scene.words()::text)
            .orElse(ref.formula()),
        scene.words().shown(amount).first(),
        scene.words().shown(amount).beside(),
        scene.words().moment(lot.made(), now),
        filled.map(Movement::who).map(scene::person).orElse(""),
        scene.words().say(lot.isFrozen() ? "label.keep-frozen" : "label.use-by"),
        scene.words().moment(lot.useBy(), now),
        lot.frozen().map(ice -> scene.words().moment(ice.since(), now)).orElse(""),
        lot.thawed().map(at -> scene.words().moment(at, now)).orElse(""),
        Resting.notBefore(house.book().formulary(), lot, now).map(scene.words()::moment).orElse(""),
        scene.words().text(house.book().placeName(lot.place())) + degrees(scene, lot, version),
        scene.names().contains(allergens),
        Qr.of(address + Codes.TUB + Visit.encoded(lot.code())));
  }

  /** ", 4 °C": as the formula says of the place where the tub is. */
  private static String degrees(Scene scene, Lot lot, Optional<FormulaVersion> version) {
    return version
        .map(of -> of.outputs().get(of.outputIndex(lot.component().output())).hold())
        .filter(hold -> hold.place().equals(lot.place()))
        .flatMap(Output.Hold::at)
        .map(at -> scene.words().say("sheet.place", at))
        .orElse("");
  }
}
