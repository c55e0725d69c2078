package halfgram.prep;

import halfgram.measure.Amount;
import halfgram.measure.Dimension;
import halfgram.measure.Rounding;
import halfgram.prep.netting.Need;
import java.util.ArrayList;
import java.util.List;

/**
 * Needs that together exceed the most of one make, as equal shares of several makes: each make
 * takes its share of every output from the needs in their order.
 *
 * <p>Example: needs of 3 kg and 4 kg, at most 4 kg a make: two makes of 3.5 kg, the first for 3 kg
 * and 0.5 kg, the second for 3.5 kg.
 */
final class Split {
  private final Worked worked;

  Split(Worked worked) {
    this.worked = worked;
  }

  /** The needs by make; as they are when one make takes them all. */
  List<List<Need>> parts(List<Need> needs) {
    int fewest = fewest(needs);
    int limit = 2 * fewest + 1;
    for (int count = fewest; count > 1; count++) {
      List<List<Need>> parts = shared(needs, count);
      // Pieces cannot always be shared out evenly; then one make more is enough.
      if (count > limit || parts.stream().allMatch(part -> fewest(part) == 1)) {
        return parts;
      }
    }
    return List.of(needs);
  }

  /** Into how many equal makes these needs are split at least. */
  private int fewest(List<Need> needs) {
    return worked
        .version
        .most()
        .map(most -> Rounding.UP_TO_WHOLE.round(worked.asFirst(needs).over(most).number()))
        .map(count -> Math.max(1, count.intValueExact()))
        .orElse(1);
  }

  private List<List<Need>> shared(List<Need> needs, int count) {
    List<List<Need>> parts = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      parts.add(new ArrayList<>());
    }
    for (int output = 0; output < worked.version.outputs().size(); output++) {
      share(needs, output, parts);
    }
    parts.removeIf(List::isEmpty);
    parts.forEach(part -> part.sort(Need.ORDER));
    return parts;
  }

  private static void share(List<Need> needs, int output, List<List<Need>> parts) {
    List<Need> open = needs.stream().filter(need -> need.output() == output).toList();
    if (open.isEmpty()) {
      return;
    }
    Amount sum = open.stream().map(Need::amount).reduce(Amount::plus).orElseThrow();
    int at = 0;
    Amount left = open.get(0).amount();
    for (int part = 0; part < parts.size(); part++) {
      boolean last = part == parts.size() - 1;
      Amount room = share(sum, parts.size(), part);
      while (at < open.size() && (last || room.isPositive())) {
        Amount taken = last ? left : left.atMost(room);
        parts.get(part).add(open.get(at).with(taken));
        room = room.minus(taken);
        left = left.minus(taken);
        if (!left.isPositive()) {
          at++;
          left = at < open.size() ? open.get(at).amount() : left;
        }
      }
    }
  }

  private static Amount share(Amount sum, int parts, int part) {
    if (sum.dimension() == Dimension.MASS) {
      return sum.dividedBy(parts);
    }
    long pieces = sum.pieces();
    return Amount.pieces(pieces / parts + (part < pieces % parts ? 1 : 0));
  }
}
