package halfgram.pages.settings;

import halfgram.desk.KitchenSettings.Values;
import halfgram.kitchen.Kitchen;
import halfgram.web.Words;
import halfgram.words.Messages;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;

/**
 * How the kitchen reads, one question after another.
 *
 * @param seen what it was when the page was asked for
 * @param saved whether it has just been set
 */
record SettingsView(List<Question> questions, Values seen, boolean saved) {

  /**
   * One question.
   *
   * @param name of its field
   * @param fault what is wrong with what came; may be empty
   */
  record Question(String name, String label, String fault, List<Choice> choices) {}

  /**
   * An answer.
   *
   * @param sample what it looks like
   */
  record Choice(String value, String name, String sample, boolean chosen) {}

  static SettingsView of(
      Values seen, Values shown, Map<String, String> faults, boolean saved, Messages words) {
    List<Choice> units =
        Arrays.stream(Kitchen.Units.values()).map(one -> units(one, shown, words)).toList();
    List<Choice> clocks =
        Arrays.stream(Kitchen.Hours.values()).map(one -> clock(one, shown, words)).toList();
    List<Choice> languages = new ArrayList<>();
    languages.add(new Choice("", words.say("settings.of-device"), "", shown.language().isEmpty()));
    Words.LANGUAGES.forEach(
        (code, name) -> languages.add(new Choice(code, name, "", code.equals(shown.language()))));
    return new SettingsView(
        List.of(
            new Question("units", words.say("settings.units"), fault(faults, "units"), units),
            new Question("clock", words.say("settings.clock"), fault(faults, "clock"), clocks),
            new Question(
                "language", words.say("settings.language"), fault(faults, "language"), languages)),
        seen,
        saved);
  }

  private static String fault(Map<String, String> faults, String name) {
    return faults.getOrDefault(name, "");
  }

  private static Choice units(Kitchen.Units units, Values shown, Messages words) {
    boolean chosen = units.word().equals(shown.units());
    return switch (units) {
      case METRIC -> choice("metric", "settings.metric", "settings.metric-sample", chosen, words);
      case US -> choice("us", "settings.us", "settings.us-sample", chosen, words);
      case BOTH -> choice("both", "settings.both", "settings.both-sample", chosen, words);
    };
  }

  private static Choice clock(Kitchen.Hours hours, Values shown, Messages words) {
    boolean chosen = String.valueOf(hours.number()).equals(shown.clock());
    return switch (hours) {
      case TWENTY_FOUR -> choice("24", "settings.24", "settings.24-sample", chosen, words);
      case TWELVE -> choice("12", "settings.12", "settings.12-sample", chosen, words);
    };
  }

  private static Choice choice(
      String value, String name, String sample, boolean chosen, Messages words) {
    return new Choice(value, words.say(name), words.say(sample), chosen);
  }
}
