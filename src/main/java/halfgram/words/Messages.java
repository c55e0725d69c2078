package halfgram.words;

import halfgram.kitchen.Kitchen;
import halfgram.kitchen.Text;
import halfgram.measure.Amount;
import halfgram.measure.Dated;
import halfgram.measure.Dimension;
import halfgram.measure.Exact;
import halfgram.measure.Length;
import halfgram.measure.Marked;
import halfgram.measure.Message;
import halfgram.measure.Quantity;
import halfgram.measure.Ratio;
import halfgram.measure.Temperature;
import halfgram.measure.Unit;
import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Properties;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The sentences of one language, and how their places are filled: a time in the kitchen's zone, a
 * duration in hours and minutes, a text in the language. {@code {0}} is the first place.
 */
public final class Messages {
  private static final DateTimeFormatter DATE = DateTimeFormatter.ofPattern("EEEE d MMMM uuuu");
  private static final DateTimeFormatter DATE_ES =
      DateTimeFormatter.ofPattern("EEEE d 'de' MMMM 'de' uuuu");
  private static final DateTimeFormatter SHORT_DATE = DateTimeFormatter.ofPattern("EEE d MMM");
  private static final DateTimeFormatter SHORT_DATE_OF_YEAR =
      DateTimeFormatter.ofPattern("EEE d MMM uuuu");
  private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm");
  private static final DateTimeFormatter SECONDS = DateTimeFormatter.ofPattern("HH:mm:ss");
  private static final DateTimeFormatter HALF_DAY = DateTimeFormatter.ofPattern("h:mm");
  private static final DateTimeFormatter HALF_DAY_SECONDS = DateTimeFormatter.ofPattern("h:mm:ss");
  private static final DateTimeFormatter WEEKDAY = DateTimeFormatter.ofPattern("EEE");

  private static final BigDecimal TENTH = new BigDecimal("0.1");

  /** A place, or a marked measure; other braces are the sentence's own, some show JSON. */
  private static final Pattern PLACE =
      Pattern.compile("\\{(?:(\\d)|(\\d)\\|([^{}|]*)\\|([^{}|]*)|\"([^\"{}]*)\"|([^{}]*))\\}");

  private static final Pattern BEFORE_UNIT = Pattern.compile("(?<=\\d) (?=[\\p{L}°])");

  /** A number that computing has written already. */
  private static final Pattern NUMBER = Pattern.compile("-?\\d{1,15}\\.\\d{1,18}");

  private final Properties sentences;
  private final String language;
  private final Locale locale;
  private final ZoneId zone;
  private final Kitchen.Hours hours;
  private final Figures figures;
  private final String blank;
  private final Marked.Writer measures;
  private final Marked.Writer samples;

  /**
   * The sentences of a language, in English where it has none. The program carries the English
   * ones, so a missing file is a bug.
   */
  public Messages(String language, ZoneId zone) {
    this(
        Sentences.of(language),
        language,
        zone,
        Kitchen.Hours.TWENTY_FOUR,
        new Figures(language, Kitchen.Units.METRIC),
        " ");
  }

  private Messages(
      Properties sentences,
      String language,
      ZoneId zone,
      Kitchen.Hours hours,
      Figures figures,
      String blank) {
    this.hours = hours;
    this.figures = figures;
    this.blank = blank;
    this.measures = new Measures();
    this.samples = new Samples(figures);
    this.sentences = sentences;
    this.language = language;
    this.locale = Locale.forLanguageTag(language);
    this.zone = zone;
  }

  /** Marked measures, with what stands beside them. */
  private final class Measures implements Marked.Writer {
    @Override
    public String temperature(Temperature typed) {
      return whole(figures.temperature(typed).whole());
    }

    @Override
    public String quantity(Quantity typed) {
      return whole(figures.quantity(typed).whole());
    }
  }

  /** The same for pages: no line ends between a number of a text and its unit. */
  public Messages unbroken() {
    return new Messages(sentences, language, zone, hours, figures, "\u00a0");
  }

  private String whole(String measure) {
    return BEFORE_UNIT.matcher(measure).replaceAll(blank);
  }

  /** Samples of what can be typed. */
  private record Samples(Figures figures) implements Marked.Writer {
    @Override
    public String temperature(Temperature metric) {
      return figures.sample(metric);
    }

    @Override
    public String quantity(Quantity metric) {
      return figures.sample(metric);
    }
  }

  public Messages at(ZoneId other) {
    return new Messages(sentences, language, other, hours, figures, blank);
  }

  /** As a kitchen reads: by its clock, in its units. */
  public Messages at(Kitchen kitchen) {
    return new Messages(
        sentences, language, kitchen.clock().zone(), kitchen.hours(), figures.in(kitchen), blank);
  }

  /** How this language and kitchen show numbers. */
  public Figures figures() {
    return figures;
  }

  public String language() {
    return language;
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
        .replaceAll(place -> Matcher.quoteReplacement(placed(place, message.args())));
  }

  /**
   * What stands in a place: "{0}" an argument, "{0|drop|drops}" the word for so many, "{4 °C}" a
   * measure, and quoted a sample of what can be typed, as the kitchen would type it.
   */
  private String placed(MatchResult place, List<Object> args) {
    if (place.group(1) != null) {
      return shown(args.get(Integer.parseInt(place.group(1))));
    }
    if (place.group(2) != null) {
      boolean one = shown(args.get(Integer.parseInt(place.group(2)))).equals("1");
      return one ? place.group(3) : place.group(4);
    }
    return place.group(5) != null
        ? Marked.findWritten(place.group(5), samples).orElse(place.group())
        : Marked.findWritten(place.group(6), measures).orElse(place.group());
  }

  public boolean has(String key) {
    return sentences.containsKey(key);
  }

  private String shown(Object arg) {
    if (arg instanceof Message nested) {
      return say(nested);
    }
    if (arg instanceof Text text) {
      return text(text);
    }
    if (arg instanceof Amount amount) {
      return amount(amount);
    }
    if (arg instanceof Duration duration) {
      return duration(duration);
    }
    if (arg instanceof Instant instant) {
      return moment(instant);
    }
    if (arg instanceof Dated dated) {
      return moment(dated);
    }
    if (arg instanceof LocalDateTime moment) {
      return shortDate(moment.toLocalDate()) + " " + time(moment.toLocalTime());
    }
    if (arg instanceof LocalTime time) {
      return time(time);
    }
    if (arg instanceof LocalDate date) {
      return date(date);
    }
    if (arg instanceof BigDecimal number) {
      return figures.number(number, 6);
    }
    if (arg instanceof Ratio ratio) {
      return figures.number(ratio.percent(), 3) + " %";
    }
    if (arg instanceof Temperature temperature) {
      return figures.temperature(temperature).whole();
    }
    if (arg instanceof Length length) {
      return length(length);
    }
    if (arg instanceof String text && NUMBER.matcher(text).matches()) {
      return figures.signed(text);
    }
    return arg instanceof List<?> list
        ? String.join(", ", list.stream().map(this::shown).toList())
        : String.valueOf(arg);
  }

  /** "98.5 g", "250 g", "12.4 kg", "84 pc", "2.35 L"; in the kitchen's units. */
  public String amount(Amount amount) {
    return shown(amount).whole();
  }

  /** As {@link #amount}, with what stands beside it apart. */
  public Figures.Shown shown(Amount amount) {
    return switch (amount.dimension()) {
      case COUNT -> new Figures.Shown(say("sheet.pieces", figures.number(amount.number(), 0)), "");
      case VOLUME -> figures.volume(amount.number(), TENTH);
      case MASS -> figures.mass(amount.number());
    };
  }

  /** A length to a tenth of a millimetre: "37.5 mm". */
  public String length(Length length) {
    return figures.length(length, TENTH).whole();
  }

  /** An amount as one would type it: "5.9 kg" to the gram, "250.5 g" to a tenth, "84 pieces". */
  public String typed(Amount amount) {
    return amount.dimension() == Dimension.COUNT
        ? typed(Quantity.of(Exact.plain(amount.number(), 0) + " " + Unit.PIECE.symbol()))
        : figures.typed(amount.number());
  }

  /** A quantity as one would type it: "3 pieces", "2 bunch". */
  public String typed(Quantity quantity) {
    return quantity.number().toPlainString() + " " + unit(quantity.number(), quantity.unit());
  }

  /** What so many are of: of pieces "piece" or "pieces", of anything else the word as typed. */
  public String unit(BigDecimal number, String unit) {
    return unit.equals(Unit.PIECE.symbol()) ? say("sheet.typed-pieces", number) : unit;
  }

  /** A text of the book in the language, its marked measures in the kitchen's units. */
  public String text(Text text) {
    return Marked.written(text.in(language), measures);
  }

  /** "45 min", "4 h", "1 h 05 min", "3 d". */
  public String duration(Duration duration) {
    return whole(typed(duration));
  }

  private static String typed(Duration duration) {
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
    return time(instant.atZone(zone).toLocalTime());
  }

  /** "21:40", by a clock of twelve hours "9:40 pm". */
  public String time(LocalTime time) {
    return shown(time, TIME, HALF_DAY);
  }

  /** "17:42:10", for what is timed to the second. */
  public String seconds(Instant instant) {
    return shown(instant.atZone(zone).toLocalTime(), SECONDS, HALF_DAY_SECONDS);
  }

  private String shown(LocalTime time, DateTimeFormatter whole, DateTimeFormatter half) {
    return switch (hours) {
      case TWENTY_FOUR -> time.format(whole);
      case TWELVE -> say(time.getHour() < 12 ? "time.am" : "time.pm", time.format(half));
    };
  }

  /** By which clock times are shown. */
  public Kitchen.Hours hours() {
    return hours;
  }

  /** "Fri 21:40", for a time on another day than the one it is read on. */
  public String dayTime(Instant instant) {
    return weekday(instant.atZone(zone).toLocalDate()) + " " + time(instant);
  }

  public String moment(Instant instant) {
    return shortDate(instant.atZone(zone).toLocalDate()) + " " + time(instant);
  }

  /** As above, with the year of one that is far: "Fri 31 Aug 2029 11:00". */
  public String moment(Instant instant, Instant now) {
    return moment(Dated.of(instant, now, zone));
  }

  private String moment(Dated dated) {
    LocalDate date = dated.moment().toLocalDate();
    String day =
        dated.isFar() ? date.format(SHORT_DATE_OF_YEAR.withLocale(locale)) : shortDate(date);
    return day + " " + time(dated.moment().toLocalTime());
  }

  public String date(LocalDate date) {
    return date.format((language.equals("es") ? DATE_ES : DATE).withLocale(locale));
  }

  public String weekday(LocalDate date) {
    return date.format(WEEKDAY.withLocale(locale));
  }

  public String shortDate(LocalDate date) {
    return date.format(SHORT_DATE.withLocale(locale));
  }
}
