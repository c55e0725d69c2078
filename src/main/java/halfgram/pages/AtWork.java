package halfgram.pages;

import halfgram.desk.Tablets;
import halfgram.station.Person;
import halfgram.web.Visit;
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
    return switch (tablets.work(visit.kitchen(), visit.caller(), person.code(), pin)) {
      case IN -> true;
      case WRONG -> {
        ask(visit, 422, person, visit.wallWords().say("wall.pin-wrong"));
        yield false;
      }
      case LATER -> {
        ask(visit, 429, person, visit.wallWords().say("wall.pin-later"));
        yield false;
      }
    };
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
