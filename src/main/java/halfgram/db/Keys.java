package halfgram.db;

import java.util.Collection;
import java.util.UUID;
import org.jooq.Condition;
import org.jooq.Field;
import org.jooq.impl.DSL;

/** Rows of a kitchen by several values of the column that an index has beside the kitchen. */
public final class Keys {
  private Keys() {}

  /**
   * A kitchen's rows with any of these values. H2 looks a list up in an index of two columns only
   * when both are asked for as one; else it goes through all rows of the kitchen.
   *
   * @param <T> of the column
   */
  public static <T> Condition in(
      Field<UUID> kitchenId, UUID kitchen, Field<T> column, Collection<T> values) {
    return values.isEmpty()
        ? DSL.falseCondition()
        : DSL.row(kitchenId, column)
            .in(values.stream().map(value -> DSL.row(kitchen, value)).toList());
  }
}
