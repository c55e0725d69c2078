package halfgram.pass;

import halfgram.formula.ComponentRef;
import halfgram.measure.Amount;
import halfgram.measure.Dimension;
import halfgram.menu.PlateItem;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;

/**
 * What one plate takes of a component, in the component's own unit. Ingredients that go on a plate
 * as bought are in no tub and are left out.
 */
public record Portion(ComponentRef component, Amount amount) {
  private static final String NONE = "-";

  /** The components of a plate. */
  public static List<Portion> of(List<PlateItem> plate) {
    List<Portion> portions = new ArrayList<>();
    for (PlateItem item : plate) {
      item.item().component().ifPresent(ref -> portions.add(new Portion(ref, item.amount())));
    }
    return portions;
  }

  /** As the store keeps them: a line each of formula, output, version, number and unit. */
  static String write(List<Portion> portions) {
    return portions.stream().map(Portion::write).collect(Collectors.joining("\n"));
  }

  private String write() {
    OptionalInt version = component.version();
    return String.join(
        " ",
        component.formula(),
        component.output().orElse(NONE),
        version.isPresent() ? String.valueOf(version.getAsInt()) : NONE,
        amount.number().toPlainString(),
        amount.dimension().name());
  }

  static List<Portion> read(String written) {
    return written.lines().map(Portion::readLine).toList();
  }

  private static Portion readLine(String line) {
    String[] part = line.split(" ", 5);
    Optional<String> output = Optional.of(part[1]).filter(code -> !code.equals(NONE));
    OptionalInt version =
        part[2].equals(NONE) ? OptionalInt.empty() : OptionalInt.of(Integer.parseInt(part[2]));
    return new Portion(
        new ComponentRef(part[0], output, version),
        new Amount(new BigDecimal(part[3]), Dimension.valueOf(part[4])));
  }
}
