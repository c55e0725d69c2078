package halfgram.pages.service;

import halfgram.pages.SwapWords;
import halfgram.pass.AtPass;
import halfgram.pass.Entry;
import halfgram.pass.SwapOffer;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.LongSupplier;

/**
 * What may stand in for what in a service, with all that would differ.
 *
 * @param fault what is wrong with the form that was sent; empty for none
 */
record SwapView(
    String id,
    String name,
    List<Offer> offers,
    List<WhoView.One> people,
    String cook,
    String fault,
    LongSupplier numbers) {

  /**
   * One stand-in.
   *
   * @param gains which of what is said tells new allergens; empty for none
   * @param entry id of the entry that put it in force, to undo; empty until then
   */
  record Offer(
      String dish,
      String item,
      String with,
      String dishName,
      String title,
      List<String> said,
      String gains,
      List<String> refused,
      boolean wanted,
      String inForce,
      String entry) {}

  /** A number for one form. */
  public long next() {
    return numbers.getAsLong();
  }

  static SwapView of(PassScene scene, AtPass at, String fault, LongSupplier numbers) {
    List<SwapOffer> offers = new ArrayList<>(scene.board().swaps(at));
    offers.sort(Comparator.comparing(one -> !one.wanted()));
    return new SwapView(
        at.run().id(),
        scene.text(at.run().name()),
        offers.stream().map(one -> offer(scene, at, one)).toList(),
        scene.people().stream().map(one -> new WhoView.One(one.code(), one.name())).toList(),
        scene.cook().map(person -> person.code()).orElse(""),
        fault,
        numbers);
  }

  private static Offer offer(PassScene scene, AtPass at, SwapOffer offer) {
    SwapWords words = new SwapWords(scene.book(), scene.words());
    Optional<Entry> entry = entry(scene, at, offer);
    return new Offer(
        offer.dish().code(),
        offer.swap().item(),
        offer.swap().code(),
        scene.text(offer.dish().name()),
        words.title(offer),
        words.differences(offer),
        words.gains(offer).orElse(""),
        offer.refused().stream().map(words::refused).toList(),
        offer.wanted(),
        offer.inForce()
            ? scene
                .words()
                .say(
                    "pass.swap-in-force",
                    entry.flatMap(Entry::confirmedBy).map(scene::person).orElse("–"))
            : "",
        entry.map(one -> one.id().toString()).orElse(""));
  }

  private static Optional<Entry> entry(PassScene scene, AtPass at, SwapOffer offer) {
    return scene.board().called().standing().stream()
        .filter(one -> one.kind() == Entry.Kind.SWAP && one.service().equals(at.run().id()))
        .filter(one -> one.dish().equals(offer.dish().code()))
        .filter(
            one ->
                one.item().equals(offer.swap().item()) && one.standIn().equals(offer.swap().code()))
        .reduce((one, other) -> other);
  }
}
