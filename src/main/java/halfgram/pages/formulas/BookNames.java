package halfgram.pages.formulas;

import halfgram.kitchen.Text;
import halfgram.prep.KitchenBook;
import halfgram.words.Messages;
import java.util.Optional;

/** What the book calls the things that a formula names by their codes. */
record BookNames(KitchenBook book, Messages words) {

  /**
   * The name of one thing; its code where the book has none of that code any more.
   *
   * @param list name of a list of suggestions of {@link Shape}
   */
  String of(String list, String code) {
    return find(list, code).map(words::text).orElse(code);
  }

  private Optional<Text> find(String list, String code) {
    return switch (list) {
      case "ingredients" ->
          Optional.ofNullable(book.ingredients().get(code)).map(one -> one.name());
      case "formulas" ->
          book.formulary().list().stream()
              .filter(one -> one.code().equals(code))
              .findFirst()
              .map(one -> one.current().name());
      case "containers" -> Optional.ofNullable(book.containers().get(code)).map(one -> one.name());
      case "stations" -> Optional.ofNullable(book.stations().get(code)).map(one -> one.name());
      case "equipment" -> Optional.ofNullable(book.equipment().get(code)).map(one -> one.name());
      default -> Optional.empty();
    };
  }
}
