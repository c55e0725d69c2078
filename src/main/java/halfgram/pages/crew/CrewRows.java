package halfgram.pages.crew;

import halfgram.desk.RollCall;
import halfgram.measure.BusinessDay;
import halfgram.measure.Window;
import halfgram.pages.CrewSaid;
import halfgram.prep.KitchenBook;
import halfgram.station.Block;
import halfgram.station.Breakdown;
import halfgram.station.Cook;
import halfgram.station.CrewEntry;
import halfgram.station.Equipment;
import halfgram.station.Works;
import halfgram.words.Messages;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.LongSupplier;
import java.util.stream.Collectors;

/** Makes the view of a day's crew. */
final class CrewRows {
  private static final Duration BACK = Duration.ofDays(7);

  private final RollCall.Board board;
  private final KitchenBook book;
  private final BusinessDay clock;
  private final Instant now;
  private final boolean today;
  private final EntryForm typed;
  private final Map<String, String> faults;
  private final Messages words;
  private final CrewSaid said;

  CrewRows(
      RollCall.Board board,
      Instant now,
      EntryForm typed,
      Map<String, String> faults,
      Messages words) {
    this.board = board;
    this.book = board.house().book();
    this.clock = book.kitchen().clock();
    this.now = now;
    this.today = board.day().equals(clock.of(now));
    this.typed = typed;
    this.faults = faults;
    this.words = words;
    this.said = new CrewSaid(book, words);
  }

  CrewView view(LongSupplier sequence) {
    List<Cook> cooks = board.crew().cooks();
    List<Works> machines =
        board.crew().machines().stream()
            .sorted(Comparator.comparing((Works works) -> open(works).isEmpty()))
            .toList();
    long in = cooks.stream().filter(Cook::isIn).filter(one -> !today || !one.isGone(now)).count();
    long broken = machines.stream().filter(works -> !open(works).isEmpty()).count();
    return new CrewView(
        board.day().toString(),
        words.date(board.day()),
        board.day().minusDays(1).toString(),
        board.day().plusDays(1).toString(),
        today,
        words.say(broken == 0 ? "crew.verdict" : "crew.verdict-broken", in, broken),
        cooks.stream().filter(Cook::isIn).map(one -> row(one, sequence)).toList(),
        cooks.stream().filter(one -> !one.isIn()).map(one -> row(one, sequence)).toList(),
        blocks(),
        machines.stream().map(one -> machine(one, sequence)).toList(),
        said(sequence));
  }

  // ---- cooks ----

  private CrewView.Row row(Cook cook, LongSupplier sequence) {
    String code = cook.person().code();
    return new CrewView.Row(
        code,
        cook.person().name(),
        stations(cook.person().stations()),
        cook.hours().stream().map(this::span).collect(Collectors.joining(", ")),
        cook.breaks().stream().map(this::span).toList(),
        cook.isIn() && today ? doing(cook) : "",
        today && (cook.isIn(now) || cook.isOnBreak(now)),
        said.lacks(cook.person()),
        cook.said().map(this::changed).orElse(""),
        form("person", code, sequence));
  }

  private String stations(Collection<String> codes) {
    return book.stations().values().stream()
        .filter(station -> codes.contains(station.code()))
        .map(station -> words.text(station.name()))
        .collect(Collectors.joining(", "));
  }

  private String span(Window window) {
    return words.say("crew.span", words.time(window.start()), words.time(window.end()));
  }

  /** What somebody who is in today does by the clock. */
  private String doing(Cook cook) {
    if (cook.isOnBreak(now)) {
      return words.say("crew.on-break");
    }
    if (cook.isIn(now)) {
      return words.say("crew.here");
    }
    return cook.hours().stream()
        .map(Window::start)
        .filter(now::isBefore)
        .findFirst()
        .map(start -> words.say("crew.comes", words.time(start)))
        .orElseGet(() -> words.say("crew.gone"));
  }

  private String changed(CrewEntry entry) {
    return words.say(
        "crew.changed", what(entry), words.dayTime(entry.at()), said.name(entry.who()));
  }

  private String what(CrewEntry entry) {
    String what = said.what(entry.kind(), entry.units(), entry.from(), entry.until());
    return entry.note().map(note -> words.say("crew.noted", what, note)).orElse(what);
  }

  private List<String> blocks() {
    List<String> blocks = new ArrayList<>();
    for (Block block : book.blocks()) {
      block
          .on(board.day(), clock)
          .ifPresent(
              window ->
                  blocks.add(
                      words.say(
                          "crew.block",
                          words.text(block.name()),
                          span(window),
                          block.stations().isEmpty()
                              ? words.say("crew.everybody")
                              : stations(block.stations()))));
    }
    return blocks;
  }

  // ---- machines ----

  /** What is broken on this day, or is not mended yet. */
  private List<Breakdown> open(Works works) {
    Instant start = today ? now : clock.start(board.day());
    Instant end = clock.start(board.day().plusDays(1));
    return works.broken().stream().filter(one -> one.meets(start, Optional.of(end))).toList();
  }

  private CrewView.Machine machine(Works works, LongSupplier sequence) {
    Equipment machine = works.machine();
    List<Breakdown> open = open(works);
    Instant when = today ? now : clock.start(board.day());
    return new CrewView.Machine(
        machine.code(),
        words.text(machine.name()),
        machine
            .station()
            .map(station -> stations(List.of(station)))
            .orElse(words.say("crew.shared")),
        wash(machine),
        words.say("crew.works", fewest(works, open, when), machine.units()),
        !open.isEmpty(),
        machine.units() > 1,
        open.stream().map(one -> broken(one, sequence)).toList(),
        form("machine", machine.code(), sequence));
  }

  private String wash(Equipment machine) {
    if (machine.wash().isZero()) {
      return "";
    }
    return machine.drying().isZero()
        ? words.say("crew.wash", machine.wash())
        : words.say("crew.wash-dries", machine.wash(), machine.drying());
  }

  /** On another day than today: the fewest that work at any time of it. */
  private int fewest(Works works, List<Breakdown> open, Instant when) {
    int fewest = works.units(when);
    for (Breakdown one : today ? List.<Breakdown>of() : open) {
      fewest = Math.min(fewest, works.units(one.start().isAfter(when) ? one.start() : when));
    }
    return fewest;
  }

  private CrewView.Broken broken(Breakdown one, LongSupplier sequence) {
    return new CrewView.Broken(
        one.said().id().toString(),
        changed(one.said()),
        one.mended() ? "" : String.valueOf(sequence.getAsLong()));
  }

  private CrewView.Form form(String whose, String code, LongSupplier sequence) {
    boolean open = typed.isOf(whose, code) && typed.ends().isEmpty() && typed.undoes().isEmpty();
    EntryForm shown = open ? typed : EntryForm.NONE;
    return new CrewView.Form(
        String.valueOf(sequence.getAsLong()),
        open,
        shown.units(),
        shown.from(),
        shown.until(),
        shown.note(),
        open ? faults : Map.of());
  }

  // ---- what was said ----

  private List<CrewView.Said> said(LongSupplier sequence) {
    List<CrewEntry> all =
        new ArrayList<>(
            board.said().stream()
                .filter(one -> one.day().equals(board.day()) || isOpen(one) || isLate(one))
                .toList());
    Collections.reverse(all);
    return all.stream().map(one -> told(one, sequence)).toList();
  }

  private boolean isLate(CrewEntry entry) {
    return today && !entry.at().isBefore(now.minus(BACK));
  }

  private boolean isOpen(CrewEntry entry) {
    return board.crew().machines().stream()
        .flatMap(works -> open(works).stream())
        .anyMatch(one -> one.said().id().equals(entry.id()));
  }

  private CrewView.Said told(CrewEntry entry, LongSupplier sequence) {
    return new CrewView.Said(
        entry.id().toString(),
        words.moment(entry.at()),
        said.name(entry.who()),
        words.say("crew.of", said.name(entry.subject()), what(entry)),
        board.crew().counts(entry.id()),
        String.valueOf(sequence.getAsLong()));
  }
}
