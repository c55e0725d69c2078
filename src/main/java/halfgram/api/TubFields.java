package halfgram.api;

import halfgram.pages.TubDeeds;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** The body of a call about a tub, by its keys: texts, a number of tubs, a list of codes. */
record TubFields(Map<String, String> texts, List<String> with) implements TubDeeds.Fields {
  private static final List<String> TEXTS =
      List.of("id", "amount", "reason", "place", "until", "kept", "container");

  static TubFields of(Call call) {
    Map<String, String> texts = new HashMap<>();
    for (String key : TEXTS) {
      call.findText(key).ifPresent(text -> texts.put(key, text));
    }
    call.findNumber("tubs", 1).ifPresent(number -> texts.put("tubs", number.toString()));
    return new TubFields(texts, call.texts("with"));
  }

  @Override
  public String get(String name) {
    return name.equals("with") ? String.join(", ", with) : texts.getOrDefault(name, "");
  }

  @Override
  public List<String> all(String name) {
    return name.equals("with") ? with : List.of(get(name));
  }
}
