package halfgram.cli;

import halfgram.lot.Lot;
import halfgram.measure.Amount;
import halfgram.measure.Exact;
import halfgram.prep.KitchenBook;
import halfgram.prep.PrepSheet;
import halfgram.prep.netting.Draw;
import halfgram.technique.bath.BathDay;
import halfgram.words.Messages;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** What a sheet takes from the house, as plain text: tubs, baths, ingredients to fetch. */
final class StockText {
  private final KitchenBook book;
  private final PrepSheet sheet;
  private final Messages messages;
  private final TaskText tasks;
  private final StringBuilder text = new StringBuilder();

  StockText(KitchenBook book, PrepSheet sheet, Messages messages, TaskText tasks) {
    this.book = book;
    this.sheet = sheet;
    this.messages = messages;
    this.tasks = tasks;
  }

  String write() {
    tubs();
    useOrBin();
    sheet.baths().forEach(this::baths);
    pulls();
    return text.toString();
  }

  private void tubs() {
    List<Draw> draws =
        sheet.draws().stream()
            .filter(draw -> !day(draw.need().readyBy()).isAfter(sheet.request().last()))
            .sorted(
                Comparator.comparing((Draw draw) -> draw.lot().useBy())
                    .thenComparing(draw -> draw.lot().code())
                    .thenComparing(draw -> draw.need().readyBy()))
            .toList();
    if (draws.isEmpty()) {
      return;
    }
    heading("sheet.tubs");
    for (Draw draw : draws) {
      tub(draw.lot(), draw.amount(), tasks.words().user(draw.need().user()));
    }
  }

  private void tub(Lot lot, Amount amount, String user) {
    line(
        Columns.left(lot.code(), 16)
            + Columns.right(messages.amount(amount), 11)
            + "  "
            + Columns.left(tasks.words().componentName(lot.component()), 28)
            + Columns.left(messages.say("sheet.by", messages.moment(lot.useBy())), 22)
            + user);
  }

  /** Tubs that end within a day of the sheet and that nothing on it uses up. */
  private void useOrBin() {
    Instant end = book.kitchen().clock().start(sheet.request().last().plusDays(2));
    List<Map.Entry<Lot, Amount>> left =
        sheet.leftTubs(book).entrySet().stream()
            .filter(entry -> !entry.getKey().useBy().isAfter(end))
            .toList();
    if (left.isEmpty()) {
      return;
    }
    heading("sheet.use-or-bin");
    left.forEach(entry -> tub(entry.getKey(), entry.getValue(), ""));
  }

  private void baths(PrepSheet.BathSheet bath) {
    heading("sheet.baths", messages.shortDate(bath.day()), bath.answer().spares());
    for (BathDay.Use use : bath.answer().uses()) {
      line(
          messages.say(
              "sheet.bath",
              use.label(),
              tub(bath, use.label()),
              String.join(", ", users(use)),
              use.pieces(),
              messages.time(use.from()),
              messages.time(use.to()),
              messages.figures().volume(BigDecimal.valueOf(use.lostMl()), BigDecimal.ONE).whole()));
    }
  }

  /** From which tub a bath comes, when it is mixed already. */
  private String tub(PrepSheet.BathSheet bath, String label) {
    String user = "bath/" + bath.day() + "/" + label;
    return sheet.draws().stream()
        .filter(draw -> draw.need().user().equals(user))
        .map(draw -> draw.lot().code())
        .findFirst()
        .orElse(messages.say("sheet.bath-to-mix"));
  }

  /** Whose pieces go into a bath. */
  private Set<String> users(BathDay.Use use) {
    Set<String> users = new LinkedHashSet<>();
    use.runs().forEach(run -> users.add(tasks.words().user(run)));
    return users;
  }

  private void pulls() {
    if (sheet.pulls().isEmpty()) {
      return;
    }
    heading("sheet.pulls");
    sheet.pulls().entrySet().stream()
        .map(
            pull ->
                Map.entry(messages.text(book.ingredient(pull.getKey()).name()), pull.getValue()))
        .sorted(Map.Entry.comparingByKey())
        .forEach(
            pull -> {
              int decimals = pull.getValue().number().compareTo(Exact.HUNDRED) < 0 ? 1 : 0;
              line(Columns.aligned(pull.getValue().number(), decimals) + "g  " + pull.getKey());
            });
  }

  private LocalDate day(Instant instant) {
    return book.kitchen().clock().of(instant);
  }

  private void heading(String key, Object... args) {
    text.append(SheetText.underlined(messages.say(key, args), ""));
  }

  private void line(String line) {
    text.append(line.stripTrailing()).append('\n');
  }
}
