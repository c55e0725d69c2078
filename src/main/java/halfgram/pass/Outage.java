package halfgram.pass;

import java.time.Instant;

/** Something of which there is none on a day: 86. */
public record Outage(What what, String because, String who, Instant since) {

  /** A dish; or a component, of one dish or of all when no dish is named. */
  public record What(String dish, String item) {}
}
