package halfgram.people;

import java.util.Optional;
import java.util.UUID;

/**
 * Who asks something of a kitchen, and what they are there.
 *
 * @param kind whether a person, a tablet or a command of the machine's owner
 * @param id of the session or the tablet
 * @param name what the audit calls them
 * @param person code of whom they are among the people of the book
 * @param cook code of who works on this device in this kitchen, if somebody said so
 */
public record Caller(
    Kind kind,
    UUID id,
    String name,
    Role role,
    Optional<String> person,
    Optional<String> cook,
    Optional<Tablet> tablet) {

  /** How they got in. */
  public enum Kind {
    SESSION,
    TABLET,
    COMMAND
  }

  /** A command of the machine's owner. */
  public static Caller command() {
    return new Caller(
        Kind.COMMAND,
        new UUID(0, 0),
        "command",
        Role.OWNER,
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  public static Caller of(Tablet tablet, Optional<String> cook) {
    return new Caller(
        Kind.TABLET,
        tablet.id(),
        tablet.name(),
        Role.TABLET,
        Optional.empty(),
        cook,
        Optional.of(tablet));
  }

  /** The same where no page says who works on the device: the cook of a tablet counts anywhere. */
  public Caller signedIn() {
    return tablet.isPresent()
        ? this
        : new Caller(kind, id, name, role, person, Optional.empty(), tablet);
  }

  public boolean may(Deed deed) {
    return deed.roles().contains(role);
  }

  /** Who did it, as the log writes it: the cook, whom the person is, else their name. */
  public String who() {
    return cook.or(() -> person).orElse(name);
  }
}
