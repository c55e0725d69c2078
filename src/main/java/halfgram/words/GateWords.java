package halfgram.words;

import halfgram.formula.Formula;
import halfgram.ingredient.Ingredient;
import halfgram.prep.GateEntry;
import halfgram.prep.KitchenBook;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What was said at a gate, in words. */
public final class GateWords {
  private final KitchenBook book;
  private final Messages words;

  public GateWords(KitchenBook book, Messages words) {
    this.book = book;
    this.words = words;
  }

  /** What a code that went in is called. */
  public String item(String code) {
    Ingredient ingredient = book.ingredients().get(code);
    if (ingredient != null) {
      return words.text(ingredient.name());
    }
    Optional<Formula> formula = book.formulary().find(code);
    return formula.map(of -> words.text(of.current().name())).orElse(code);
  }

  /** "3 g salt, 10 g water". */
  public String added(GateEntry entry) {
    List<String> parts = new ArrayList<>();
    entry
        .added()
        .forEach(
            one ->
                parts.add(words.say("gate.added", words.amount(one.amount()), item(one.item()))));
    return String.join(", ", parts);
  }

  /** "skin: right, taste: too salty". */
  public String said(GateEntry entry) {
    List<String> parts = new ArrayList<>();
    entry.said().entrySet().stream()
        .sorted(java.util.Map.Entry.comparingByKey())
        .forEach(
            one ->
                parts.add(
                    words.say(
                        "gate.said",
                        words.say("gate.check." + one.getKey().word()),
                        words.say("gate.word." + one.getValue()))));
    return String.join(", ", parts);
  }

  /** What somebody did there, in a sentence. */
  public String story(GateEntry entry, String who) {
    List<String> parts = new ArrayList<>();
    parts.add(
        switch (entry.kind()) {
          case GO -> words.say("gate.passed", who, words.time(entry.at()));
          case ADJUST -> words.say("gate.adjusted", who, added(entry), words.time(entry.at()));
          case FAIL, USED, AWAY, UNDO -> words.say("gate.did", who, words.say(entry.kind().key()));
        });
    String said = said(entry);
    if (!said.isEmpty()) {
      parts.add(said);
    }
    entry.note().ifPresent(parts::add);
    return String.join("; ", parts);
  }
}
