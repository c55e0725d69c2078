package halfgram.pages.service;

import java.util.List;
import java.util.Map;

/**
 * Who is at the pass.
 *
 * @param waiting the entry that goes on when somebody is chosen, field by field
 */
record WhoView(String service, List<One> people, Map<String, String> waiting) {
  /** A person to choose. */
  record One(String code, String name) {}

  static WhoView of(PassScene scene, String service, EntryForm waiting) {
    List<One> people =
        scene.people().stream().map(person -> new One(person.code(), person.name())).toList();
    return new WhoView(service, people, waiting.fields());
  }
}
