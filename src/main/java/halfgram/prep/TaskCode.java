package halfgram.prep;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.LocalDate;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * A task of a day in twelve letters and digits, short enough to be printed as dots and good for as
 * long as the plan is kept: four say the day, eight are a hash of the task's id. An id has slashes
 * and can be hundreds of letters long; the hash needs no table of its own, because the plans of the
 * day know every id there was.
 *
 * <p>Example: a task of 5 December 2026 begins with {@code 0M9R}. Two of a thousand tasks of one
 * day have the same code once in two million such days.
 */
public final class TaskCode {
  /** Without letters that look like digits. */
  private static final String LETTERS = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";

  private static final int BITS = 5;
  private static final int DAY = 4;
  private static final int HASH = 8;
  private static final Pattern CODE = Pattern.compile("[" + LETTERS + "]{" + (DAY + HASH) + "}");

  private TaskCode() {}

  public static String of(LocalDate day, String task) {
    return letters(day.toEpochDay(), DAY) + hash(task);
  }

  /** The day a code is of; empty for what is no code. */
  public static Optional<LocalDate> day(String code) {
    String typed = upper(code);
    if (!CODE.matcher(typed).matches()) {
      return Optional.empty();
    }
    long day = 0;
    for (int i = 0; i < DAY; i++) {
      day = (day << BITS) + LETTERS.indexOf(typed.charAt(i));
    }
    return Optional.of(LocalDate.ofEpochDay(day));
  }

  /** Whether a code is of this task, on whichever day. */
  public static boolean isOf(String code, String task) {
    return upper(code).substring(DAY).equals(hash(task));
  }

  private static String upper(String code) {
    return code.toUpperCase(Locale.ROOT);
  }

  private static String hash(String task) {
    byte[] digest;
    try {
      digest = MessageDigest.getInstance("SHA-256").digest(task.getBytes(StandardCharsets.UTF_8));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
    long bits = 0;
    for (int i = 0; i < BITS; i++) {
      bits = (bits << Byte.SIZE) + (digest[i] & 0xff);
    }
    return letters(bits, HASH);
  }

  private static String letters(long number, int count) {
    StringBuilder letters = new StringBuilder();
    for (int i = count - 1; i >= 0; i--) {
      letters.append(LETTERS.charAt((int) (number >> (i * BITS)) & (LETTERS.length() - 1)));
    }
    return letters.toString();
  }
}
