package halfgram.desk;

import halfgram.formula.Fills;
import halfgram.formula.FormulaVersion;
import halfgram.formula.Output;
import halfgram.formula.Scaled;
import halfgram.formula.Scaling;
import halfgram.ingredient.Ingredient;
import halfgram.ingredient.Pack;
import halfgram.measure.Amount;
import halfgram.measure.Dimension;
import halfgram.measure.Mass;
import halfgram.measure.Message;
import halfgram.measure.Quantity;
import halfgram.measure.Ratio;
import halfgram.prep.KitchenBook;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

/**
 * Sizes one formula in one of the five ways there are, from what somebody typed. Page, interface
 * and command all come here, so that none of them can weigh otherwise than another.
 */
public final class ScaleFormula {

  /** Ways to size a formula. */
  public enum Way {
    /** So much of an output, "2.4 kg". */
    AMOUNT,
    /** So many sound pieces. */
    PIECES,
    /** Covers, and how much each gets. */
    COVERS,
    /** Times the batch as written. */
    BATCHES,
    /** As far as the scarcest of what is on hand goes. */
    HAVE
  }

  /** What can be typed wrong. */
  public enum Field {
    OUTPUT,
    AMOUNT,
    PIECES,
    COVERS,
    EACH,
    BATCHES,
    HAVE
  }

  /** Something on hand, as typed: an item of the formula and how much there is of it. */
  public record Have(String item, String amount) {
    /** "cream=1.2 kg"; without the sign there is no item. */
    public static Have of(String typed) {
      int equals = typed.indexOf('=');
      return equals > 0
          ? new Have(typed.substring(0, equals), typed.substring(equals + 1))
          : new Have("", typed);
    }
  }

  /**
   * What is asked, as typed.
   *
   * @param output code of the output meant; empty: the first
   * @param size of the way: the amount, the pieces, the covers or the batches
   * @param each what a cover gets
   * @param have what is on hand
   */
  public record Ask(Way way, Optional<String> output, String size, String each, List<Have> have) {}

  /**
   * Something typed that cannot be used.
   *
   * @param typed what stands there
   * @param message what would be accepted, or for a refusal why not
   * @param kind whether it cannot be read, or reads well and the formula has no such thing
   * @param row which of several, from 0
   */
  public record Fault(Field field, String typed, Message message, Kind kind, int row) {}

  /** Why a fault is one. */
  public enum Kind {
    /** It cannot be read; the message says what would be accepted. */
    UNREADABLE,
    /** The formula has no such thing; the message says so. */
    REFUSED
  }

  /**
   * A formula at a size.
   *
   * @param scaled what is made: raised to machines and packs, except from what is on hand
   * @param raisedBy why it was raised; from what is on hand, why it would have been
   */
  public record Sized(Way way, Scaled scaled, List<Message> raisedBy) {
    /** What is on hand cannot be raised: it is said what else would have been done. */
    public Message raised(Message why) {
      return Message.of(way == Way.HAVE ? "scale.on-hand" : "scale.raised", why);
    }
  }

  /** The size, or everything that is wrong with the question. */
  public record Outcome(Optional<Sized> sized, List<Fault> faults) {}

  private final KitchenBook book;
  private final FormulaVersion version;
  private final Ask ask;
  private final List<Fault> faults = new ArrayList<>();

  private ScaleFormula(KitchenBook book, FormulaVersion version, Ask ask) {
    this.book = book;
    this.version = version;
    this.ask = ask;
  }

  /** Sizes a version of a formula. */
  public static Outcome of(KitchenBook book, FormulaVersion version, Ask ask) {
    ScaleFormula scale = new ScaleFormula(book, version, ask);
    Optional<Scaled> scaled = scale.output().flatMap(scale::scaled);
    return scaled.isEmpty() || !scale.faults.isEmpty()
        ? new Outcome(Optional.empty(), List.copyOf(scale.faults))
        : new Outcome(Optional.of(scale.sized(scaled.get())), List.of());
  }

  private Sized sized(Scaled scaled) {
    Fills fills = Fills.fit(scaled, this::pack);
    boolean asItIs = ask.way() == Way.HAVE;
    return new Sized(ask.way(), asItIs ? scaled : fills.scaled(), fills.raisedBy());
  }

  private Optional<Mass> pack(String item) {
    return book.ingredient(item).packs().stream().map(Pack::mass).findFirst();
  }

  private Optional<Integer> output() {
    List<String> codes = version.outputs().stream().map(Output::code).toList();
    if (ask.output().isPresent() && !codes.contains(ask.output().get())) {
      String known = String.join(", ", codes);
      String code = ask.output().get();
      refuse(Field.OUTPUT, code, 0, Message.of("usage.no-output", code, version.name(), known));
      return Optional.empty();
    }
    return Optional.of(version.outputIndex(ask.output()));
  }

  private Optional<Scaled> scaled(int index) {
    Scaling scaling = book.formulary().scaling(version);
    Output made = version.outputs().get(index);
    return switch (ask.way()) {
      case BATCHES -> byBatches(scaling);
      case HAVE -> byHave(scaling);
      case PIECES ->
          read(
                  Field.PIECES,
                  ask.size(),
                  text -> made.isPieces() ? whole(text) : Optional.empty(),
                  "accept.piece-output")
              .map(n -> scaling.byPieces(index, n));
      case COVERS -> {
        Optional<Amount> each =
            read(Field.EACH, ask.each(), text -> amount(text, made), "accept.output-amount");
        Optional<Long> covers = read(Field.COVERS, ask.size(), ScaleFormula::whole, "accept.whole");
        yield covers.flatMap(n -> each.map(e -> scaling.byCovers(index, n, e)));
      }
      case AMOUNT ->
          read(Field.AMOUNT, ask.size(), text -> amount(text, made), "accept.output-amount")
              .map(amount -> scaling.byOutput(index, amount));
    };
  }

  private Optional<Scaled> byBatches(Scaling scaling) {
    Optional<BigDecimal> batches =
        read(Field.BATCHES, ask.size(), ScaleFormula::count, "accept.count");
    Optional<Scaled> scaled = batches.flatMap(n -> scaling.byBatches(new Ratio(n)));
    if (batches.isPresent() && scaled.isEmpty()) {
      refuse(Field.BATCHES, ask.size(), 0, Message.of("usage.no-written", version.name()));
    }
    return scaled;
  }

  private Optional<Scaled> byHave(Scaling scaling) {
    Map<String, Amount> onHand = new HashMap<>();
    Set<String> lines = lines();
    for (int row = 0; row < ask.have().size(); row++) {
      Have have = ask.have().get(row);
      Optional<Amount> mass = mass(have);
      if (mass.isEmpty()) {
        String typed = have.item().isEmpty() ? have.amount() : have.item() + "=" + have.amount();
        faults.add(new Fault(Field.HAVE, typed, Message.of("accept.have"), Kind.UNREADABLE, row));
      } else if (!lines.contains(have.item())) {
        String known = String.join(", ", lines);
        refuse(
            Field.HAVE,
            have.item(),
            row,
            Message.of("usage.not-a-line", have.item(), version.name(), known));
      } else {
        onHand.put(have.item(), mass.get());
      }
    }
    return faults.isEmpty() ? scaling.byScarcest(onHand) : Optional.empty();
  }

  /** Codes of what is weighed, in the order it goes in. */
  private Set<String> lines() {
    Set<String> lines = new java.util.LinkedHashSet<>();
    version.lines().stream()
        .filter(line -> !line.dose().setOut().isZero())
        .forEach(line -> lines.add(line.item().code()));
    return lines;
  }

  private Optional<Amount> mass(Have have) {
    Optional<Quantity> typed = have.item().isEmpty() ? Optional.empty() : typed(have.amount());
    Ingredient ingredient = book.ingredients().get(have.item());
    return typed.flatMap(
        quantity ->
            ingredient == null
                ? quantity.canonical().filter(a -> a.dimension() == Dimension.MASS)
                : ingredient.findMass(quantity));
  }

  private <T> Optional<T> read(
      Field field, String typed, Function<String, Optional<T>> parser, String accepted) {
    Optional<T> read = parser.apply(typed.strip());
    if (read.isEmpty()) {
      faults.add(new Fault(field, typed, Message.of(accepted), Kind.UNREADABLE, 0));
    }
    return read;
  }

  private void refuse(Field field, String typed, int row, Message why) {
    faults.add(new Fault(field, typed, why, Kind.REFUSED, row));
  }

  /** A quantity as typed in a hurry: "5kg" is "5 kg". */
  private static Optional<Quantity> typed(String text) {
    return Quantity.parse(text.strip().replaceFirst("^([0-9.]+)(?=[^0-9. ])", "$1 "));
  }

  private static Optional<Amount> amount(String text, Output output) {
    return typed(text)
        .flatMap(Quantity::canonical)
        .filter(amount -> amount.dimension() == output.unit() && amount.isPositive());
  }

  private static Optional<BigDecimal> count(String text) {
    return text.matches("\\d{1,7}(\\.\\d{1,3})?") && new BigDecimal(text).signum() > 0
        ? Optional.of(new BigDecimal(text))
        : Optional.empty();
  }

  private static Optional<Long> whole(String text) {
    return count(text).filter(n -> !text.contains(".")).map(BigDecimal::longValueExact);
  }
}
