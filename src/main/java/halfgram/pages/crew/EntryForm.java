package halfgram.pages.crew;

import halfgram.desk.RollCall;
import halfgram.pages.EntryFields;
import halfgram.pages.TypedTime;
import halfgram.prep.TickStore;
import halfgram.station.CrewEntry;
import halfgram.web.Visit;
import java.time.Instant;
import java.time.LocalTime;
import java.util.Optional;
import java.util.UUID;

/** Something that is said of a cook or a machine, as typed. */
record EntryForm(
    String kind,
    String person,
    String machine,
    String units,
    String from,
    String until,
    String note,
    String ends,
    String undoes,
    String sequence) {

  /** Nothing typed yet. */
  static final EntryForm NONE = new EntryForm("", "", "", "", "", "", "", "", "", "");

  /** Who goes home now, is in until now. */
  private static final String HOME = "home";

  /**
   * As sent.
   *
   * @param now the time by the kitchen's clock
   */
  static EntryForm sent(Visit visit, LocalTime now) {
    boolean home = visit.field("kind").equals(HOME);
    return new EntryForm(
        home ? CrewEntry.Kind.IN.word() : visit.field("kind"),
        visit.field("person"),
        visit.field("machine"),
        visit.field("units").strip(),
        home ? "" : TypedTime.of(visit.field("from")),
        home ? now.toString() : TypedTime.of(visit.field("until")),
        visit.field("note").strip(),
        visit.field("ends"),
        visit.field("undoes"),
        visit.field("sequence"));
  }

  /** Whether it could come from a page of ours; what somebody types is looked at afterwards. */
  boolean isReadable() {
    Optional<CrewEntry.Kind> found = CrewEntry.Kind.find(kind);
    return found.isPresent()
        && EntryFields.isSequence(sequence)
        && (found.get() != CrewEntry.Kind.MENDED || EntryFields.isId(ends))
        && (found.get() != CrewEntry.Kind.UNDO || EntryFields.isId(undoes));
  }

  /** Whether it was typed at the form of a cook or a machine. */
  boolean isOf(String whose, String code) {
    return code.equals(whose.equals("person") ? person : machine);
  }

  /** The entry to make. */
  RollCall.Asked asked(String who, UUID device, Instant now) {
    return new RollCall.Asked(
        Optional.empty(),
        CrewEntry.Kind.find(kind).orElseThrow(),
        person,
        machine,
        units,
        from,
        until,
        EntryFields.note(note),
        who,
        id(ends),
        id(undoes),
        new TickStore.Origin(device, Long.parseLong(sequence), now, 0));
  }

  private static Optional<UUID> id(String text) {
    return EntryFields.isId(text) ? Optional.of(UUID.fromString(text)) : Optional.empty();
  }
}
