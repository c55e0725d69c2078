package halfgram.pages.stock;

import halfgram.lot.Lot;
import halfgram.lot.Tub;
import halfgram.measure.Amount;
import halfgram.prep.Thaw;
import halfgram.web.Visit;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * A tub on the page.
 *
 * @param dateName what its date is: use by, or of a frozen one until when the kitchen keeps it
 * @param notBefore from when it may be used, while it may not; may be empty
 * @param state what its date means now: "today", "BIN"; empty when it has time
 * @param tone "heed" past its date, else "open"
 * @param kept for which events how much of it is kept
 * @param assumed that nobody has seen what is in it since it was assumed; may be empty
 * @param frost that it is frozen, or has been; may be empty
 * @param beyond that it carries what its formula no longer does; may be empty
 * @param takes what the plan takes, and what nothing takes
 * @param typed what stands in the field of its count
 * @param countFault what is wrong with that; may be empty
 * @param asks whether it is taken when somebody says that it is so
 * @param other what stands in the field of a reason
 * @param binFault what is wrong with that; may be empty
 */
record TubRow(
    String code,
    String key,
    String href,
    String post,
    String what,
    String formula,
    String version,
    String left,
    String assumed,
    String frost,
    String beyond,
    String made,
    String dateName,
    String useBy,
    String notBefore,
    String state,
    String tone,
    String place,
    String container,
    List<String> kept,
    List<Take> takes,
    String typed,
    String countFault,
    boolean asks,
    String other,
    String binFault) {

  /**
   * What the plan takes of it.
   *
   * @param href where it says why; empty for nowhere
   */
  record Take(String said, String href) {}

  /** A row; with what was typed into it and is wrong, if that was this tub. */
  static TubRow of(Shelf shelf, Tub tub, Optional<Fault> fault) {
    Lot lot = tub.lot();
    Optional<Fault> mine = fault.filter(one -> one.code().equals(lot.code()));
    Optional<Fault> count = mine.filter(one -> one.field() == Fault.Field.AMOUNT);
    Optional<Fault> bin = mine.filter(one -> one.field() == Fault.Field.REASON);
    boolean past = !lot.useBy().isAfter(shelf.now());
    String at = shelf.address("stock/" + Visit.encoded(lot.code()));
    return new TubRow(
        lot.code(),
        "tub-" + lot.code(),
        at,
        at,
        shelf.names().componentName(lot.component()),
        shelf.address("formulas/" + Visit.encoded(lot.component().formula())),
        version(shelf, lot.component().version()),
        shelf.names().amount(lot.left()),
        tub.assumed() ? shelf.words().say("stock.assumed") : "",
        frost(shelf, lot),
        beyond(shelf, lot),
        shelf.date(lot.made()),
        shelf.words().say(lot.isFrozen() ? "stock.keep-until" : "stock.use-by"),
        shelf.date(lot.useBy()),
        shelf.notBefore(lot).map(from -> shelf.words().say("stock.not-before", from)).orElse(""),
        past ? bin(shelf, lot) : soon(shelf, lot),
        past ? "heed" : "open",
        lot.place(),
        shelf.container(lot.container()),
        kept(shelf, lot),
        takes(shelf, lot),
        count.map(Fault::typed).orElse(shelf.words().typed(lot.left())),
        count.map(Fault::said).orElse(""),
        count.filter(Fault::asks).isPresent(),
        bin.map(Fault::typed).orElse(""),
        bin.map(Fault::said).orElse(""));
  }

  static String version(Shelf shelf, OptionalInt version) {
    return version.isPresent() ? shelf.words().say("stock.version", version.getAsInt()) : "";
  }

  private static String beyond(Shelf shelf, Lot lot) {
    List<String> more = shelf.beyondFormula(lot);
    return more.isEmpty() ? "" : shelf.words().say("stock.beyond", String.join(", ", more));
  }

  private static String frost(Shelf shelf, Lot lot) {
    if (lot.isFrozen()) {
      return shelf.words().say("stock.is-frozen", shelf.dated(lot.frozen().get().since()));
    }
    return lot.thawed()
        .map(
            at ->
                Thaw.ready(shelf.formulary(), lot).isAfter(shelf.now())
                    ? shelf.words().say("stock.thaws", at)
                    : shelf.words().say("stock.is-thawed", at))
        .orElse("");
  }

  /** It is past its date: of safety, of its quality, or of the freezer. */
  private static String bin(Shelf shelf, Lot lot) {
    if (lot.isFrozen()) {
      return shelf.words().say("stock.past-frozen");
    }
    return shelf.output(lot.component()).hold().reason().isSafety()
        ? shelf.words().say("stock.past-safety")
        : shelf.words().say("stock.past");
  }

  private static String soon(Shelf shelf, Lot lot) {
    LocalDate day = shelf.clock().of(lot.useBy());
    if (day.equals(shelf.today())) {
      return shelf.words().say("stock.today");
    }
    return day.equals(shelf.today().plusDays(1)) ? shelf.words().say("stock.tomorrow") : "";
  }

  private static List<String> kept(Shelf shelf, Lot lot) {
    return lot.reserved().stream()
        .map(
            one ->
                shelf
                    .words()
                    .say(
                        shelf.isKeptInVain(lot, one.event()) ? "stock.kept-in-vain" : "stock.kept",
                        shelf.names().amount(one.amount()),
                        shelf.event(one.event())))
        .toList();
  }

  private static List<Take> takes(Shelf shelf, Lot lot) {
    Optional<Amount> free = shelf.free(lot.code());
    if (lot.isFrozen()) {
      return pull(shelf, lot).stream().map(said -> new Take(said, "")).toList();
    }
    if (shelf.isPlanless()) {
      return List.of();
    }
    if (free.isEmpty()) {
      return List.of(new Take(shelf.words().say("stock.not-in-plan"), ""));
    }
    List<Take> takes = new ArrayList<>();
    shelf
        .takers(lot.code())
        .forEach(
            (user, amount) ->
                takes.add(
                    new Take(
                        shelf
                            .words()
                            .say(
                                "stock.takes",
                                shelf.names().amount(amount),
                                shelf.names().user(user, shelf.today())),
                        shelf.why(lot.code(), user))));
    Amount nobody = free.get().atMost(lot.left());
    if (nobody.isPositive()) {
      String said = shelf.words().say("stock.nothing-takes", shelf.names().amount(nobody));
      takes.add(new Take(said, ""));
    }
    return takes;
  }

  /** When the plan pulls it; else that it would serve, when the plan makes the same. */
  private static List<String> pull(Shelf shelf, Lot lot) {
    List<String> said = new ArrayList<>(shelf.pull(lot).stream().toList());
    if (!said.isEmpty()) {
      return said;
    }
    said.add(shelf.words().say("stock.frozen-out"));
    shelf
        .makes(lot.component())
        .filter(Amount::isPositive)
        .ifPresent(made -> said.add(shelf.words().say("stock.pull", shelf.names().amount(made))));
    return said;
  }
}
