package halfgram.desk;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.db.Tx;
import halfgram.kitchen.KitchenStore;
import halfgram.kitchen.KitchenStore.News;
import halfgram.kitchen.KitchenStore.Stand;
import halfgram.people.Caller;
import halfgram.people.TabletStore;
import halfgram.people.TabletStore.Kept;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;

/**
 * What tablets sent after they were revoked, until the office settles it.
 *
 * <p>Rules. It is kept as it was sent, but for the proof of the form and the PIN. The same sent
 * again is the same entry. What says nothing of the work, such as a choice of language, is not
 * kept.
 */
public final class Inbox {
  private static final int MOST = 64 * 1024;

  /** Fields that are nobody's to read afterwards. */
  private static final Set<String> SECRET = Set.of("_csrf", "pin");

  /** Fields of which an entry at the wall or the pass has one. */
  private static final List<String> ENTRY = List.of("kind", "entry", "verdict");

  private final Desk desk;
  private final KitchenStore kitchens = new KitchenStore();
  private final TabletStore tablets = new TabletStore();

  public Inbox(Desk desk) {
    this.desk = desk;
  }

  /**
   * Keeps what a revoked tablet sent; false when there is nothing in it to keep.
   *
   * @param path as asked for, with the kitchen's beginning
   */
  public boolean keep(Stand kitchen, Caller tablet, String path, String body) {
    String below = path.substring(("/k/" + kitchen.code() + "/").length());
    String sent = below.startsWith("api/") ? body : withoutSecrets(body);
    if (!counts(below, sent) || sent.length() > MOST) {
      return false;
    }
    Kept entry =
        new Kept(
            UUID.randomUUID(),
            tablet.id(),
            desk.now(),
            below,
            sent,
            tablet.cook().orElse(""),
            Optional.empty(),
            false);
    desk.write(desk.open(kitchen), tx -> keep(tx, kitchen, tablet.name(), entry));
    return true;
  }

  private boolean keep(Tx tx, Stand kitchen, String tablet, Kept entry) {
    kitchens.lock(tx, kitchen.id());
    boolean there = tablets.hasKept(tx, kitchen.id(), entry);
    if (!there) {
      tablets.keep(tx, kitchen.id(), entry);
      log(tx, kitchen.id(), tablet, "kept", entry, entry.cook());
    }
    return !there;
  }

  private static String withoutSecrets(String body) {
    return Arrays.stream(body.split("&"))
        .filter(field -> !SECRET.contains(field.replaceFirst("=.*", "")))
        .collect(Collectors.joining("&"));
  }

  private static boolean counts(String path, String body) {
    if (path.equals("tone") || path.equals("language") || path.equals("wall/seen")) {
      return false;
    }
    boolean choosesCook = path.equals("wall/cook") || path.endsWith("/cook");
    return !choosesCook
        || ENTRY.stream().anyMatch(field -> ("&" + body).contains("&" + field + "="));
  }

  /** What waits for the office, the oldest first. */
  public List<Kept> list(Stand kitchen) {
    return desk.read(tx -> tablets.listWaiting(tx, kitchen.id()));
  }

  /** Something that waits. */
  public Optional<Kept> find(Stand kitchen, UUID entry) {
    return desk.read(tx -> tablets.findKept(tx, kitchen.id(), entry))
        .filter(one -> one.settled().isEmpty());
  }

  /** Settles what was kept: it was entered, or it is put aside. False when somebody was quicker. */
  public boolean settle(House house, Kept entry, boolean entered, String by) {
    return desk.write(
        house,
        tx -> {
          boolean settled = tablets.settle(tx, house.id(), entry.id(), entered, by, desk.now());
          if (settled) {
            String tablet = tablets.find(tx, house.id(), entry.tablet()).orElseThrow().name();
            log(tx, house.id(), tablet, entered ? "kept-entered" : "kept-aside", entry, by);
          }
          return settled;
        });
  }

  private void log(Tx tx, UUID kitchen, String tablet, String what, Kept entry, String by) {
    ObjectNode detail = JsonNodeFactory.instance.objectNode();
    detail.put("what", what);
    detail.put("path", entry.path());
    detail.put("body", entry.body());
    String who = by.isEmpty() ? tablet : by;
    News news = News.note(Tablets.KIND, tablet, detail.toString(), who);
    kitchens.change(tx, kitchen, news, desk.now());
  }
}
