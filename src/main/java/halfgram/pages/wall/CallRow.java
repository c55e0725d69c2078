package halfgram.pages.wall;

import halfgram.desk.Services;
import halfgram.pages.PlatingRow;
import halfgram.pass.Entry;
import halfgram.words.Messages;
import halfgram.words.PlatingWords;
import java.util.List;
import java.util.Optional;
import java.util.function.LongSupplier;

/**
 * A course that is called between stations: what this one has said, what the pass says, and what is
 * plated here.
 *
 * @param ready when this station said so; empty until then
 * @param go when the pass said go; empty until then
 * @param sequence for the form
 */
record CallRow(
    String service,
    String course,
    String name,
    String at,
    String ready,
    String go,
    List<PlatingRow> plating,
    long sequence) {

  static List<CallRow> list(Scene scene, List<Services.Near> near, LongSupplier numbers) {
    return near.stream().map(one -> of(scene, one, numbers)).toList();
  }

  private static CallRow of(Scene scene, Services.Near near, LongSupplier numbers) {
    Messages words = scene.words();
    Optional<Entry> ready = Optional.ofNullable(near.fire().ready().get(scene.station()));
    return new CallRow(
        near.run().id(),
        near.fire().fire().code(),
        words.text(near.run().name()) + ": " + PlatingWords.fire(words, near.fire().fire()),
        scene.time(near.fire().fire().at()),
        ready.map(by -> words.say("pass.ready-at", scene.time(by.at()))).orElse(""),
        near.fire().go().map(by -> words.say("pass.go-said", scene.time(by.at()))).orElse(""),
        near.plating().stream()
            .filter(now -> now.line().plating().station().map(scene::isHere).orElse(true))
            .map(now -> PlatingRow.of(words, scene::person, now, numbers))
            .toList(),
        numbers.getAsLong());
  }
}
