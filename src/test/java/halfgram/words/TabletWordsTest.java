package halfgram.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What a tablet says, in every language there is. */
class TabletWordsTest {
  private static final Pattern PLACE = Pattern.compile("\\{(\\d+)}");
  private static final Properties SENTENCES = MessagesTest.load(MessagesTest.sentenceFiles("en"));

  /**
   * What a tablet says is said in every language there is: whole files, the pages it may open, and
   * the sources that refuse it something or put what it shows into words.
   */
  @Test
  void everySentenceATabletCanReachIsInEveryLanguage() {
    Set<String> reached = new TreeSet<>();
    for (String file : List.of("page", "wall", "bath", "baths", "gate", "service")) {
      reached.addAll(
          MessagesTest.load(
                  List.of(MessagesTest.RESOURCES.resolve("pages/" + file + "_en.properties")))
              .stringPropertyNames());
    }
    for (String page : TABLET_PAGES) {
      files(MessagesTest.RESOURCES.resolve("pages"), page + ".html")
          .forEach(
              file ->
                  MessagesTest.SAID
                      .matcher(MessagesTest.read(file))
                      .results()
                      .forEach(said -> reached.add(said.group(1))));
    }
    Set<String> said = new TreeSet<>();
    for (String source : TABLET_SOURCES) {
      files(MessagesTest.SOURCES.resolve("halfgram"), source + ".java")
          .forEach(file -> said.addAll(MessagesTest.strings(MessagesTest.read(file))));
    }
    MessagesTest.families().keySet().stream()
        .filter(said::contains)
        .forEach(
            family ->
                MessagesTest.families().get(family).forEach(member -> said.add(family + member)));
    SENTENCES.stringPropertyNames().stream()
        .filter(key -> said.contains(key) || key.matches("technique\\.[a-z-]+\\.say\\..*"))
        .filter(key -> !OFFICE.matcher(key).lookingAt())
        .forEach(reached::add);
    assertThat(reached).as("keys a tablet can reach").hasSizeGreaterThan(500);
    for (String language : List.of("es", "fr")) {
      Set<String> lacking = new TreeSet<>(reached);
      lacking.removeAll(
          MessagesTest.load(MessagesTest.sentenceFiles(language)).stringPropertyNames());
      assertThat(lacking).as("said by a tablet and not in %s", language).isEmpty();
    }
  }

  @Test
  void everySentenceOfAnotherLanguageIsOneOfOursWithThePlacesOfOurs() {
    for (String language : List.of("es", "fr")) {
      Properties other = MessagesTest.load(MessagesTest.sentenceFiles(language));
      assertThat(SENTENCES.stringPropertyNames())
          .as(language)
          .containsAll(other.stringPropertyNames());
      for (String key : other.stringPropertyNames()) {
        assertThat(places(other.getProperty(key)))
            .as("places of %s in %s", key, language)
            .isSubsetOf(places(SENTENCES.getProperty(key)));
      }
    }
  }

  private static Set<String> places(String sentence) {
    return PLACE
        .matcher(sentence)
        .results()
        .map(MatchResult::group)
        .collect(Collectors.toCollection(TreeSet::new));
  }

  /** Templates of what a tablet may open; a folder with a star for all in it. */
  private static final List<String> TABLET_PAGES =
      List.of(
          "wall/*",
          "service/*",
          "baths/one",
          "stock/count",
          "stock/counted",
          "stock/dips",
          "label",
          "layout",
          "problem",
          "door/pair",
          "door/frame");

  /** Sources of what a tablet shows and of what refuses it something. */
  private static final List<String> TABLET_SOURCES =
      List.of(
          "pages/wall/*",
          "pages/service/*",
          "pages/baths/*",
          "pages/AtWork",
          "pages/SwapWords",
          "pages/OutWords",
          "pages/PlatingRow",
          "pages/ServiceLine",
          "pages/stock/CountView",
          "pages/stock/DipView",
          "words/*",
          "web/Halt",
          "desk/BathRules",
          "desk/Bathing",
          "desk/BathTubs",
          "desk/GateRules",
          "desk/GateLock",
          "desk/Gating",
          "desk/Ticking",
          "desk/Filling",
          "desk/Taking",
          "desk/TakingBack",
          "desk/FailedBatches",
          "desk/Sending",
          "desk/Swapping",
          "desk/Kit",
          "prep/TaskList",
          "prep/Things",
          "prep/Swapped",
          "api/TickApi",
          "api/BathsApi",
          "api/GatesApi",
          "api/ServicesApi",
          "api/Call",
          "api/Queue");

  /** Said by those sources to the office alone. */
  private static final Pattern OFFICE =
      Pattern.compile("(slip|stretch|today|tablets|log|lanes)\\.");

  private static List<Path> files(Path folder, String name) {
    String beginning = name.contains("*") ? name.substring(0, name.indexOf('*')) : name;
    String ending = name.substring(name.indexOf('.'));
    try (Stream<Path> files = Files.walk(folder)) {
      List<Path> found =
          files
              .filter(
                  file -> {
                    String path = folder.relativize(file).toString().replace('\\', '/');
                    return name.contains("*")
                        ? path.startsWith(beginning) && path.endsWith(ending)
                        : path.equals(name);
                  })
              .toList();
      assertThat(found).as(name).isNotEmpty();
      return found;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
