package halfgram.pages.wall;

import halfgram.desk.Bathing;
import halfgram.measure.Dimension;
import halfgram.measure.Length;
import halfgram.pages.EntryFields;
import halfgram.pages.TypedAmount;
import halfgram.prep.TickStore;
import halfgram.technique.bath.BathEntry;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.UUID;
import java.util.function.UnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * An entry at a bath as sent by a form, as typed.
 *
 * @param station where the form stood, to come back to
 * @param task the run's drops, to come back to
 * @param entry what kind of entry
 * @param worn says that the bath is worn, and that the cook knows; empty when it does not
 */
record BathForm(
    String station,
    String task,
    String entry,
    String formula,
    String label,
    String run,
    String drop,
    String pieces,
    String millimetres,
    String fresh,
    String tub,
    String note,
    String worn,
    String undoes,
    String sequence) {
  private static final Pattern LEVEL =
      Pattern.compile("(\\d{1,4}(?:[.,]\\d{1,3})?)\\s*(mm|cm|in)?", Pattern.CASE_INSENSITIVE);

  static BathForm of(UnaryOperator<String> field) {
    return new BathForm(
        field.apply("station"),
        field.apply("task"),
        field.apply("entry"),
        field.apply("formula"),
        field.apply("label"),
        field.apply("run"),
        field.apply("drop"),
        field.apply("pieces"),
        field.apply("millimetres"),
        field.apply("fresh"),
        field.apply("tub"),
        field.apply("note"),
        field.apply("worn"),
        field.apply("undoes"),
        field.apply("sequence"));
  }

  boolean isEmpty() {
    return entry.isEmpty();
  }

  /** Its fields, to be carried along by another form. */
  Map<String, String> fields() {
    Map<String, String> fields = new LinkedHashMap<>();
    fields.put("station", station);
    fields.put("task", task);
    fields.put("entry", entry);
    fields.put("formula", formula);
    fields.put("label", label);
    fields.put("run", run);
    fields.put("drop", drop);
    fields.put("pieces", pieces);
    fields.put("millimetres", millimetres);
    fields.put("fresh", fresh);
    fields.put("tub", tub);
    fields.put("note", note);
    fields.put("worn", worn);
    fields.put("undoes", undoes);
    fields.put("sequence", sequence);
    fields.values().removeIf(String::isEmpty);
    return fields;
  }

  /** Whether it could come from a page of ours; what a cook types is looked at afterwards. */
  boolean isReadable() {
    return findKind().isPresent()
        && EntryFields.isSequence(sequence)
        && (drop.isEmpty() || EntryFields.isId(drop))
        && (undoes.isEmpty() || EntryFields.isId(undoes));
  }

  Optional<BathEntry.Kind> findKind() {
    for (BathEntry.Kind one : BathEntry.Kind.values()) {
      if (one.name().equals(entry)) {
        return Optional.of(one);
      }
    }
    return Optional.empty();
  }

  BathEntry.Kind kind() {
    return findKind().orElseThrow();
  }

  boolean takesPieces() {
    return kind() == BathEntry.Kind.DROP || kind() == BathEntry.Kind.BROKE;
  }

  /** Pieces typed; empty when they are none. */
  OptionalLong countPieces() {
    return TypedAmount.read(pieces, Dimension.COUNT)
        .map(amount -> OptionalLong.of(amount.pieces()))
        .orElse(OptionalLong.empty());
  }

  /** Millimetres by the ruler, typed as such, in centimetres or in inches; empty without any. */
  Optional<BigDecimal> level() {
    Matcher typed = LEVEL.matcher(millimetres.strip());
    if (!typed.matches()) {
      return Optional.empty();
    }
    BigDecimal number = new BigDecimal(typed.group(1).replace(',', '.'));
    String unit = typed.group(2) == null ? "mm" : typed.group(2).toLowerCase(java.util.Locale.ROOT);
    BigDecimal factor =
        switch (unit) {
          case "in" -> Length.INCH;
          case "cm" -> BigDecimal.TEN;
          default -> BigDecimal.ONE;
        };
    return Optional.of(number.multiply(factor).setScale(2, RoundingMode.HALF_UP));
  }

  /** The key of what is wrong with what was typed; empty when nothing is. */
  Optional<String> fault() {
    if (takesPieces() && countPieces().isEmpty()) {
      return Optional.of("bath.fault.pieces");
    }
    if (kind() == BathEntry.Kind.LEVEL && level().isEmpty()) {
      return Optional.of("bath.fault.level");
    }
    return Optional.empty();
  }

  /** The entry to make. */
  Bathing.Entry entry(String cook, UUID device, Instant now) {
    return new Bathing.Entry(
        Optional.empty(),
        kind(),
        formula,
        label.strip().toUpperCase(java.util.Locale.ROOT),
        said(run),
        said(drop).map(UUID::fromString),
        takesPieces() ? countPieces() : OptionalLong.empty(),
        kind() == BathEntry.Kind.LEVEL ? level() : Optional.empty(),
        said(fresh).map(text -> text.toUpperCase(java.util.Locale.ROOT)),
        said(tub),
        EntryFields.note(note),
        !worn.isEmpty(),
        cook,
        said(undoes).map(UUID::fromString),
        new TickStore.Origin(device, Long.parseLong(sequence), now, 0));
  }

  private static Optional<String> said(String text) {
    return Optional.of(text.strip()).filter(one -> !one.isEmpty());
  }
}
