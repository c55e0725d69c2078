package halfgram.prep;

import halfgram.formula.AllergenTrace;
import halfgram.formula.FormulaVersion;
import halfgram.technique.bath.SphereBath;
import java.math.BigDecimal;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** What a plan knows of a formula's sphere bath, as somebody would type it. */
public final class BathFacts {
  private static final BigDecimal HUNDRED = BigDecimal.valueOf(100);

  private BathFacts() {}

  /** By the inputs of the technique; nothing for a formula that sets in no bath. */
  public static Map<String, String> typed(KitchenBook book, FormulaVersion version) {
    Map<String, String> typed = new TreeMap<>();
    bath(book, version).ifPresent(bath -> put(typed, bath, version));
    return typed;
  }

  /** The bath a formula's pieces set in, as a plan works it out. */
  public static Optional<SphereBath> bath(KitchenBook book, FormulaVersion version) {
    AllergenTrace trace = new AllergenTrace(book.formulary(), book::ingredient);
    return new Baths(book, trace).find(version);
  }

  private static void put(Map<String, String> typed, SphereBath bath, FormulaVersion version) {
    SphereBath.Facts facts = bath.facts();
    typed.put("piece", plain(BigDecimal.valueOf(facts.pieceGrams())) + " g");
    typed.put("breakage", share(BigDecimal.valueOf(facts.breakage())));
    typed.put("bath", plain(BigDecimal.valueOf(facts.bathGrams())) + " g");
    typed.put("length", plain(BigDecimal.valueOf(facts.lengthMm())) + " mm");
    typed.put("width", plain(BigDecimal.valueOf(facts.widthMm())) + " mm");
    typed.put("alginate", share(BigDecimal.valueOf(facts.alginateShare())));
    typed.put("saltShare", share(BigDecimal.valueOf(facts.saltShare())));
    BigDecimal natural = BigDecimal.valueOf(facts.naturalCalcium()).movePointRight(5);
    typed.put("natural", plain(natural) + " mg/100 g");
    typed.put("milk", facts.milk() ? "yes" : "no");
    typed.put("sequestered", facts.sequestered() ? "yes" : "no");
    typed.put("rest", plain(BigDecimal.valueOf(facts.restHours())) + " h");
    typed.put("hardness", plain(BigDecimal.valueOf(facts.hardnessPpm())) + " mg/L");
    version.dropping().flatMap(use -> use.saltKind()).ifPresent(salt -> typed.put("salt", salt));
  }

  private static String share(BigDecimal share) {
    return plain(share.multiply(HUNDRED)) + " %";
  }

  private static String plain(BigDecimal number) {
    return halfgram.measure.Exact.plain(number, 6);
  }
}
