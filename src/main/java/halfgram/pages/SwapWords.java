package halfgram.pages;

import halfgram.formula.Item;
import halfgram.measure.Money;
import halfgram.measure.Rounding;
import halfgram.menu.Diet;
import halfgram.pass.SwapOffer;
import halfgram.prep.Components;
import halfgram.prep.KitchenBook;
import halfgram.words.Messages;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SortedSet;
import java.util.stream.Collectors;

/** What a swap would change, in words. */
public final class SwapWords {
  private final KitchenBook book;
  private final Messages words;

  public SwapWords(KitchenBook book, Messages words) {
    this.book = book;
    this.words = words;
  }

  /** "Pea spheres for Yoghurt spheres". */
  public String title(SwapOffer offer) {
    return words.say("pass.swap-for", name(offer.swap().with().item()), replaced(offer));
  }

  private String replaced(SwapOffer offer) {
    String code = offer.swap().item();
    return offer.dish().plate().stream()
        .filter(one -> one.item().code().equals(code))
        .findFirst()
        .map(one -> name(one.item()))
        .orElse(code);
  }

  private String name(Item item) {
    return words.text(Components.name(book, item));
  }

  /** The line of allergens that are new on the plate. */
  public Optional<String> gains(SwapOffer offer) {
    return offer.gains().isEmpty()
        ? Optional.empty()
        : Optional.of(words.say("pass.swap-gains", allergens(offer.gains())));
  }

  /** All that differs: a line each. */
  public List<String> differences(SwapOffer offer) {
    List<String> lines = new ArrayList<>();
    lines.add(
        words.say(
            offer.plated() ? "pass.swap-plates" : "pass.swap-portions",
            offer.plates(),
            words.typed(offer.swap().with().typed())));
    offer.lastsFor().ifPresent(plates -> lines.add(lasts(offer, plates)));
    gains(offer).ifPresent(lines::add);
    if (!offer.loses().isEmpty()) {
      lines.add(words.say("pass.swap-loses", allergens(offer.loses())));
    }
    if (offer.gains().isEmpty() && offer.loses().isEmpty()) {
      lines.add(words.say("pass.swap-same"));
    }
    touched(offer).ifPresent(lines::add);
    lines.add(cost(offer));
    offer.refused().forEach(one -> lines.add(refused(one)));
    offer.baths().forEach(one -> lines.add(words.say(one)));
    return lines;
  }

  private String lasts(SwapOffer offer, long plates) {
    boolean plated = offer.plated();
    return plates < offer.plates()
        ? words.say(
            plated ? "pass.swap-short" : "pass.swap-portions-short",
            plates,
            offer.plates() - plates)
        : words.say(plated ? "pass.swap-lasts" : "pass.swap-portions-last", plates);
  }

  /** The diets that something new on the plate touches, whether or not anybody has them tonight. */
  private Optional<String> touched(SwapOffer offer) {
    String diets =
        book.diets().values().stream()
            .filter(diet -> diet.without().stream().anyMatch(code -> offer.gains().contains(code)))
            .map(Diet::name)
            .map(words::text)
            .collect(Collectors.joining(", "))
            .toUpperCase(Locale.ROOT);
    return diets.isEmpty() ? Optional.empty() : Optional.of(words.say("pass.swap-touches", diets));
  }

  private String cost(SwapOffer offer) {
    boolean complete = offer.costBefore().complete() && offer.costAfter().complete();
    return words.say(
        costKey(offer.plated(), complete),
        cents(offer.costBefore()),
        cents(offer.costAfter()),
        book.kitchen().currency());
  }

  private static String costKey(boolean plated, boolean complete) {
    if (plated) {
      return complete ? "pass.swap-cost" : "pass.swap-cost-least";
    }
    return complete ? "pass.swap-portion-cost" : "pass.swap-portion-cost-least";
  }

  private static String cents(Money money) {
    return Rounding.TO_CENT.round(money.number()).toPlainString();
  }

  /** Whose plates keep what they have, and why. */
  public String refused(SwapOffer.RefusedFor one) {
    return words.say("pass.swap-refused", one.plates(), diets(one.diets()), one.way());
  }

  private String diets(SortedSet<String> codes) {
    return codes.stream()
        .map(
            code ->
                Optional.ofNullable(book.diets().get(code))
                    .map(Diet::name)
                    .map(words::text)
                    .orElse(code))
        .collect(Collectors.joining(" + "))
        .toUpperCase(Locale.ROOT);
  }

  private String allergens(Collection<String> codes) {
    return codes.stream()
        .map(code -> Optional.ofNullable(book.allergens().get(code)).map(words::text).orElse(code))
        .collect(Collectors.joining(", "))
        .toUpperCase(Locale.ROOT);
  }
}
