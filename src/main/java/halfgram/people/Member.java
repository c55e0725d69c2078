package halfgram.people;

import java.time.Instant;
import java.util.Optional;

/**
 * Somebody's place in a kitchen.
 *
 * @param person code of whom they are among the people of the book, whose shifts the plan counts
 */
public record Member(Account account, Role role, Optional<String> person, Instant since) {}
