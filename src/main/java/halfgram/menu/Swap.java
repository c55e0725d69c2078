package halfgram.menu;

import java.util.List;

/**
 * What may stand in for something on a plate.
 *
 * @param item code of what is replaced
 */
public record Swap(String item, PlateItem with) {

  /** A plate with it; the same when the item is not on it. */
  public List<PlateItem> on(List<PlateItem> plate) {
    return plate.stream().map(one -> one.item().code().equals(item) ? with : one).toList();
  }

  /** Whether the item is on a plate. */
  public boolean applies(List<PlateItem> plate) {
    return plate.stream().anyMatch(one -> one.item().code().equals(item));
  }

  /** Code of what stands in. */
  public String code() {
    return with.item().code();
  }
}
