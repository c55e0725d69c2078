package halfgram.testkit;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What of a page is said in English where another language is asked for: a piece of its text that
 * is an English sentence of ours, places filled, and not one of that language too; or a text of the
 * book in English that the book has in that language.
 */
public final class Seen {
  private static final Path RESOURCES = Path.of("src", "main", "resources", "halfgram");

  /** A place, or a measure that is shown in the units of the kitchen. */
  private static final Pattern PLACE = Pattern.compile("\\{\\d[^{}]*\\}");

  private static final Pattern SHOWN =
      Pattern.compile(
          "\\s(?:aria-label|placeholder|title|alt|data-on|data-off)=\"([^\"]*)\"|>([^<]+)<");

  /** Punctuation that joins sentences on a page. */
  private static final String JOINTS = "\u00a0· |; | ; ";

  private final Set<String> english = new HashSet<>();
  private final List<Filled> filled = new ArrayList<>();
  private final Set<String> theirs = new HashSet<>();
  private final List<Filled> theirsFilled = new ArrayList<>();
  private final Map<String, Boolean> judged = new HashMap<>();

  /** Everything said in a language, against everything said in English. */
  public Seen(String language) {
    Properties ours = sentences("en");
    Properties others = sentences(language);
    for (String key : ours.stringPropertyNames()) {
      String said = ours.getProperty(key);
      String other = others.getProperty(key, "");
      if (!other.equals(said) && hasWords(said)) {
        put(said, english, filled);
      }
    }
    for (String key : others.stringPropertyNames()) {
      put(others.getProperty(key), theirs, theirsFilled);
    }
  }

  private static void put(String said, Set<String> whole, List<Filled> withPlaces) {
    String plain = said.strip().replace('\u00a0', ' ');
    if (PLACE.matcher(said).find()) {
      withPlaces.add(Filled.of(plain));
    } else {
      whole.add(plain);
    }
  }

  /**
   * A sentence with places.
   *
   * @param longest the longest piece of its own, to look for first
   * @param own how many letters are its own
   */
  private record Filled(Pattern pattern, String longest, int own) {
    private static Filled of(String said) {
      String[] pieces = PLACE.split(said, -1);
      String pattern = Arrays.stream(pieces).map(Pattern::quote).collect(Collectors.joining(".*"));
      String longest =
          Arrays.stream(pieces).max(Comparator.comparingInt(String::length)).orElse("");
      return new Filled(Pattern.compile(pattern), longest, String.join("", pieces).length());
    }

    private boolean says(String text) {
      return text.contains(longest) && pattern.matcher(text).matches();
    }
  }

  private static boolean hasWords(String said) {
    return Arrays.stream(PLACE.split(said, -1))
        .anyMatch(part -> part.matches("(?s).*\\p{L}{2,}.*"));
  }

  /** Takes a text of the book as one not to be seen in English where it is there in a language. */
  public Seen with(JsonNode book, String language) {
    List<JsonNode> texts = new ArrayList<>();
    put(book, texts);
    for (JsonNode text : texts) {
      if (!text.path(language).asText().equals(text.path("en").asText())) {
        put(text.path("en").asText(), english, filled);
      }
    }
    texts.forEach(text -> put(text.path(language).asText(), theirs, theirsFilled));
    return this;
  }

  private static void put(JsonNode node, List<JsonNode> texts) {
    if (node.isObject() && node.has("en") && node.path("en").isTextual()) {
      texts.add(node);
    } else {
      node.forEach(one -> put(one, texts));
    }
  }

  /** What is said in English on a page. */
  public Set<String> english(String html) {
    Set<String> found = new TreeSet<>();
    String page = html.replaceAll("(?s)<(style|script|title)\\b.*?</\\1>", "");
    Matcher matcher = SHOWN.matcher(page);
    while (matcher.find()) {
      String whole = plain(matcher.group(1) == null ? matcher.group(2) : matcher.group(1));
      List<String> pieces = new ArrayList<>(List.of(whole.split(JOINTS, -1)));
      pieces.add(whole);
      pieces.stream().map(String::strip).filter(this::isEnglish).forEach(found::add);
    }
    return found;
  }

  private boolean isEnglish(String text) {
    return judged.computeIfAbsent(text, this::judge);
  }

  private boolean judge(String text) {
    if (text.isEmpty() || theirs.contains(text) || !text.matches("(?s).*\\p{L}.*")) {
      return false;
    }
    if (english.contains(text)) {
      return true;
    }
    return closest(filled, text) > closest(theirsFilled, text);
  }

  /** How much of a text is a sentence's own, of the one that has most; 0 when it is none. */
  private static int closest(List<Filled> sentences, String text) {
    return sentences.stream().filter(one -> one.says(text)).mapToInt(Filled::own).max().orElse(0);
  }

  private static String plain(String text) {
    return text.replace("&#39;", "'")
        .replace("&quot;", "\"")
        .replace("&lt;", "<")
        .replace("&gt;", ">")
        .replace("&amp;", "&")
        .replaceAll("[\\s\u00a0]+", " ")
        .strip();
  }

  private static Properties sentences(String language) {
    Properties sentences = new Properties();
    try (Stream<Path> files = Files.walk(RESOURCES)) {
      for (Path file :
          files.filter(one -> one.toString().endsWith("_" + language + ".properties")).toList()) {
        try (Reader reader = Files.newBufferedReader(file, StandardCharsets.UTF_8)) {
          sentences.load(reader);
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return sentences;
  }
}
