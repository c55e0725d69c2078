package halfgram.cli;

import halfgram.kitchen.Text;
import halfgram.menu.Dish;
import halfgram.prep.PrepSheet;
import halfgram.prep.Task;
import halfgram.prep.crew.CrewPlan;
import halfgram.prep.crew.DayFacts;
import halfgram.prep.crew.NoFit;
import halfgram.prep.crew.Outlook;
import halfgram.prep.crew.Placed;
import halfgram.prep.crew.Plated;
import halfgram.prep.crew.Reasons;
import halfgram.prep.crew.Washed;
import halfgram.station.Equipment;
import halfgram.station.Person;
import halfgram.words.FitWords;
import halfgram.words.Messages;
import halfgram.words.SheetWords;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Who does what when, as plain text: why it does not fit, then the day of each person. */
final class CrewText {
  private static final int INDENT = 13;

  private final Outlook outlook;
  private final DayFacts facts;
  private final Messages messages;
  private final SheetWords words;
  private final Map<String, Task> tasks;
  private final StringBuilder text = new StringBuilder();

  /** Something that takes hands, or a machine, in a day. */
  private record Row(Instant from, Instant to, String what, List<String> people) {}

  CrewText(Outlook outlook, DayFacts facts, Messages messages) {
    this.outlook = outlook;
    this.facts = facts;
    this.messages = messages.at(outlook.book().kitchen());
    this.words = new SheetWords(outlook.book(), sheet(), this.messages);
    this.tasks = sheet().tasks().stream().collect(Collectors.toMap(Task::id, Function.identity()));
  }

  String write() {
    text.setLength(0);
    heading(messages.say("sheet.crew-plan"));
    line(messages.say(outlook.fits() ? "lanes.fits" : "lanes.fits-not"));
    FitWords.wrong(outlook.fit(), messages).forEach(this::line);
    outlook.finish().ifPresent(at -> line(messages.say("lanes.finish", time(at))));
    how();
    Reasons.of(outlook.book(), sheet(), facts, crew()).forEach(this::reason);
    List<Row> rows = rows();
    for (Person person : outlook.book().people()) {
      people(
          person.name(),
          rows.stream().filter(row -> row.people().contains(person.code())).toList());
    }
    people(
        messages.say("lanes.nobody"), rows.stream().filter(row -> row.people().isEmpty()).toList());
    leftOut();
    return text.toString();
  }

  private void how() {
    if (outlook.book().people().isEmpty()) {
      line(messages.say("lanes.no-people"));
    }
    if (crew().roomy()) {
      line(messages.say("lanes.roomy"));
    }
    if (crew().yielding()) {
      line(messages.say("lanes.yielding"));
    }
  }

  private void reason(NoFit reason) {
    line("");
    line("!! " + Columns.wrap(messages.say(reason.what()), 3));
    reason.chain().forEach(step -> line("   - " + Columns.wrap(messages.say(step), 5)));
    if (!reason.levers().isEmpty()) {
      line("   " + messages.say("lanes.levers"));
      reason.levers().forEach(lever -> line("   - " + Columns.wrap(messages.say(lever), 5)));
    }
  }

  private List<Row> rows() {
    List<Row> rows = new ArrayList<>();
    for (Placed placed : crew().placed().values()) {
      String title = Optional.ofNullable(tasks.get(placed.task())).map(words::title).orElse("");
      if (title.isEmpty()) {
        continue;
      }
      String on = placed.machines().stream().map(this::machine).collect(Collectors.joining(", "));
      String what = on.isEmpty() ? title : title + " (" + on + ")";
      placed
          .turns()
          .forEach(turn -> rows.add(new Row(turn.from(), turn.to(), what, turn.people())));
      placed
          .unload()
          .ifPresent(
              out ->
                  rows.add(
                      new Row(
                          out.from(),
                          out.to(),
                          messages.say("lanes.out", Text.of(title)),
                          out.people())));
    }
    for (Washed wash : crew().washes()) {
      String what = messages.say("lanes.wash", Text.of(machine(wash.unit())));
      rows.add(new Row(wash.from(), wash.to(), what, List.of(wash.person())));
    }
    crew().platings().forEach(line -> rows.add(plating(line)));
    rows.sort(Comparator.comparing(Row::from).thenComparing(Row::to).thenComparing(Row::what));
    return rows;
  }

  private Row plating(Plated line) {
    Dish dish = outlook.book().dishes().get(line.dish());
    String name = dish == null ? line.dish() : messages.text(dish.name());
    String what = messages.say("lanes.plate", Text.of(name));
    return new Row(
        line.from(),
        line.to(),
        line.missing() == 0 ? what : what + ", " + messages.say("lanes.missing", line.missing()),
        line.people());
  }

  private String machine(Placed.Unit unit) {
    Equipment equipment = outlook.book().equipment().get(unit.equipment());
    if (equipment == null) {
      return unit.equipment();
    }
    String name = messages.text(equipment.name());
    return equipment.units() == 1 ? name : messages.say("lanes.unit", name, unit.number());
  }

  private void people(String name, List<Row> rows) {
    if (rows.isEmpty()) {
      return;
    }
    line("");
    line(name);
    for (Row row : rows) {
      String times = time(row.from()) + "-" + time(row.to());
      line(Columns.left(times, INDENT) + Columns.wrap(row.what(), INDENT));
    }
  }

  private void leftOut() {
    if (outlook.leftOut().isEmpty()) {
      return;
    }
    line("");
    line(messages.say("lanes.left-out", outlook.leftOut().size(), outlook.leftOutTime()));
    for (Task task : outlook.leftOut()) {
      String left =
          messages.say("lanes.left", words.title(task), task.handsOn(), time(task.start()));
      line("   - " + Columns.wrap(left, 5));
    }
  }

  private CrewPlan crew() {
    return outlook.crew();
  }

  private PrepSheet sheet() {
    return outlook.sheet();
  }

  private String time(Instant at) {
    LocalDate day = outlook.book().kitchen().clock().of(at);
    return day.equals(sheet().request().from()) ? messages.time(at) : messages.dayTime(at);
  }

  private void heading(String title) {
    text.append(SheetText.underlined(title, ""));
  }

  private void line(String line) {
    text.append(line.stripTrailing()).append('\n');
  }
}
