package halfgram.pages.service;

import halfgram.desk.Sending;
import halfgram.measure.BusinessDay;
import halfgram.pages.EntryFields;
import halfgram.pages.TypedMoment;
import halfgram.pass.AtPass;
import halfgram.pass.Called;
import halfgram.pass.Entry;
import halfgram.prep.TickStore;
import java.time.Instant;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.UUID;
import java.util.function.UnaryOperator;
import java.util.regex.Pattern;

/**
 * An entry as sent by a form, as typed.
 *
 * @param sure "yes" when it is to be taken although it was asked about
 * @param back where the form stood, when that was a wall
 * @param at when it was, of what is entered once the service is over; empty for now
 */
record EntryForm(
    String kind,
    String course,
    String dish,
    String diets,
    String item,
    String station,
    String number,
    String note,
    String undoes,
    String sequence,
    String sure,
    String back,
    String at) {
  private static final Pattern NUMBER = Pattern.compile("[1-9]\\d{0,2}");
  private static final Pattern WALL = Pattern.compile("wall/[a-z0-9-]+");

  /** Nothing typed yet. */
  static final EntryForm NONE = new EntryForm("", "", "", "", "", "", "", "", "", "", "", "", "");

  static EntryForm of(UnaryOperator<String> field) {
    return new EntryForm(
        field.apply("kind"),
        field.apply("course"),
        field.apply("dish"),
        field.apply("diets"),
        field.apply("item"),
        field.apply("station"),
        field.apply("number"),
        field.apply("note"),
        field.apply("undoes"),
        field.apply("sequence"),
        field.apply("sure"),
        field.apply("back"),
        field.apply("at"));
  }

  boolean isEmpty() {
    return kind.isEmpty();
  }

  /** Its fields, to be carried along by another form. */
  Map<String, String> fields() {
    Map<String, String> fields = new LinkedHashMap<>();
    fields.put("kind", kind);
    fields.put("course", course);
    fields.put("dish", dish);
    fields.put("diets", diets);
    fields.put("item", item);
    fields.put("station", station);
    fields.put("number", number);
    fields.put("note", note);
    fields.put("undoes", undoes);
    fields.put("sequence", sequence);
    fields.put("sure", sure);
    fields.put("back", back);
    fields.put("at", at);
    fields.values().removeIf(String::isEmpty);
    return fields;
  }

  /** Whether it could come from a page of ours; what somebody types is looked at afterwards. */
  boolean isReadable() {
    return find(kind).filter(one -> one != Entry.Kind.SWAP).isPresent()
        && EntryFields.isSequence(sequence)
        && (entryKind() != Entry.Kind.UNDO || EntryFields.isId(undoes));
  }

  private static Optional<Entry.Kind> find(String word) {
    return List.of(Entry.Kind.values()).stream().filter(of -> of.name().equals(word)).findFirst();
  }

  Entry.Kind entryKind() {
    return find(kind).orElseThrow();
  }

  /** The wall it was sent from, to go back to; empty for the service's own page. */
  String wall() {
    return WALL.matcher(back).matches() ? back : "";
  }

  /** Whether it does not say why something is out. */
  boolean lacksReason() {
    return entryKind() == Entry.Kind.OUT && note.isBlank();
  }

  /** Whether it says no number of plates that anybody sends at once. */
  boolean lacksNumber() {
    return entryKind().isCounted()
        && !(NUMBER.matcher(number.strip()).matches()
            && Integer.parseInt(number.strip()) <= Called.MOST_AT_ONCE);
  }

  /** Whether it sends plates of this line and nobody has said yet that they are so many. */
  boolean isDoubtful(AtPass.Line line) {
    return entryKind() == Entry.Kind.SENT
        && !sure.equals("yes")
        && line.key().equals(new Entry.PlateKey(course, dish, codes()))
        && isMore(line, Integer.parseInt(number.strip()));
  }

  /** Whether so many more are more than there are guests for. */
  private static boolean isMore(AtPass.Line line, int plates) {
    return line.sent() + plates > line.planned() || plates > line.among().orElse(plates);
  }

  /** Its fields once somebody has said yes. */
  Map<String, String> sureFields() {
    Map<String, String> fields = fields();
    fields.put("sure", "yes");
    return fields;
  }

  private SortedSet<String> codes() {
    SortedSet<String> codes = new TreeSet<>(List.of(diets.split(" ", -1)));
    codes.remove("");
    return codes;
  }

  /** When it was: of a day by its clock; empty when it says none, or what is no time. */
  Optional<Instant> said(LocalDate day, BusinessDay clock) {
    return TypedMoment.on(day, at, clock);
  }

  /** Whether it says a time that cannot be the one: none, one to come, or one before the day. */
  boolean lacksTime(LocalDate day, BusinessDay clock, Instant now) {
    Instant start = clock.start(day);
    return !at.isBlank()
        && said(day, clock)
            .filter(moment -> !moment.isAfter(now) && !moment.isBefore(start))
            .isEmpty();
  }

  /** The same, with a reason. */
  EntryForm noted(String reason) {
    return new EntryForm(
        kind, course, dish, diets, item, station, number, reason, undoes, sequence, sure, back, at);
  }

  /** The codes of diets, as a field has them. */
  static String written(SortedSet<String> diets) {
    return String.join(" ", diets);
  }

  /** The entry to make. */
  Sending.Asked asked(String service, String who, UUID device, Instant now) {
    return new Sending.Asked(
        Optional.empty(),
        service,
        entryKind(),
        course,
        dish,
        codes(),
        item,
        station,
        entryKind().isCounted() ? Integer.parseInt(number.strip()) : 1,
        EntryFields.note(note),
        who,
        entryKind() == Entry.Kind.UNDO ? Optional.of(UUID.fromString(undoes)) : Optional.empty(),
        new TickStore.Origin(device, Long.parseLong(sequence), now, 0));
  }
}
