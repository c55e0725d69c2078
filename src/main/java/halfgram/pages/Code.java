package halfgram.pages;

import java.text.Normalizer;
import java.util.Locale;

/** A code made from a name, for whoever would rather not think of one. */
public final class Code {
  private static final int LONGEST = 50;

  private Code() {}

  /**
   * "Dîner d'été" becomes "diner-d-ete".
   *
   * @param otherwise for a name without a letter, and for "new", which is an address
   */
  public static String of(String name, String otherwise) {
    String plain =
        Normalizer.normalize(name, Normalizer.Form.NFD)
            .replaceAll("\\p{M}", "")
            .toLowerCase(Locale.ROOT)
            .replaceAll("[^a-z0-9]+", "-")
            .replaceAll("^-|-$", "");
    String cut = plain.length() > LONGEST ? plain.substring(0, LONGEST) : plain;
    return cut.isEmpty() || cut.equals("new") ? otherwise : cut.replaceAll("-$", "");
  }
}
