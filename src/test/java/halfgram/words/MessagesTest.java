package halfgram.words;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.book.Reference;
import halfgram.desk.Audit;
import halfgram.desk.BookItems;
import halfgram.formula.Dose;
import halfgram.formula.Gate;
import halfgram.formula.Step;
import halfgram.kitchen.Kitchen;
import halfgram.measure.Message;
import halfgram.measure.Quantity;
import halfgram.measure.Standing;
import halfgram.measure.Temperature;
import halfgram.people.Deed;
import halfgram.people.Role;
import halfgram.prep.GateEntry;
import halfgram.technique.Input;
import halfgram.technique.Part;
import halfgram.technique.Technique;
import halfgram.technique.Techniques;
import halfgram.technique.bath.BathEntry;
import halfgram.technique.bath.LiveBaths;
import halfgram.technique.bath.Renewal;
import halfgram.technique.bath.SphereBath;
import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Properties;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The sources and the sentences know the same keys. */
class MessagesTest {
  static final Path SOURCES = Path.of("src", "main", "java");
  static final Path RESOURCES = Path.of("src", "main", "resources", "halfgram");
  private static final List<Path> SENTENCES = sentenceFiles("en");

  private static final Pattern LITERAL = Pattern.compile("\"((?:[^\"\\\\]|\\\\.)*)\"");

  /** A sentence in a template. */
  static final Pattern SAID = Pattern.compile("#\\{([a-z0-9._-]+)");

  private static final Pattern KEY = Pattern.compile("[a-z]+(\\.[a-z0-9_-]+)+|usage");
  private static final Pattern FAMILY = Pattern.compile("[a-z]+(\\.[a-z0-9_-]+)*\\.");
  private static final Pattern PLACE = Pattern.compile("\\{(\\d+)}");

  private final Properties sentences = sentences();
  private final Set<String> literals = literals();

  @Test
  void noFrenchLineBeginsWithItsMarkOfTheEnd() {
    assertThat(new Messages("fr", ZoneOffset.UTC).say("timer.more", 3))
        .isEqualTo("autres minuteurs\u00a0: 3");
    assertThat(new Messages("en", ZoneOffset.UTC).say("timer.more", 3)).isEqualTo("more timers: 3");
  }

  @Test
  void everyKeyOfTheSourcesHasASentence() {
    Set<String> beginnings =
        sentences.stringPropertyNames().stream()
            .map(key -> key.replaceAll("\\..*", "."))
            .collect(Collectors.toCollection(TreeSet::new));
    Set<String> keys =
        literals.stream()
            .filter(text -> KEY.matcher(text).matches())
            .filter(text -> beginnings.stream().anyMatch(b -> (text + ".").startsWith(b)))
            .collect(Collectors.toCollection(TreeSet::new));
    assertThat(keys).as("keys found").hasSizeGreaterThan(200);
    assertThat(keys).as("keys without a sentence").isSubsetOf(sentences.stringPropertyNames());
  }

  @Test
  void everyMemberOfAFamilyHasASentence() {
    families()
        .forEach(
            (family, members) ->
                assertThat(sentences.stringPropertyNames())
                    .as("sentences of %s*", family)
                    .containsAll(members.stream().map(member -> family + member).toList()));
  }

  @Test
  void everyFamilyOfTheSourcesIsKnownHere() {
    Set<String> put =
        literals.stream()
            .filter(text -> FAMILY.matcher(text).matches())
            .filter(text -> sentences.stringPropertyNames().stream().anyMatch(startsWith(text)))
            .collect(Collectors.toCollection(TreeSet::new));
    assertThat(put).as("keys put together in the sources").isEqualTo(families().keySet());
  }

  @Test
  void noSentenceIsUnused() {
    Set<String> used = new TreeSet<>(literals);
    families().forEach((family, members) -> members.forEach(m -> used.add(family + m)));
    assertThat(sentences.stringPropertyNames().stream().filter(key -> !used.contains(key)))
        .as("sentences that no source says")
        .isEmpty();
  }

  @Test
  void placesCountFromZeroWithoutAGap() {
    for (String key : sentences.stringPropertyNames()) {
      Set<Integer> places =
          PLACE
              .matcher(sentences.getProperty(key))
              .results()
              .map(place -> Integer.valueOf(place.group(1)))
              .collect(Collectors.toCollection(TreeSet::new));
      if (!SKIPPING.contains(key)) {
        assertThat(places)
            .as(key)
            .containsExactlyElementsOf(Stream.iterate(0, i -> i + 1).limit(places.size()).toList());
      }
    }
  }

  /** Sentences that leave out a place which the other sentences of their family fill. */
  private static final Set<String> SKIPPING = Set.of("task.fresh-bath-first");

  @Test
  void noKeyIsWrittenTwice() throws IOException {
    List<String> keys = new ArrayList<>();
    for (Path file : SENTENCES) {
      try (Stream<String> lines = Files.lines(file, StandardCharsets.UTF_8)) {
        lines
            .filter(line -> line.matches("[a-z][a-zA-Z0-9._-]*=.*"))
            .map(line -> line.substring(0, line.indexOf('=')))
            .forEach(keys::add);
      }
    }
    assertThat(keys).doesNotHaveDuplicates().hasSameSizeAs(sentences.keySet());
  }

  @Test
  void bracesThatAreNoPlaceAreSaidAsTheyStand() {
    Messages messages = new Messages("en", ZoneOffset.UTC);
    assertThat(messages.say("problem.missing", Message.of("accept.text")))
        .isEqualTo("is missing; accepted: a text, or texts by language such as {\"en\": \"dill\"}");
    assertThat(messages.say("usage.unknown", "$1 {0} \\")).contains("\"$1 {0} \\\"");
  }

  @Test
  void everySampleOfWhatCanBeTypedIsAMeasureInWhateverLanguage() {
    Pattern quoted = Pattern.compile("\\{\"([^\"{}:]*)\"\\}");
    for (String language : List.of("en", "es", "fr")) {
      List<String> samples =
          load(sentenceFiles(language)).values().stream()
              .flatMap(said -> quoted.matcher((String) said).results())
              .map(found -> found.group(1))
              .toList();
      assertThat(samples).as(language).hasSizeGreaterThan(3);
      assertThat(samples)
          .as(language)
          .allMatch(one -> Temperature.parse(one).isPresent() || Quantity.parse(one).isPresent());
    }
  }

  @Test
  void oneIsSaidInTheSingular() {
    Messages messages = new Messages("en", ZoneOffset.UTC);
    assertThat(messages.say("paper.drops", 1)).isEqualTo("1 drop");
    assertThat(messages.say("paper.drops", 11)).isEqualTo("11 drops");
    assertThat(messages.say("bath.did.drop", "2", 1, "A")).isEqualTo("Drop 2: 1 piece into bath A");
  }

  @ParameterizedTest
  @CsvSource({
    "en, 1 piece, 1 piece",
    "en, 89 piece, 89 pieces",
    "en, 1.5 piece, 1.5 pieces",
    "en, 0 pieces, 0 pieces",
    "en, 2 bunch, 2 bunch",
    "en, 2 kg, 2 kg",
    "es, 89 piece, 89 pz",
    "fr, 89 piece, 89 pc"
  })
  void whatIsCountedHasTheWordForSoMany(String language, String typed, String said) {
    Messages messages = new Messages(language, ZoneOffset.UTC);
    assertThat(messages.typed(Quantity.of(typed))).isEqualTo(said);
  }

  /** Keys that the sources put together, and what can follow. */
  static Map<String, Collection<String>> families() {
    Map<String, Collection<String>> families = new TreeMap<>();
    families.put("caution.", membersIn("book/StepReader.java", "CAUTIONS =", ";"));
    families.put("bath.kind.", words(BathEntry.Kind.values()));
    families.put("gate.kind.", words(GateEntry.Kind.values()));
    families.put("gate.check.", words(Gate.Check.values()));
    families.put(
        "gate.word.",
        Arrays.stream(Gate.Check.values()).flatMap(c -> c.words().stream()).distinct().toList());
    families.put("lanes.state.", List.of("to-do", "late", "on-it", "problem", "done"));
    families.put("lanes.short.", List.of("late", "on-it", "problem"));
    families.put("lanes.mark.", List.of("tight", "full", "nobody"));
    families.put("gate.title.", words(Step.Check.values()));
    families.put("gate.over.", words(Step.Check.values()));
    families.put("timing.", words(LiveBaths.Timing.values()));
    families.put("renewal.", words(Renewal.values()));
    families.put(
        "why.dose.",
        Arrays.stream(Dose.Kind.values()).map(k -> k.name().toLowerCase(Locale.ROOT)).toList());
    families.put("why.rule.task.", membersIn("prep/TaskNotes.java", "void note(Task task) {", "}"));
    families.put(
        "why.rule.weigh.",
        membersIn("prep/TaskNotes.java", "void note(Task task, WeighLine line) {", "\n  }"));
    families.put("why.standing.", words(Standing.values()));
    families.put("standing.", words(Standing.values()));
    families.put("role.", Arrays.stream(Role.values()).map(Role::code).toList());
    families.put("deed.", Arrays.stream(Deed.values()).map(Deed::code).toList());
    families.put("audit.kind.", Audit.KINDS);
    families.put("audit.via.", List.of("page", "call", "tablet", "command", "unknown"));
    for (String family : List.of("book.one.", "book.many.", "book.how.")) {
      families.put(family, BookItems.KINDS);
    }
    families.put(
        "book.used.",
        List.of(
            "stations",
            "people",
            "equipment",
            "containers",
            "scales",
            "ingredients",
            "formulas",
            "diets",
            "dishes",
            "services",
            "pars",
            "events",
            "deliveries",
            "tubs"));
    families.put("book.day.", List.of("mon", "tue", "wed", "thu", "fri", "sat", "sun"));
    families.put(
        "book.lanes.", Arrays.stream(Kitchen.Lanes.values()).map(Kitchen.Lanes::word).toList());
    families.put("technique.", ofTechniques());
    families.put(
        "chosen.",
        List.of(
            "station",
            "equipment",
            "ingredient",
            "event",
            "dish",
            "service",
            "formula",
            "step",
            "line",
            "container"));
    families.put("reference.", Reference.TABLES);
    families.put("door.does.", Role.ofPeople().stream().map(Role::code).toList());
    return families;
  }

  /** What a page says of every technique: its name, its inputs with their words, its figures. */
  private static List<String> ofTechniques() {
    List<String> members = new ArrayList<>();
    for (Technique technique : Techniques.list()) {
      String name = technique.name();
      members.add(name);
      members.add(name + ".about");
      for (Input input : technique.inputs()) {
        members.add(name + ".in." + input.name());
        List<String> words = input.table().isPresent() ? List.of() : input.options();
        words.forEach(word -> members.add(name + ".in." + input.name() + "." + word));
      }
      technique.parts().stream()
          .map(Part::name)
          .filter(part -> technique.inputs().stream().noneMatch(i -> i.part().equals(part)))
          .filter(part -> !name.equals(SphereBath.NAME))
          .forEach(part -> members.add(name + ".of." + part));
      technique.outputs().forEach(output -> members.add(name + ".out." + output.name()));
    }
    return members;
  }

  /** The strings between two marks of a source. */
  private static Set<String> membersIn(String file, String from, String to) {
    String source = read(SOURCES.resolve("halfgram").resolve(file));
    int start = source.indexOf(from);
    assertThat(start).as("%s in %s", from, file).isNotNegative();
    Set<String> members =
        strings(source.substring(start, source.indexOf(to, start + from.length())));
    members.removeIf(text -> text.contains("."));
    assertThat(members).as("strings after %s in %s", from, file).isNotEmpty();
    return members;
  }

  private static List<String> words(Enum<?>[] values) {
    return Arrays.stream(values)
        .map(value -> value.name().toLowerCase(Locale.ROOT).replace('_', '-'))
        .toList();
  }

  private static java.util.function.Predicate<String> startsWith(String family) {
    return key -> key.startsWith(family);
  }

  private static Properties sentences() {
    return load(SENTENCES);
  }

  static Properties load(List<Path> paths) {
    Properties sentences = new Properties();
    for (Path file : paths) {
      try (Reader reader = Files.newBufferedReader(file, StandardCharsets.UTF_8)) {
        sentences.load(reader);
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
    return sentences;
  }

  static List<Path> sentenceFiles(String language) {
    try (Stream<Path> files = Files.walk(RESOURCES)) {
      return files
          .filter(file -> file.toString().endsWith("_" + language + ".properties"))
          .filter(file -> !file.toString().contains("book"))
          .sorted()
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Strings of the sources and keys of the templates. */
  private static Set<String> literals() {
    Set<String> all = literals(SOURCES);
    try (Stream<Path> files = Files.walk(RESOURCES)) {
      files
          .filter(file -> file.toString().endsWith(".html"))
          .forEach(
              file -> SAID.matcher(read(file)).results().forEach(said -> all.add(said.group(1))));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return all;
  }

  private static Set<String> literals(Path folder) {
    try (Stream<Path> files = Files.walk(folder)) {
      return files
          .filter(file -> file.toString().endsWith(".java"))
          .flatMap(file -> strings(read(file)).stream())
          .collect(Collectors.toCollection(TreeSet::new));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static Set<String> strings(String source) {
    return LITERAL
        .matcher(source)
        .results()
        .map((MatchResult literal) -> literal.group(1))
        .collect(Collectors.toCollection(TreeSet::new));
  }

  static String read(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
