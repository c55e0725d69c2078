package halfgram.words;

import halfgram.formula.ComponentRef;
import halfgram.formula.Formula;
import halfgram.formula.Item;
import halfgram.formula.Output;
import halfgram.ingredient.Ingredient;
import halfgram.kitchen.Text;
import halfgram.measure.Amount;
import halfgram.prep.Components;
import halfgram.prep.KitchenBook;
import halfgram.prep.Make;
import halfgram.prep.PrepSheet;
import halfgram.prep.ServiceRun;
import halfgram.prep.ShortBatch;
import halfgram.prep.Task;
import java.time.LocalDate;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** What the things of a sheet are called: services, makes, tubs, tasks, allergens, amounts. */
public final class SheetWords {
  private final KitchenBook book;
  private final Messages messages;
  private final Map<String, Text> users = new HashMap<>();
  private final Map<String, LocalDate> dates = new HashMap<>();
  private final Map<String, Text> outputs = new HashMap<>();

  public SheetWords(KitchenBook book, PrepSheet sheet, Messages messages) {
    this.book = book;
    this.messages = messages;
    for (ServiceRun run : sheet.allServices()) {
      users.put(run.id(), run.name());
      dates.put(run.id(), run.date());
    }
    for (Make make : sheet.makes()) {
      users.put(make.id(), make.version().name());
    }
    for (Formula formula : book.formulary().listAll()) {
      for (Output output : formula.current().outputs()) {
        int index = formula.current().outputIndex(java.util.Optional.of(output.code()));
        outputs.put(
            formula.code() + ":" + output.code(), Components.name(formula.current(), index));
      }
    }
  }

  /** What a service or a make is called; a bath by its letter. */
  public String user(String id) {
    Text name = users.get(id);
    if (name != null) {
      return messages.text(name);
    }
    return id.startsWith("bath/")
        ? messages.say("sheet.bath-user", id.substring(id.lastIndexOf('/') + 1))
        : id;
  }

  /** That less came of a batch than is taken of it, and who goes without. */
  public String cameShort(ShortBatch batch) {
    String users =
        batch.without().stream().map(this::user).distinct().collect(Collectors.joining(", "));
    return messages.say(batch.said(this::amount, users));
  }

  /** As {@link #user}, with the weekday of a service on another day. */
  public String user(String id, LocalDate day) {
    LocalDate date = dates.getOrDefault(id, day);
    return date.equals(day) ? user(id) : user(id) + " (" + messages.weekday(date) + ")";
  }

  /** What is in a tub. */
  public String componentName(ComponentRef ref) {
    String first = book.formulary().get(ComponentRef.of(ref.formula())).outputs().get(0).code();
    String key = ref.formula() + ":" + ref.output().orElse(first);
    return messages.text(outputs.getOrDefault(key, Text.of(ref.formula())));
  }

  /** What goes in at a line: the ingredient, else what is made of the component. */
  public String itemName(Item item) {
    Ingredient ingredient = book.ingredients().get(item.code());
    return item.component()
        .map(this::componentName)
        .orElseGet(() -> ingredient == null ? item.code() : messages.text(ingredient.name()));
  }

  /** An allergen, in capitals. */
  public String allergen(String code) {
    Text name = book.allergens().get(code);
    return (name == null ? code : messages.text(name)).toUpperCase(java.util.Locale.ROOT);
  }

  public String contains(Collection<String> allergens) {
    List<String> names = allergens.stream().map(this::allergen).toList();
    return names.isEmpty() ? "" : messages.say("sheet.contains", String.join(", ", names));
  }

  public String title(Task task) {
    String what =
        switch (task.kind()) {
          case STEP -> messages.text(task.step().name());
          case TEST_PIECE -> messages.say("sheet.test-piece-name");
          case FRESH_BATH -> messages.say("sheet.fresh-bath-name");
          case THAW -> messages.say("sheet.thaw-name");
        };
    return messages.text(task.version().name()) + ", " + what;
  }

  /** As {@link Messages#amount}. */
  public String amount(Amount amount) {
    return messages.amount(amount);
  }
}
