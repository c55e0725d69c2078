package halfgram.menu;

import halfgram.kitchen.Text;
import java.util.List;
import java.util.SortedSet;

/** The plate that guests of these diets get instead. */
public record Variant(SortedSet<String> diets, Text name, List<PlateItem> plate) {
  public Variant {
    plate = List.copyOf(plate);
  }
}
