package halfgram.pages.stock;

import halfgram.desk.House;
import halfgram.lot.Lot;
import halfgram.lot.Tub;
import halfgram.measure.Amount;
import halfgram.pages.TubDeed;
import halfgram.station.Container;
import halfgram.web.Visit;
import halfgram.words.Messages;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** The forms of one tub: what can be done to it as it stands. */
final class DeedForms {
  private static final List<String> REASONS =
      List.of(
          "stock.reason-quality",
          "stock.reason-dropped",
          "stock.reason-unsafe",
          "stock.reason-handled",
          "stock.reason-tasted");

  private final Shelf shelf;
  private final House house;
  private final Lot lot;
  private final Typed typed;
  private final Messages words;
  private final String at;

  DeedForms(Shelf shelf, House house, Lot lot, Typed typed) {
    this.shelf = shelf;
    this.house = house;
    this.lot = lot;
    this.typed = typed;
    this.words = shelf.words();
    this.at = shelf.address("stock/" + Visit.encoded(lot.code()));
  }

  /**
   * Of an empty tub none.
   *
   * @param others tubs of the same that could be put together with it
   */
  List<DeedForm> list(List<Tub> others) {
    List<DeedForm> forms = new ArrayList<>();
    if (lot.left().isPositive()) {
      forms.add(lost());
      forms.add(moved());
      if (lot.isFrozen()) {
        forms.add(thawed());
      } else {
        forms.add(frozen());
      }
      forms.add(split());
      if (!others.isEmpty()) {
        forms.add(combined(others));
      }
    }
    return forms;
  }

  private DeedForm lost() {
    List<TubDeed> deeds = List.of(TubDeed.BROKE, TubDeed.WASTE);
    List<DeedForm.Option> reasons = new ArrayList<>();
    reasons.add(new DeedForm.Option("", words.say("stock.reason-none"), false));
    for (String key : REASONS) {
      String reason = words.say(key);
      reasons.add(new DeedForm.Option(reason, reason, typed.isChosen(deeds, "reason", reason)));
    }
    return form(
        "lost",
        words.say("handling.lost"),
        "",
        deeds,
        List.of(
            text(deeds, "amount", "handling.lost-amount", ""),
            field(deeds, "reason", "handling.why", DeedForm.Type.CHOICE, "", reasons),
            text(deeds, "other", "stock.bin-other", "")),
        List.of(
            // The first is what Enter presses: thrown away is the plain case.
            DeedForm.Button.of(words.say("handling.waste"), at, TubDeed.WASTE),
            DeedForm.Button.of(words.say("handling.broke"), at, TubDeed.BROKE)));
  }

  private DeedForm moved() {
    List<TubDeed> deeds = List.of(TubDeed.MOVE);
    return form(
        "moved",
        words.say("handling.move"),
        "",
        deeds,
        List.of(place(deeds, "handling.to-place")),
        List.of(DeedForm.Button.of(words.say("handling.move-it"), at, TubDeed.MOVE)));
  }

  private DeedForm frozen() {
    List<TubDeed> deeds = List.of(TubDeed.FREEZE);
    return form(
        "frozen",
        words.say("handling.freeze"),
        words.say("handling.freeze-how"),
        deeds,
        List.of(
            field(deeds, "until", "handling.keep", DeedForm.Type.DATE, "", List.of()),
            place(deeds, "handling.freezer")),
        List.of(DeedForm.Button.of(words.say("handling.freeze-it"), at, TubDeed.FREEZE)));
  }

  private DeedForm thawed() {
    List<TubDeed> deeds = List.of(TubDeed.THAW);
    String date =
        lot.frozen().map(ice -> shelf.date(ice.useBy(shelf.now(), shelf.clock()))).orElse("");
    return form(
        "thawed",
        words.say("handling.thaw"),
        words.say("handling.thaw-how", date),
        deeds,
        List.of(place(deeds, "handling.thaw-place")),
        List.of(DeedForm.Button.of(words.say("handling.thaw-it"), at, TubDeed.THAW)));
  }

  private DeedForm split() {
    List<TubDeed> deeds = List.of(TubDeed.SPLIT);
    List<DeedForm.Field> fields = new ArrayList<>();
    fields.add(text(deeds, "amount", "handling.each", half()));
    fields.add(text(deeds, "tubs", "handling.tubs-many", "1"));
    if (!lot.reserved().isEmpty()) {
      String kept = shelf.names().amount(lot.kept());
      fields.add(
          field(
              deeds,
              "kept",
              "handling.kept-label",
              DeedForm.Type.CHOICE,
              "",
              List.of(
                  new DeedForm.Option("stays", words.say("handling.kept-stays", kept), false),
                  new DeedForm.Option(
                      "goes",
                      words.say("handling.kept-goes", kept),
                      typed.isChosen(deeds, "kept", "goes")))));
    }
    fields.add(place(deeds, "handling.new-place"));
    fields.add(container(deeds));
    return form(
        "split",
        words.say("handling.split"),
        words.say("handling.split-how"),
        deeds,
        fields,
        List.of(DeedForm.Button.of(words.say("handling.split-it"), at, TubDeed.SPLIT)));
  }

  private DeedForm combined(List<Tub> others) {
    List<TubDeed> deeds = List.of(TubDeed.COMBINE);
    List<DeedForm.Option> options = new ArrayList<>();
    for (Tub tub : others) {
      Lot other = tub.lot();
      String version = TubRow.version(shelf, other.component().version());
      String said =
          words.say(
                  "handling.other-tub",
                  other.code(),
                  shelf.names().amount(other.left()),
                  shelf.date(other.useBy()))
              + (version.isEmpty() ? "" : ", " + version);
      options.add(
          new DeedForm.Option(other.code(), said, typed.isChosen(deeds, "with", other.code())));
    }
    return form(
        "combined",
        words.say("handling.combine"),
        words.say("handling.combine-how"),
        deeds,
        List.of(
            field(deeds, "with", "handling.with", DeedForm.Type.CHECKS, "", options),
            place(deeds, "handling.new-place"),
            container(deeds)),
        List.of(DeedForm.Button.of(words.say("handling.combine-it"), at, TubDeed.COMBINE)));
  }

  // ---- parts ----

  private DeedForm form(
      String key,
      String summary,
      String how,
      List<TubDeed> deeds,
      List<DeedForm.Field> fields,
      List<DeedForm.Button> buttons) {
    String id = typed.value(deeds, "id", UUID.randomUUID().toString());
    String fault = typed.fault(deeds, "", words);
    return new DeedForm(key, summary, how, id, fields, buttons, fault, typed.isOf(deeds));
  }

  private DeedForm.Field text(List<TubDeed> deeds, String name, String label, String otherwise) {
    return field(deeds, name, label, DeedForm.Type.TEXT, otherwise, List.of());
  }

  private DeedForm.Field place(List<TubDeed> deeds, String label) {
    return field(deeds, "place", label, DeedForm.Type.PLACE, "", List.of());
  }

  private DeedForm.Field container(List<TubDeed> deeds) {
    List<DeedForm.Option> options = new ArrayList<>();
    options.add(new DeedForm.Option("", words.say("handling.same-container"), false));
    for (Container one : house.book().containers().values()) {
      String name = shelf.container(Optional.of(one.code()));
      boolean chosen = typed.isChosen(deeds, "container", one.code());
      options.add(new DeedForm.Option(one.code(), name, chosen));
    }
    return field(deeds, "container", "stock.field-container", DeedForm.Type.CHOICE, "", options);
  }

  private DeedForm.Field field(
      List<TubDeed> deeds,
      String name,
      String label,
      DeedForm.Type type,
      String otherwise,
      List<DeedForm.Option> options) {
    return new DeedForm.Field(
        deeds.get(0).word() + "-" + name,
        name,
        words.say(label),
        type,
        typed.value(deeds, name, otherwise),
        options,
        typed.fault(deeds, name, words));
  }

  /** Half of it, as the likeliest: whole pieces, or full grams. */
  private String half() {
    long half = lot.left().number().longValue() / 2;
    return half == 0
        ? words.typed(lot.left())
        : words.typed(new Amount(java.math.BigDecimal.valueOf(half), lot.left().dimension()));
  }
}
