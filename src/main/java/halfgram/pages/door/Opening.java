package halfgram.pages.door;

import java.util.UUID;

/**
 * How the door stands.
 *
 * @param demo whether anybody may be one of the demo's people: only where nobody but this machine
 *     gets here
 * @param code opens the page of the first kitchen
 */
public record Opening(boolean demo, String code) {
  /** Nobody comes in: for a server that lasts for one command. */
  public static final Opening CLOSED = new Opening(false, UUID.randomUUID().toString());
}
