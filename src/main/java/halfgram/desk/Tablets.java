package halfgram.desk;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.db.Tx;
import halfgram.kitchen.KitchenStore;
import halfgram.kitchen.KitchenStore.News;
import halfgram.kitchen.KitchenStore.Stand;
import halfgram.measure.Message;
import halfgram.people.Caller;
import halfgram.people.Tablet;
import halfgram.people.TabletStore;
import halfgram.people.TabletStore.Offer;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

/** Pairs tablets with a kitchen, renames and revokes them, and keeps the cooks' PINs. */
public final class Tablets {
  /** Of the change log. */
  static final String KIND = "tablet";

  /** How long a pairing code counts. */
  public static final Duration OFFERED = Duration.ofMinutes(10);

  private static final int CODE = 8;

  /**
   * A tablet that was paired.
   *
   * @param token to be shown from now on
   */
  public record Paired(Stand kitchen, Tablet tablet, String token) {}

  /**
   * Whether a cook was let in by their PIN.
   *
   * @param tries how many more may be wrong before the device has to wait
   * @param pause how long it has to wait before the next counts; zero while it need not
   */
  public record Let(boolean in, int tries, Duration pause) {
    private static final Let IN = new Let(true, 0, Duration.ZERO);
    private static final Let BUSY = new Let(false, 0, Duration.ofSeconds(5));
  }

  private final Desk desk;
  private final Signing signing;
  private final KitchenStore kitchens = new KitchenStore();
  private final TabletStore tablets = new TabletStore();
  private final WrongTries wrong = new WrongTries();

  public Tablets(Desk desk, Signing signing) {
    this.desk = desk;
    this.signing = signing;
  }

  public List<Tablet> list(Stand kitchen) {
    return desk.read(tx -> tablets.list(tx, kitchen.id()));
  }

  public Optional<Tablet> find(Stand kitchen, UUID tablet) {
    return desk.read(tx -> tablets.find(tx, kitchen.id(), tablet));
  }

  /** Why a name or stations will not do. */
  public static List<People.Reason> problems(House house, String name, List<String> stations) {
    List<People.Reason> reasons = new ArrayList<>();
    if (!People.isShown(name)) {
      reasons.add(new People.Reason("name", Message.of("people.accept-shown")));
    }
    List<String> codes = List.copyOf(house.book().stations().keySet());
    if (!codes.containsAll(stations)) {
      reasons.add(
          new People.Reason(
              "stations", Message.of("people.accept-stations", String.join(", ", codes))));
    }
    return reasons;
  }

  /** Offers to pair a tablet: the code is typed in there, or read from the QR, once. */
  public String offer(House house, String name, List<String> stations, String by) {
    String code = Passwords.code(CODE);
    Instant expires = desk.now().plus(OFFERED);
    Offer offer = new Offer(UUID.randomUUID(), house.id(), name.strip(), stations, by, expires);
    desk.keep(
        tx -> {
          tablets.offer(tx, offer, Hash.of(code));
          return true;
        });
    return code.substring(0, 4) + "-" + code.substring(4);
  }

  /**
   * Pairs the tablet on which a code was typed.
   *
   * @param address from where; after wrong codes it has to wait
   */
  public Optional<Paired> pair(String typed, String address) {
    String code = typed.replaceAll("[^A-Za-z0-9]", "").toUpperCase(Locale.ROOT);
    String subject = "pair from " + address;
    Instant now = desk.now();
    if (!desk.read(tx -> wrong.wait(tx, subject, now)).isZero()) {
      return Optional.empty();
    }
    String token = Passwords.token();
    Optional<Paired> paired =
        desk.keep(
            tx -> {
              Optional<Offer> offer = tablets.findOffer(tx, Hash.of(code), now);
              if (offer.isEmpty() || !tablets.use(tx, offer.get().id(), now)) {
                wrong.add(tx, subject, now);
                return Optional.empty();
              }
              return Optional.of(paired(tx, offer.get(), token, now));
            });
    signing.forget();
    return paired;
  }

  /** How long the next try to pair from an address has to wait. */
  public Duration pairingPause(String address) {
    return desk.read(tx -> wrong.wait(tx, "pair from " + address, desk.now()));
  }

  private Paired paired(Tx tx, Offer offer, String token, Instant now) {
    Tablet tablet =
        new Tablet(
            UUID.randomUUID(),
            offer.name(),
            offer.stations(),
            now,
            offer.by(),
            Optional.empty(),
            Optional.empty());
    tablets.add(tx, offer.kitchen(), tablet, Hash.of(token));
    log(tx, offer.kitchen(), tablet, "paired", Optional.empty(), offer.by());
    Stand kitchen =
        kitchens.list(tx).stream()
            .filter(one -> one.id().equals(offer.kitchen()))
            .findFirst()
            .orElseThrow();
    return new Paired(kitchen, tablet, token);
  }

  /** Renames a tablet or has it show other stations; false when there is none of that id. */
  public boolean change(House house, UUID tablet, String name, List<String> stations, String by) {
    return changed(
        house,
        tablet,
        (tx, before) -> {
          tablets.change(tx, house.id(), tablet, name.strip(), stations);
          Tablet after = tablets.find(tx, house.id(), tablet).orElseThrow();
          log(tx, house.id(), after, "changed", Optional.of(before), by);
        });
  }

  /**
   * Revokes a tablet: it can do nothing from now on; what it still holds is kept for the office.
   */
  public boolean revoke(House house, UUID tablet, String by) {
    return changed(
        house,
        tablet,
        (tx, before) -> {
          tablets.revoke(tx, house.id(), tablet, desk.now());
          log(tx, house.id(), before, "revoked", Optional.empty(), by);
        });
  }

  private interface Change {
    void on(Tx tx, Tablet before);
  }

  private boolean changed(House house, UUID tablet, Change change) {
    boolean there =
        desk.write(
            house,
            tx -> {
              Optional<Tablet> before =
                  tablets.find(tx, house.id(), tablet).filter(one -> one.revoked().isEmpty());
              before.ifPresent(one -> change.on(tx, one));
              return before.isPresent();
            });
    signing.forget();
    return there;
  }

  /** The people who have a PIN. */
  public Set<String> listPins(Stand kitchen) {
    return desk.read(tx -> tablets.listPins(tx, kitchen.id()));
  }

  /** Sets somebody's PIN of four to eight digits; none takes it away. */
  public Optional<Message> setPin(House house, String person, Optional<String> pin, String by) {
    if (house.book().people().stream().noneMatch(one -> one.code().equals(person))) {
      return Optional.of(Message.of("people.refused-gone"));
    }
    boolean digits = pin.isEmpty() || pin.get().matches("\\d{4,8}");
    if (!digits || pin.filter(Tablets::isEasy).isPresent()) {
      return Optional.of(Message.of("people.accept-pin"));
    }
    Optional<String> hash;
    try {
      hash = pin.map(Passwords::hash);
    } catch (Signing.Busy e) {
      return Optional.of(Message.of("people.busy"));
    }
    desk.write(
        house,
        tx -> {
          tablets.setPin(tx, house.id(), person, hash, desk.now());
          ObjectNode detail = JsonNodeFactory.instance.objectNode();
          detail.put("what", pin.isPresent() ? "pin-set" : "pin-removed");
          return kitchens.change(
              tx, house.id(), News.note(People.KIND, person, detail.toString(), by), desk.now());
        });
    return Optional.empty();
  }

  /** One digit throughout, or digits in a row. */
  private static boolean isEasy(String pin) {
    int step = pin.charAt(1) - pin.charAt(0);
    boolean even = Math.abs(step) <= 1;
    for (int i = 2; i < pin.length(); i++) {
      even &= pin.charAt(i) - pin.charAt(i - 1) == step;
    }
    return even;
  }

  /** Whether somebody needs a PIN to work on a device. */
  public boolean needsPin(Stand kitchen, String person) {
    return desk.read(tx -> tablets.findPin(tx, kitchen.id(), person)).isPresent();
  }

  /** Lets a cook work on a device; who has a PIN has to know it. */
  public Let work(Stand kitchen, Caller caller, String person, String pin) {
    Let let =
        desk.read(tx -> tablets.findPin(tx, kitchen.id(), person))
            .map(hash -> tried("pin on " + caller.id(), pin, hash))
            .orElse(Let.IN);
    if (let.in()) {
      signing.act(kitchen, caller, person);
    }
    return let;
  }

  private Let tried(String subject, String pin, String hash) {
    Duration wait = desk.read(tx -> wrong.wait(tx, subject, desk.now()));
    if (!wait.isZero()) {
      return new Let(false, 0, wait);
    }
    boolean right;
    try {
      right = pin.length() <= 8 && Passwords.matches(pin, Optional.of(hash));
    } catch (Signing.Busy e) {
      return Let.BUSY;
    }
    return desk.keep(
        tx -> {
          if (right) {
            wrong.forget(tx, subject);
            return Let.IN;
          }
          Instant now = desk.now();
          wrong.add(tx, subject, now);
          return new Let(false, wrong.left(tx, subject, now), wrong.wait(tx, subject, now));
        });
  }

  private void log(
      Tx tx, UUID kitchen, Tablet tablet, String what, Optional<Tablet> before, String by) {
    ObjectNode detail = JsonNodeFactory.instance.objectNode().put("what", what);
    before.ifPresent(one -> detail.set("before", json(one)));
    detail.set("after", json(tablet));
    kitchens.change(tx, kitchen, News.note(KIND, tablet.name(), detail.toString(), by), desk.now());
  }

  private static ObjectNode json(Tablet tablet) {
    ObjectNode json = JsonNodeFactory.instance.objectNode();
    json.put("name", tablet.name());
    json.put("stations", String.join(", ", tablet.stations()));
    return json;
  }
}
