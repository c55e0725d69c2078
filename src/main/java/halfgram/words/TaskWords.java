package halfgram.words;

import halfgram.formula.Step;
import halfgram.ingredient.Ingredient;
import halfgram.measure.Amount;
import halfgram.measure.Message;
import halfgram.prep.Awaited;
import halfgram.prep.Contact;
import halfgram.prep.KitchenBook;
import halfgram.prep.MadeAnew;
import halfgram.prep.PrepSheet;
import halfgram.prep.Stored;
import halfgram.prep.Task;
import halfgram.prep.Things;
import halfgram.station.Equipment;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** How the parts of a task are said, on paper and on every page. */
public final class TaskWords {
  private final KitchenBook book;
  private final Messages words;

  public TaskWords(KitchenBook book, Messages words) {
    this.book = book;
    this.words = words;
  }

  /** What its step wants of machine and hands: dry machines, hands on it at the end. */
  public List<String> wants(Task task) {
    List<String> wants = new ArrayList<>();
    if (task.kind() == Task.Kind.STEP && task.step().dry() && !task.machines().isEmpty()) {
      wants.add(words.say("sheet.dry", machines(task)));
    }
    if (task.kind() == Task.Kind.STEP && !task.step().unload().isZero()) {
      wants.add(words.say("sheet.unload", task.step().unload()));
    }
    return wants;
  }

  private List<String> machines(Task task) {
    return task.machines().stream()
        .flatMap(use -> Optional.ofNullable(book.equipment().get(use.equipment())).stream())
        .map(machine -> words.text(machine.name()))
        .toList();
  }

  /** How often it goes through its machine; empty when once. */
  public Optional<String> fills(Task task) {
    if (task.fill().count() <= 1) {
      return Optional.empty();
    }
    return Optional.of(
        words.say(
            task.weigh().isEmpty() ? "sheet.fills" : "sheet.fills-each",
            task.fill().count(),
            words.amount(Amount.of(task.fill().each())),
            machines(task)));
  }

  /**
   * From when it can start by a delivery: "not before 14:10: sea trout from Nordsund".
   *
   * @param time how a moment is said where this is read
   */
  public String notBefore(Awaited awaited, Function<Instant, String> time) {
    List<String> names =
        awaited.ingredients().stream()
            .map(code -> words.text(book.ingredient(code).name()))
            .toList();
    String supplier = awaited.delivery().supplier();
    return awaited
        .from()
        .map(from -> words.say("sheet.not-before", time.apply(from), names, supplier))
        .orElseGet(() -> words.say("sheet.turned-away", names, supplier));
  }

  /** What it shares kit with, and what to do about that. */
  public String contact(Contact contact, SheetWords names, Function<Instant, String> time) {
    String thing = words.say(Message.of("sheet.thing", Things.name(book, contact.thing())));
    List<String> leaves = contact.allergens().stream().map(names::allergen).toList();
    String other = names.title(contact.soils());
    String at = time.apply(contact.soils().start());
    if (contact.isFirst()) {
      return words.say("sheet.contact-first", thing, other, at, leaves);
    }
    return contact
        .startBy()
        .map(
            start ->
                words.say("sheet.contact-earlier", thing, other, at, leaves, time.apply(start)))
        .orElseGet(() -> words.say("sheet.contact-wash", thing, other, at, leaves));
  }

  /** The times between it and an earlier step of the same make; empty when there is no limit. */
  public Optional<String> lag(Task task, Task.Link link) {
    boolean own = link.task().startsWith(task.make().id() + "/");
    boolean told = !link.min().isZero() || link.max().isPresent();
    if (!own || !told || task.kind() == Task.Kind.FRESH_BATH) {
      return Optional.empty();
    }
    String after = step(task, link.task().substring(link.task().lastIndexOf('/') + 1));
    String safety = link.reason().isSafety() ? words.say("sheet.safety") : "";
    return Optional.of(between(link, after) + safety);
  }

  /** What a step of the same make is called, by its code. */
  private String step(Task task, String code) {
    return task.version().steps().stream()
        .filter(step -> step.code().equals(code))
        .map(step -> words.text(step.name()))
        .findFirst()
        .orElse(code);
  }

  private String between(Task.Link link, String after) {
    if (link.max().isEmpty()) {
      return words.say("sheet.wait", link.min(), after);
    }
    return link.min().isZero()
        ? words.say("sheet.wait-max", link.max().get(), after)
        : words.say("sheet.wait-both", link.min(), link.max().get(), after);
  }

  /** What the chef has to say yes to before it goes on. */
  public Optional<String> gate(Task task) {
    return task.kind() == Task.Kind.STEP ? task.step().check().map(this::check) : Optional.empty();
  }

  public String check(Step.Check check) {
    return switch (check) {
      case TASTING -> words.say("sheet.check.tasting");
      case TEST_PIECE -> words.say("sheet.check.test-piece");
    };
  }

  /** "6 x 950 g + 1 x 398 g in 1 L tub"; empty without a container. */
  public Optional<String> tubs(Stored stored) {
    if (stored.container().isEmpty() || stored.fills().isEmpty()) {
      return Optional.empty();
    }
    List<Amount> fills = stored.fills();
    List<String> runs = new ArrayList<>();
    int from = 0;
    while (from < fills.size()) {
      int to = from;
      while (to < fills.size() && fills.get(to).compareTo(fills.get(from)) == 0) {
        to++;
      }
      runs.add(words.say("sheet.stored", to - from, words.amount(fills.get(from))));
      from = to;
    }
    return Optional.of(
        words.say("sheet.stored-in", String.join(" + ", runs), stored.container().get().name()));
  }

  /**
   * What a task puts away of one output, part by part: how much, into which tubs, rest, until when
   * and whose date that is.
   *
   * @param names of the makes and tubs whose date it can be
   */
  public List<String> gives(Task task, Stored stored, SheetWords names) {
    List<String> parts = new ArrayList<>();
    boolean more = stored.made().compareTo(stored.needed()) > 0 && stored.needed().isPositive();
    String needed = more ? words.say("sheet.more-than-needed", words.amount(stored.needed())) : "";
    String name =
        task.version().outputs().size() > 1 ? " " + words.text(stored.output().name()) : "";
    parts.add(words.say("sheet.gives", words.amount(stored.made()) + name, needed));
    tubs(stored).ifPresent(parts::add);
    if (!stored.output().rest().min().isZero()) {
      parts.add(words.say("sheet.rests", stored.output().rest().min()));
    }
    parts.add(keeps(stored, names));
    return parts;
  }

  private String keeps(Stored stored, SheetWords names) {
    var hold = stored.output().hold();
    String place =
        hold.place().isEmpty() ? "" : words.say("sheet.place", book.placeName(hold.place()));
    place += hold.at().map(at -> words.say("sheet.place", at)).orElse("");
    String said = words.say("sheet.keeps", words.moment(stored.useBy()), place);
    said += stored.useByOf().map(of -> words.say("sheet.date-of", names.user(of))).orElse("");
    return stored.endsForSafety() ? said + words.say("sheet.safety") : said;
  }

  /** Why more is made than was asked for. */
  public List<String> raised(Task task) {
    return task.make().raisedBy().stream()
        .map(why -> words.say("sheet.raised", named(why)))
        .toList();
  }

  /** Why it is made again, when what was made before may not be kept so long. */
  public Optional<String> anew(PrepSheet sheet, Task task) {
    return MadeAnew.find(sheet, task)
        .map(
            before ->
                words.say("sheet.anew", words.moment(before.made()), words.moment(before.useBy())));
  }

  /** A reason for raising with the machine or the ingredient by its name. */
  private Message named(Message why) {
    String code = String.valueOf(why.args().get(0));
    Equipment machine = book.equipment().get(code);
    Ingredient ingredient = book.ingredients().get(code);
    if (why.key().equals("raised.machine") && machine != null) {
      return Message.of(why.key(), machine.name());
    }
    return ingredient != null ? Message.of(why.key(), ingredient.name()) : why;
  }
}
