package halfgram.people;

import java.util.UUID;

/**
 * Somebody who can sign in, whatever they are in which kitchen.
 *
 * @param name what they sign in with, in lower case
 * @param shown what others read
 * @param ready whether they have chosen a password
 */
public record Account(UUID id, String name, String shown, boolean ready) {}
