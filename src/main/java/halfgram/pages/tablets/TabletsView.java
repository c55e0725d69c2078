package halfgram.pages.tablets;

import halfgram.desk.House;
import halfgram.pages.KeptInbox;
import halfgram.people.Tablet;
import halfgram.words.Messages;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;

/**
 * The tablets of a kitchen.
 *
 * @param kept what revoked ones sent and what nobody has settled yet
 * @param stations to tick
 * @param people to choose
 * @param pair the form of one to be paired
 */
record TabletsView(
    List<Waiting> kept,
    List<Row> rows,
    List<Row> revoked,
    List<Choice> stations,
    List<Pin> people,
    TabletForm pair,
    PinForm pin) {

  /** Something to tick or to choose. */
  record Choice(String code, String name) {}

  /** Somebody of the book. */
  record Pin(String code, String name, boolean isSet) {}

  /** A PIN that was not taken. */
  record PinForm(String person, String fault) {
    static final PinForm NONE = new PinForm("", "");
  }

  /** A tablet, and its form. */
  record Row(
      String id, String name, String stations, String paired, String seen, TabletForm form) {}

  /**
   * Something that waits.
   *
   * @param who who did it; empty when the tablet did not say
   * @param enters whether a button can enter it
   * @param fault why it was not entered just now
   */
  record Waiting(
      String id,
      String tablet,
      String at,
      String who,
      String said,
      boolean enters,
      boolean asksWho,
      String fault) {}

  /** What was sent and not taken. */
  record Failed(TabletForm form, PinForm pin, Optional<UUID> kept, String why) {
    static final Failed NONE = new Failed(TabletForm.blank(), PinForm.NONE, Optional.empty(), "");
  }

  static TabletsView of(
      House house,
      List<Tablet> tablets,
      Set<String> pins,
      List<KeptInbox.Item> kept,
      Messages words,
      Failed failed) {
    Builder builder = new Builder(house, tablets, words, failed);
    return new TabletsView(
        kept.stream().map(builder::waiting).toList(),
        tablets.stream().filter(one -> one.revoked().isEmpty()).map(builder::row).toList(),
        tablets.stream().filter(one -> one.revoked().isPresent()).map(builder::row).toList(),
        house.book().stations().values().stream()
            .map(of -> new Choice(of.code(), words.text(of.name())))
            .toList(),
        house.book().people().stream()
            .map(one -> new Pin(one.code(), one.name(), pins.contains(one.code())))
            .toList(),
        failed.form().id().isEmpty() ? failed.form() : TabletForm.blank(),
        failed.pin());
  }

  /** What stations are called; all of them when none is named. */
  static String stations(House house, List<String> codes, Messages words) {
    if (codes.isEmpty()) {
      return words.say("tablets.every-station");
    }
    return codes.stream()
        .map(code -> Optional.ofNullable(house.book().stations().get(code)))
        .flatMap(Optional::stream)
        .map(of -> words.text(of.name()))
        .collect(Collectors.joining(", "));
  }

  private record Builder(House house, List<Tablet> tablets, Messages words, Failed failed) {
    private Row row(Tablet tablet) {
      String id = tablet.id().toString();
      return new Row(
          id,
          tablet.name(),
          TabletsView.stations(house, tablet.stations(), words),
          words.say("tablets.paired", words.moment(tablet.paired()), person(tablet.pairedBy())),
          tablet
              .revoked()
              .map(at -> words.say("tablets.revoked-at", words.moment(at)))
              .or(() -> tablet.seen().map(at -> words.say("tablets.seen", words.moment(at))))
              .orElseGet(() -> words.say("tablets.not-seen")),
          failed.form().id().equals(id)
              ? failed.form()
              : new TabletForm(id, tablet.name(), tablet.stations(), java.util.Map.of()));
    }

    private Waiting waiting(KeptInbox.Item item) {
      String tablet =
          tablets.stream()
              .filter(one -> one.id().equals(item.kept().tablet()))
              .map(Tablet::name)
              .findFirst()
              .orElse("");
      return new Waiting(
          item.kept().id().toString(),
          tablet,
          words.moment(item.kept().at()),
          person(item.post().cook()),
          item.work().map(work -> work.said()).orElseGet(() -> plain(item)),
          item.work().isPresent(),
          item.work().filter(work -> work.needsCook()).isPresent(),
          failed.kept().filter(item.kept().id()::equals).map(id -> failed.why()).orElse(""));
    }

    /** What no reader knows, field by field. */
    private static String plain(KeptInbox.Item item) {
      String fields =
          item.post().fields().entrySet().stream()
              .filter(field -> !field.getValue().isBlank())
              .sorted(java.util.Map.Entry.comparingByKey())
              .map(field -> field.getKey() + ": " + field.getValue())
              .collect(Collectors.joining(", "));
      return item.post().path() + ": " + (fields.isEmpty() ? item.kept().body() : fields);
    }

    private String person(String code) {
      return house.book().personName(code);
    }
  }
}
