package halfgram.pages.lanes;

import halfgram.formula.MachineUse;
import halfgram.kitchen.Text;
import halfgram.measure.Window;
import halfgram.pages.Rack;
import halfgram.prep.ServiceRun;
import halfgram.prep.crew.DayFacts;
import halfgram.prep.crew.Placed;
import halfgram.prep.crew.Present;
import halfgram.station.Equipment;
import java.time.Instant;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/** Draws a day by person or by machine. */
final class Draughting {
  private static final int FLAG_ROW = 22;
  private static final int LONGEST = 36;

  /** How much of the width a letter takes on the narrowest drawing there is, in percent. */
  private static final double BOLD_LETTER = 0.98;

  private static final double GAP = 0.5;

  private final Crewed day;
  private final List<Present> people;
  private final Axis axis;

  private Draughting(Crewed day) {
    this.day = day;
    this.people = Present.list(day.book(), day.facts(), day.day());
    this.axis = Axis.of(day, people);
  }

  static Drawing byPerson(Crewed day) {
    Draughting one = new Draughting(day);
    return one.draw(one.people());
  }

  static Drawing byMachine(Crewed day) {
    Draughting one = new Draughting(day);
    return one.draw(one.machines());
  }

  private Drawing draw(List<Drawing.Lane> lanes) {
    List<Drawing.Flag> flags = new ArrayList<>();
    List<Drawing.Line> lines = new ArrayList<>();
    List<Drawing.Hour> hours = new ArrayList<>();
    hours(lines, hours);
    int rows = flags(flags, lines);
    return new Drawing(String.valueOf(rows * FLAG_ROW + 4), flags, lines, hours, lanes);
  }

  private void hours(List<Drawing.Line> lines, List<Drawing.Hour> hours) {
    ZonedDateTime at = axis.window().start().atZone(day.clock().zone());
    while (!at.toInstant().isAfter(axis.window().end())) {
      double x = axis.place(at.toInstant());
      String anchor = x < 1 ? "start" : x > 99 ? "end" : "middle";
      lines.add(new Drawing.Line(Axis.percent(x), "hour"));
      hours.add(new Drawing.Hour(Axis.percent(x), anchor, String.valueOf(at.getHour())));
      at = at.plusHours(1);
    }
  }

  private int flags(List<Drawing.Flag> flags, List<Drawing.Line> lines) {
    Rack rack = new Rack();
    List<ServiceRun> runs =
        day.sheet().services().stream()
            .sorted(Comparator.comparing((ServiceRun run) -> run.window().start()))
            .toList();
    for (ServiceRun run : runs) {
      double x = axis.place(run.window().start());
      String covers = run.covers().isPresent() ? run.covers().getAsInt() + " " : "";
      flag(flags, rack, x, covers, brief(day.words().text(run.name())));
      lines.add(new Drawing.Line(Axis.percent(x), "service"));
    }
    if (day.isToday() && axis.holds(day.now())) {
      double x = axis.place(day.now());
      flag(flags, rack, x, "", day.words().say("today.now", day.time(day.now())));
      lines.add(new Drawing.Line(Axis.percent(x), "now"));
    }
    return rack.rows();
  }

  private static void flag(
      List<Drawing.Flag> flags, Rack rack, double x, String covers, String name) {
    double width = (covers.length() + name.length()) * BOLD_LETTER;
    boolean left = x + width > 100;
    int row = left ? rack.place(x - width, x + GAP) : rack.place(x - GAP, x + width);
    flags.add(
        new Drawing.Flag(
            Axis.percent(x),
            String.valueOf(row * FLAG_ROW + 15),
            left ? "end" : "start",
            left ? "-4" : "4",
            covers,
            name));
  }

  /** A drawing has no second line. */
  static String brief(String name) {
    return name.length() > LONGEST ? name.substring(0, LONGEST - 1).strip() + "\u2026" : name;
  }

  // ---- by person ----

  private List<Drawing.Lane> people() {
    List<Drawing.Lane> lanes = new ArrayList<>();
    Set<String> drawn = new HashSet<>();
    for (Present one : people) {
      String code = one.person().code();
      drawn.add(code);
      List<Window> away = one.gaps().stream().map(Present.Gap::window).toList();
      List<Strip> strips = of(code, away);
      if (one.isThere() || !strips.isEmpty()) {
        lanes.add(lane(day.person(code), how(one), bands(one), strips));
      }
    }
    Set<String> others = new HashSet<>();
    day.bars().forEach(bar -> bar.placed().hands().forEach(one -> others.addAll(one.people())));
    day.errands().forEach(one -> others.addAll(one.people()));
    others.removeAll(drawn);
    for (String code : others.stream().sorted().toList()) {
      lanes.add(lane(day.person(code), "", List.of(), of(code, List.of())));
    }
    List<Strip> nobody =
        Stream.concat(
                day.bars().stream()
                    .filter(bar -> bar.placed().people().isEmpty())
                    .map(bar -> bar.strip(day)),
                day.errands().stream().filter(one -> one.people().isEmpty()).map(Errand::strip))
            .sorted(Comparator.comparing(Strip::from))
            .toList();
    if (!nobody.isEmpty()) {
      String name = day.words().say("lanes.nobody");
      String how = day.words().say("lanes.nobody-how");
      lanes.add(lane(name, how, List.of(), nobody));
    }
    return lanes;
  }

  /** What somebody does, in the order it starts. */
  private List<Strip> of(String code, List<Window> away) {
    List<Strip> strips = new ArrayList<>();
    for (Bar bar : day.bars()) {
      bar.strips(day, code).forEach(one -> strips.add(one.without(away)));
    }
    day.errands().stream().filter(one -> one.isBy(code)).map(Errand::strip).forEach(strips::add);
    strips.sort(Comparator.comparing(Strip::from));
    return strips;
  }

  /** "07:00 to 18:30, break 11:15". */
  private String how(Present one) {
    List<String> parts = new ArrayList<>();
    for (Window hours : one.hours()) {
      parts.add(day.words().say("lanes.hours", day.time(hours.start()), day.time(hours.end())));
      for (Present.Gap gap : inside(one, hours)) {
        parts.add(day.words().say("lanes.gap", name(gap), day.time(gap.window().start())));
      }
    }
    return parts.isEmpty() ? day.words().say("lanes.away") : String.join(", ", parts);
  }

  private String name(Present.Gap gap) {
    return gap.name().map(day.words()::text).orElse(day.words().say("lanes.break"));
  }

  private static List<Present.Gap> inside(Present one, Window hours) {
    return one.gaps().stream()
        .filter(gap -> gap.window().start().isBefore(hours.end()))
        .filter(gap -> gap.window().end().isAfter(hours.start()))
        .sorted(Comparator.comparing((Present.Gap gap) -> gap.window().start()))
        .toList();
  }

  private List<Drawing.Band> bands(Present one) {
    List<Drawing.Band> bands = new ArrayList<>();
    for (Window hours : one.hours()) {
      bands.add(band(hours, "there", ""));
      for (Present.Gap gap : inside(one, hours)) {
        bands.add(band(gap.window(), "gap", name(gap)));
      }
    }
    return bands;
  }

  private Drawing.Band band(Window window, String kind, String name) {
    double from = axis.place(window.start());
    String said = day.time(window.start()) + "\u2013" + day.time(window.end()) + " " + name;
    return new Drawing.Band(
        Axis.percent(from), Axis.percent(axis.place(window.end()) - from), kind, said.strip());
  }

  // ---- by machine ----

  private List<Drawing.Lane> machines() {
    List<Drawing.Lane> lanes = new ArrayList<>();
    for (Placed.Unit unit : units(day)) {
      if (isIdle(day, unit)) {
        continue;
      }
      List<Strip> strips =
          Stream.concat(
                  day.bars().stream()
                      .filter(bar -> bar.placed().machines().contains(unit))
                      .map(bar -> strip(bar, unit)),
                  day.errands().stream()
                      .filter(one -> one.on().filter(unit::equals).isPresent())
                      .map(Errand::strip))
              .sorted(Comparator.comparing(Strip::from))
              .toList();
      String where =
          Optional.ofNullable(day.book().equipment().get(unit.equipment()))
              .flatMap(Equipment::station)
              .map(day::station)
              .orElse("");
      lanes.add(lane(day.machine(unit), where, broken(unit), strips));
    }
    return lanes;
  }

  private static List<Placed.Unit> units(Crewed day) {
    List<Placed.Unit> units = new ArrayList<>();
    for (Equipment equipment : day.book().equipment().values()) {
      for (int k = 1; k <= equipment.units(); k++) {
        units.add(new Placed.Unit(equipment.code(), k));
      }
    }
    return units;
  }

  /** Machines of which nothing is to be drawn: they neither run nor are broken. */
  static List<Placed.Unit> idle(Crewed day) {
    return units(day).stream().filter(unit -> isIdle(day, unit)).toList();
  }

  private static boolean isIdle(Crewed day, Placed.Unit unit) {
    return day.bars().stream().noneMatch(bar -> bar.placed().machines().contains(unit))
        && day.facts().broken().stream().noneMatch(one -> one.equipment().equals(unit.equipment()));
  }

  /** What of a task its machine is occupied by. */
  private Strip strip(Bar bar, Placed.Unit unit) {
    MachineUse.During during =
        bar.task().machines().stream()
            .filter(use -> use.equipment().equals(unit.equipment()))
            .map(MachineUse::during)
            .findFirst()
            .orElse(MachineUse.During.STEP);
    Strip whole = bar.strip(day);
    return switch (during) {
      case STEP -> whole;
      case HANDS -> whole.at(whole.from(), whole.off(), whole.off());
      case ALONE -> whole.at(whole.off(), whole.off(), whole.end());
    };
  }

  /** The last ones of those alike are the broken ones. */
  private List<Drawing.Band> broken(Placed.Unit unit) {
    Equipment equipment = day.book().equipment().get(unit.equipment());
    int units = equipment == null ? 1 : equipment.units();
    String word = day.words().say("lanes.broken");
    List<Drawing.Band> bands = new ArrayList<>();
    for (DayFacts.Broken one : day.facts().broken()) {
      if (one.equipment().equals(unit.equipment()) && unit.number() > units - one.units()) {
        bands.add(band(one.window(), "broken", word));
      }
    }
    return bands;
  }

  // ---- a lane ----

  private Drawing.Lane lane(String name, String how, List<Drawing.Band> bands, List<Strip> strips) {
    LaneRows rows = LaneRows.of(axis, strips, lines(name, NAME) * 20 + lines(how, HOW) * 17);
    return new Drawing.Lane(
        name, how, said(name, strips), rows.height(), bands, rows.alone(), rows.marks());
  }

  /** How many lines something takes beside a lane. */
  private static int lines(String said, int letters) {
    return (said.length() + letters - 1) / letters;
  }

  /** Letters in a line of a lane's name, and of what is said below it. */
  private static final int NAME = 19;

  private static final int HOW = 26;

  private String said(String name, List<Strip> strips) {
    Text who = Text.of(name);
    return strips.isEmpty()
        ? day.words().say("lanes.lane-empty", who)
        : day.words()
            .say(
                "lanes.lane",
                who,
                strips.size(),
                day.time(strips.get(0).from()),
                day.time(
                    strips.stream()
                        .map(Strip::end)
                        .max(Instant::compareTo)
                        .orElse(strips.get(0).end())));
  }
}
