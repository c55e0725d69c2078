package halfgram.words;

import halfgram.kitchen.Text;
import halfgram.measure.Exact;
import halfgram.measure.Message;
import halfgram.measure.Ratio;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Properties;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The sentences of one language, and how their places are filled: a time in the kitchen's zone, a
 * duration in hours and minutes, a text in the language. {@code {0}} is the first place.
 */
public final class Messages {
  private static final DateTimeFormatter DATE =
      DateTimeFormatter.ofPattern("EEEE d MMMM uuuu", Locale.ENGLISH);
  private static final DateTimeFormatter SHORT_DATE =
      DateTimeFormatter.ofPattern("EEE d MMM", Locale.ENGLISH);
  private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm");
  private static final DateTimeFormatter WEEKDAY =
      DateTimeFormatter.ofPattern("EEE", Locale.ENGLISH);
  private static final DateTimeFormatter DAY_TIME =
      DateTimeFormatter.ofPattern("EEE HH:mm", Locale.ENGLISH);
  private static final DateTimeFormatter MOMENT =
      DateTimeFormatter.ofPattern("EEE d MMM HH:mm", Locale.ENGLISH);

  /** Other braces are the sentence's own: some show a piece of JSON. */
  private static final Pattern PLACE = Pattern.compile("\\{(\\d)\\}");

  private final Properties sentences = new Properties();
  private final String language;
  private final ZoneId zone;

  /** The sentences of a language; the program carries them, so a missing file is a bug. */
  public Messages(String language, ZoneId zone) {
    this.language = language;
    this.zone = zone;
    String name = "/halfgram/messages_" + language + ".properties";
    try (InputStream stream = Messages.class.getResourceAsStream(name)) {
      if (stream == null) {
        throw new IllegalStateException("the program lacks " + name);
      }
      sentences.load(new InputStreamReader(stream, StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new UncheckedIOException(name, e);
    }
  }

  public Messages at(ZoneId other) {
    return new Messages(language, other);
  }

  public String say(String key, Object... args) {
    return say(Message.of(key, args));
  }

  public String say(Message message) {
    String sentence = sentences.getProperty(message.key());
    if (sentence == null) {
      throw new IllegalStateException("no sentence for " + message.key());
    }
    return PLACE
        .matcher(sentence)
        .replaceAll(
            place -> {
              Object arg = message.args().get(Integer.parseInt(place.group(1)));
              return Matcher.quoteReplacement(shown(arg));
            });
  }

  public boolean has(String key) {
    return sentences.containsKey(key);
  }

  private String shown(Object arg) {
    if (arg instanceof Message nested) {
      return say(nested);
    }
    if (arg instanceof Text text) {
      return text.in(language);
    }
    if (arg instanceof Duration duration) {
      return duration(duration);
    }
    if (arg instanceof Instant instant) {
      return moment(instant);
    }
    if (arg instanceof LocalDateTime moment) {
      return moment.format(MOMENT);
    }
    if (arg instanceof LocalDate date) {
      return date(date);
    }
    if (arg instanceof BigDecimal number) {
      return Exact.plain(number, 6);
    }
    if (arg instanceof Ratio ratio) {
      return Exact.plain(ratio.percent(), 3) + " %";
    }
    return arg instanceof List<?> list
        ? String.join(", ", list.stream().map(this::shown).toList())
        : String.valueOf(arg);
  }

  public String text(Text text) {
    return text.in(language);
  }

  /** "45 min", "4 h", "1 h 05 min", "3 d". */
  public String duration(Duration duration) {
    long minutes = (duration.toSeconds() + 59) / 60;
    if (minutes >= 48 * 60 && minutes % (24 * 60) == 0) {
      return minutes / (24 * 60) + " d";
    }
    if (minutes < 60) {
      return minutes + " min";
    }
    return minutes % 60 == 0
        ? minutes / 60 + " h"
        : minutes / 60 + " h " + (minutes % 60 < 10 ? "0" : "") + minutes % 60 + " min";
  }

  public String time(Instant instant) {
    return instant.atZone(zone).format(TIME);
  }

  /** "Fri 21:40", for a time on another day than the one it is read on. */
  public String dayTime(Instant instant) {
    return instant.atZone(zone).format(DAY_TIME);
  }

  public String moment(Instant instant) {
    return instant.atZone(zone).format(MOMENT);
  }

  public String date(LocalDate date) {
    return date.format(DATE);
  }

  public String weekday(LocalDate date) {
    return date.format(WEEKDAY);
  }

  public String shortDate(LocalDate date) {
    return date.format(SHORT_DATE);
  }
}
