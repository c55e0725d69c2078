package halfgram.words;

import halfgram.prep.Begun;
import halfgram.prep.KitchenBook;
import halfgram.prep.Make;
import halfgram.prep.PrepSheet;
import halfgram.prep.Stretch;
import halfgram.prep.Task;
import halfgram.prep.netting.Draw;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * What a second go at a failed batch takes: how much, by when, from which tubs, what has to be made
 * for it first, and what a service will lack in spite of it.
 */
public final class SecondGoWords {
  private final Messages messages;
  private final PrepSheet sheet;
  private final SheetWords names;
  private final StretchWords lacking;

  /**
   * Words for a second go.
   *
   * @param sheet the plan as it would be from now on
   */
  public SecondGoWords(KitchenBook book, PrepSheet sheet, Messages messages) {
    this.messages = messages;
    this.sheet = sheet;
    this.names = new SheetWords(book, sheet, messages);
    this.lacking = new StretchWords(book, sheet, messages);
  }

  /** A sentence each; empty when nothing needs a second go. */
  public List<String> list(Task failed) {
    List<String> lines = new ArrayList<>();
    Set<String> begun = new HashSet<>();
    sheet.begun().forEach(of -> begun.add(of.make().id()));
    for (Make make : sheet.makes()) {
      boolean same = make.version().formula().equals(failed.version().formula());
      if (same && !begun.contains(make.id()) && servesSame(make, failed)) {
        lines.add(when(make));
        taken(make).ifPresent(lines::add);
        parts(make, begun).ifPresent(lines::add);
      }
    }
    if (!lines.isEmpty()) {
      for (Stretch stretch : Stretch.of(sheet)) {
        if (stretch.version().formula().equals(failed.version().formula())) {
          lines.add(lacking.head(stretch));
          lines.addAll(lacking.choices(stretch));
        }
      }
    }
    return lines;
  }

  private static boolean servesSame(Make make, Task failed) {
    Set<String> services = new HashSet<>();
    failed.make().served().forEach(need -> services.add(need.service()));
    return make.served().stream().anyMatch(need -> services.contains(need.service()));
  }

  private String when(Make make) {
    Instant start = make.timeline().start();
    Instant asOf = sheet.request().asOf();
    String amount = names.amount(make.scaled().output(0));
    return start.isBefore(asOf)
        ? messages.say(
            "again.late", amount, Duration.between(start, asOf), names.user(make.service()))
        : messages.say("again.by", amount, messages.time(start));
  }

  private Optional<String> taken(Make make) {
    List<String> tubs = new ArrayList<>();
    for (Draw draw : sheet.draws()) {
      if (draw.need().user().equals(make.id()) && !Begun.isExpected(draw.lot())) {
        tubs.add(
            messages.say(
                "again.tub",
                names.componentName(draw.lot().component()),
                names.amount(draw.amount()),
                draw.lot().code()));
      }
    }
    return tubs.isEmpty()
        ? Optional.empty()
        : Optional.of(messages.say("again.takes", String.join(", ", tubs)));
  }

  private Optional<String> parts(Make make, Set<String> begun) {
    List<String> parts =
        sheet.makes().stream()
            .filter(part -> !begun.contains(part.id()))
            .filter(part -> part.served().stream().anyMatch(need -> need.user().equals(make.id())))
            .map(part -> messages.text(part.version().name()))
            .distinct()
            .toList();
    return parts.isEmpty()
        ? Optional.empty()
        : Optional.of(messages.say("again.first", String.join(", ", parts)));
  }
}
