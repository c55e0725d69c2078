package halfgram.pages;

import halfgram.formula.ComponentRef;
import halfgram.formula.FormulaVersion;
import halfgram.menu.Dish;
import halfgram.pass.Outage;
import halfgram.prep.Components;
import halfgram.prep.KitchenBook;
import halfgram.words.Messages;
import java.util.Optional;

/** What there is none of, in words. */
public final class OutWords {
  private final KitchenBook book;
  private final Messages words;

  public OutWords(KitchenBook book, Messages words) {
    this.book = book;
    this.words = words;
  }

  /** "86 Cured trout: none left". */
  public String said(Outage out) {
    return words.say("pass.out-said", name(out.what()), out.because());
  }

  /** What it is called; its code when the book has it no more. */
  public String name(Outage.What what) {
    if (what.item().isEmpty()) {
      return Optional.ofNullable(book.dishes().get(what.dish()))
          .map(Dish::name)
          .map(words::text)
          .orElse(what.dish());
    }
    Optional<FormulaVersion> version = book.formulary().find(ComponentRef.of(what.item()));
    return version.map(of -> words.text(Components.name(of, 0))).orElse(what.item());
  }
}
