package halfgram.pages;

import halfgram.desk.Belated;
import halfgram.desk.Desk;
import halfgram.desk.House;
import halfgram.desk.Inbox;
import halfgram.pages.KeptReader.Post;
import halfgram.pages.KeptReader.Work;
import halfgram.people.TabletStore.Kept;
import halfgram.prep.KitchenBook;
import halfgram.prep.PrepSheet;
import halfgram.words.Messages;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;

/** The office's inbox of what revoked tablets sent, read and entered. */
public final class KeptInbox {

  /**
   * Something that waits.
   *
   * @param work how it is entered; empty for what has to be entered by hand
   */
  public record Item(Kept kept, Post post, Optional<Work> work) {}

  private final Desk desk;
  private final Inbox inbox;
  private final List<KeptReader> readers;
  private final BiFunction<KitchenBook, PrepSheet, String> result;

  /**
   * An inbox.
   *
   * @param result writes a sheet as the JSON that a plan keeps
   */
  public KeptInbox(
      Desk desk,
      Inbox inbox,
      List<KeptReader> readers,
      BiFunction<KitchenBook, PrepSheet, String> result) {
    this.desk = desk;
    this.inbox = inbox;
    this.readers = List.copyOf(readers);
    this.result = result;
  }

  /** What waits, the oldest first. */
  public List<Item> list(House house, Messages words) {
    return inbox.list(house.stand()).stream().map(kept -> item(kept, house, "", words)).toList();
  }

  private Item item(Kept kept, House house, String cook, Messages words) {
    Post post = Post.of(kept, house, cook, words);
    Optional<Work> work =
        readers.stream().flatMap(reader -> reader.read(post).stream()).findFirst();
    return new Item(kept, post, work);
  }

  /**
   * Enters something as if it had come when it was sent; why not, when it is not taken and waits
   * on.
   *
   * @param cook who did it, where the tablet did not say
   */
  public Optional<String> enter(House house, Kept kept, String cook, String by, Messages words) {
    Item item = item(kept, house, cook, words);
    if (item.work().isEmpty()) {
      return Optional.of(words.say("tablets.kept-by-hand"));
    }
    if (item.work().get().needsCook()) {
      return Optional.of(words.say("tablets.kept-who"));
    }
    Belated then = Belated.at(kept.at(), desk, result);
    Optional<String> why = item.work().get().enter().apply(then);
    if (why.isEmpty()) {
      inbox.settle(house, kept, true, by);
    }
    return why;
  }
}
