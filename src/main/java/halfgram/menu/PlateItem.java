package halfgram.menu;

import halfgram.formula.Item;
import halfgram.measure.Amount;
import halfgram.measure.Quantity;

/** One thing on a plate: as typed, and in grams or in the component's pieces. */
public record PlateItem(Item item, Quantity typed, Amount amount) {}
