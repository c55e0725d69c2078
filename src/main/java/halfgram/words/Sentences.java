package halfgram.words;

import halfgram.technique.Techniques;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Properties;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Pattern;

/** The files of sentences, by language. */
final class Sentences {
  /** The space before a mark of the end. */
  private static final Pattern LOOSE = Pattern.compile(" (?=[:;?!])");

  /** The files of sentences, by their names without language: of the core, then of the pages. */
  private static final List<String> FILES =
      List.of(
          "messages",
          "pages/page",
          "pages/today",
          "pages/lanes",
          "pages/wall",
          "pages/timer",
          "pages/paper",
          "pages/bath",
          "pages/baths",
          "pages/gate",
          "pages/service",
          "pages/formulas",
          "pages/techniques",
          "pages/events",
          "pages/stock",
          "pages/slip",
          "pages/deliveries",
          "pages/kit",
          "pages/crew",
          "pages/people",
          "pages/audit",
          "pages/tablets",
          "pages/settings",
          "pages/things",
          "pages/command",
          "pages/api");

  /** By language; each is read once in the life of the program. */
  private static final Map<String, Properties> READ = new ConcurrentHashMap<>();

  private Sentences() {}

  /** All that a language has, and in English what it lacks; a missing English file is a bug. */
  static Properties of(String language) {
    Properties english = READ.computeIfAbsent("en", any -> english());
    return READ.computeIfAbsent(language, any -> load(language, english));
  }

  private static Properties english() {
    Properties sentences = new Properties();
    for (String file : files()) {
      if (!load(sentences, file + "_en")) {
        throw new IllegalStateException("the program lacks " + file);
      }
    }
    return sentences;
  }

  private static List<String> files() {
    List<String> files = new ArrayList<>(FILES);
    Techniques.list().forEach(technique -> files.add("technique/" + technique.name()));
    return files;
  }

  private static Properties load(String language, Properties english) {
    Properties sentences = new Properties();
    sentences.putAll(english);
    files().forEach(file -> load(sentences, file + "_" + language));
    if (language.equals("fr")) {
      // What French sets apart by a space stays with its word at the end of a line.
      sentences.replaceAll((key, said) -> LOOSE.matcher((String) said).replaceAll("\u00a0"));
    }
    return sentences;
  }

  private static boolean load(Properties sentences, String file) {
    String name = "/halfgram/" + file + ".properties";
    try (InputStream stream = Sentences.class.getResourceAsStream(name)) {
      if (stream == null) {
        return false;
      }
      sentences.load(new InputStreamReader(stream, StandardCharsets.UTF_8));
      return true;
    } catch (IOException e) {
      throw new UncheckedIOException(name, e);
    }
  }
}
