package halfgram.pages;

import halfgram.desk.Tablets;
import halfgram.station.Person;
import halfgram.web.Visit;
import halfgram.words.Messages;
import java.util.ArrayList;
import java.util.List;

/** Lets a cook work on a device: by a touch, and by a PIN where they have one. */
public final class AtWork {
  private static final String PIN = "pin";

  private final Tablets tablets;

  /** The page that asks for a PIN; the fields of what waits go with it. */
  public record PinView(String name, String action, List<Field> fields, String said) {}

  /** A field of what waits until the PIN is right. */
  public record Field(String name, String value) {}

  public AtWork(Tablets tablets) {
    this.tablets = tablets;
  }

  /** Whether they are in; if not, the page that asks for the PIN has been answered. */
  public boolean lets(Visit visit, Person person) {
    String pin = visit.field(PIN);
    boolean asks = tablets.needsPin(visit.kitchen(), person.code());
    if (asks && pin.isEmpty()) {
      ask(visit, 200, person, "");
      return false;
    }
    Tablets.Let let = tablets.work(visit.kitchen(), visit.caller(), person.code(), pin);
    if (let.in()) {
      return true;
    }
    boolean waits = !let.pause().isZero();
    ask(visit, waits ? 429 : 422, person, said(visit.wallWords(), let));
    return false;
  }

  /** Why not, and what to do: how many tries there are, or how long the device has to wait. */
  private static String said(Messages words, Tablets.Let let) {
    if (!let.pause().isZero()) {
      return words.say("wall.pin-later", Math.max(1, let.pause().toSeconds()));
    }
    return let.tries() == 1
        ? words.say("wall.pin-wrong-last")
        : words.say("wall.pin-wrong", let.tries());
  }

  private static void ask(Visit visit, int status, Person person, String said) {
    List<Field> fields = new ArrayList<>();
    visit
        .form()
        .forEach(
            (name, values) -> {
              if (!name.equals("_csrf") && !name.equals(PIN)) {
                values.forEach(value -> fields.add(new Field(name, value)));
              }
            });
    visit.wallPage(
        status,
        "wall/pin",
        visit.wallWords().say("wall.pin", person.name()),
        new PinView(person.name(), visit.here(), fields, said));
  }
}
