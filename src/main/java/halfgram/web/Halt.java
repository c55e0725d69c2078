package halfgram.web;

import halfgram.measure.Message;
import halfgram.people.Deed;
import halfgram.people.Role;
import java.util.List;

/**
 * Ends a request with one of the errors that are neither bad input nor a rule's refusal: those two
 * are shown in place by the page itself.
 */
public final class Halt extends RuntimeException {
  private static final long serialVersionUID = 1;

  private final int status;
  private final String key;
  private final transient List<Object> args;

  private Halt(int status, String key, Object... args) {
    super(key);
    this.status = status;
    this.key = key;
    this.args = List.of(args);
  }

  /** Not there, or not yours: the same answer for both. */
  public static Halt notFound(String what) {
    return new Halt(404, "web.not-found", what);
  }

  /** Not there, with what would be. */
  public static Halt notFound(Message said) {
    return new Halt(404, said.key(), said.args().toArray());
  }

  /** Changed by someone else meanwhile. */
  public static Halt stale() {
    return new Halt(409, "web.stale");
  }

  /** Sent from a page that is not ours, or from one too old to prove that it is. */
  static Halt foreign() {
    return new Halt(403, "web.foreign");
  }

  /** Nobody is signed in: not yet, or no longer. */
  static Halt nobody() {
    return new Halt(401, "web.nobody");
  }

  /** Somebody who may not. */
  static Halt forbidden(Role role, Deed deed) {
    if (role == Role.TABLET) {
      return new Halt(403, "web.forbidden-tablet");
    }
    return new Halt(
        403,
        "web.forbidden",
        Message.of("role." + role.code()),
        Message.of("deed." + deed.code()),
        deed.roles().stream()
            .filter(one -> one != Role.TABLET)
            .sorted()
            .map(one -> Message.of("role." + one.code()))
            .toList());
  }

  /** A tablet that shows other stations. */
  static Halt otherStation(String tablet) {
    return new Halt(403, "web.other-station", tablet);
  }

  /** A rule does not let it, and there is no form to say so at. */
  public static Halt refused(Message because) {
    return new Halt(409, "web.refused", because);
  }

  /** A tablet that was revoked; what it sent is kept. */
  static Halt revoked(boolean kept) {
    return new Halt(403, kept ? "web.revoked-kept" : "web.revoked");
  }

  static Halt tooLarge(long most) {
    return new Halt(413, "web.too-large", most / 1024);
  }

  /** Cannot be read as what it says it is. */
  public static Halt unreadable(String what) {
    return new Halt(400, "web.unreadable", what);
  }

  /** As {@link #unreadable(String)}, with where and why. */
  public static Halt unreadable(Message why) {
    return new Halt(400, "web.unreadable", why);
  }

  /** Whether it came from a page that is not ours, or from one too old. */
  boolean isForeign() {
    return key.equals("web.foreign");
  }

  int status() {
    return status;
  }

  Message message() {
    return new Message(key, args);
  }
}
