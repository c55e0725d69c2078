package halfgram.desk;

import com.nulabinc.zxcvbn.Zxcvbn;
import com.password4j.Argon2Function;
import com.password4j.Password;
import com.password4j.types.Argon2;
import halfgram.measure.Message;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;

/**
 * Passwords and PINs: hashed by Argon2id with 19 MiB, two passes and one lane (OWASP Password
 * Storage Cheat Sheet), never more than two at once so that no storm of them starves the wall.
 */
final class Passwords {
  static final int SHORTEST = 10;
  static final int LONGEST = 200;

  private static final Argon2Function ARGON =
      Argon2Function.getInstance(19_456, 2, 1, 32, Argon2.ID);

  /** One core is left to everything else. */
  private static final int AT_ONCE =
      Math.max(1, Math.min(2, Runtime.getRuntime().availableProcessors() - 1));

  private static final Semaphore ROOM = new Semaphore(AT_ONCE, true);

  /** How many may wait; a request that waits holds a thread of the server. */
  private static final int MOST_WAITING = 24;

  private static final long LONGEST_WAIT_SECONDS = 15;

  /** Easily guessed by the estimate of zxcvbn: fewer than a hundred million tries. */
  private static final int LEAST_SCORE = 3;

  private static final SecureRandom RANDOM = new SecureRandom();
  private static final int GUESSED_LENGTH = 64;

  /** Made when the first password is checked: a start has no time for it. */
  private static final class Nobody {
    /** What nobody's password hashes to, to take as long for a name that nobody has. */
    private static final String HASH = hashed(token());
  }

  /** Its dictionaries are read when the first password is chosen. */
  private static final class Guesses {
    private static final Zxcvbn BY_ALL = new Zxcvbn();
  }

  private Passwords() {}

  /** 32 random bytes, 43 characters. */
  static String token() {
    byte[] bytes = new byte[32];
    RANDOM.nextBytes(bytes);
    return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
  }

  /** A code to read out and type in: so many letters and digits that no eye confuses. */
  static String code(int length) {
    String letters = "ABCDEFGHJKMNPQRSTVWXYZ23456789";
    StringBuilder code = new StringBuilder();
    for (int i = 0; i < length; i++) {
      code.append(letters.charAt(RANDOM.nextInt(letters.length())));
    }
    return code.toString();
  }

  static String hash(String secret) {
    enter();
    try {
      return hashed(secret);
    } finally {
      ROOM.release();
    }
  }

  /** Whether it is the secret of a hash; takes as long when there is none. */
  static boolean matches(String secret, Optional<String> hash) {
    enter();
    try {
      String nobody = Nobody.HASH;
      String kept = hash.orElse(nobody);
      boolean same = Password.check(secret, kept).with(Argon2Function.getInstanceFromHash(kept));
      return same && hash.isPresent();
    } finally {
      ROOM.release();
    }
  }

  /**
   * Why a password will not do.
   *
   * @param known what anybody who knows the person would try first
   */
  static Optional<Message> problem(String password, List<String> known) {
    if (password.length() < SHORTEST || password.length() > LONGEST) {
      return Optional.of(Message.of("people.password-length", SHORTEST, LONGEST));
    }
    String guessed = password.substring(0, Math.min(password.length(), GUESSED_LENGTH));
    List<String> words = known.stream().map(word -> word.toLowerCase(Locale.ROOT)).toList();
    return Guesses.BY_ALL.measure(guessed, words).getScore() < LEAST_SCORE
        ? Optional.of(Message.of("people.password-guessed"))
        : Optional.empty();
  }

  private static String hashed(String secret) {
    return Password.hash(secret).addRandomSalt(16).with(ARGON).getResult();
  }

  private static void enter() {
    if (ROOM.getQueueLength() >= MOST_WAITING) {
      throw new Signing.Busy();
    }
    try {
      if (!ROOM.tryAcquire(LONGEST_WAIT_SECONDS, TimeUnit.SECONDS)) {
        throw new Signing.Busy();
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new Signing.Busy();
    }
  }
}
