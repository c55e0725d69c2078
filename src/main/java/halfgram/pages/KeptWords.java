package halfgram.pages;

import halfgram.desk.InForce;
import halfgram.desk.Plans;
import halfgram.prep.Task;
import halfgram.prep.Tick;
import halfgram.words.Messages;
import halfgram.words.SheetWords;
import halfgram.words.TickWords;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What a revoked tablet sent, in the words of the office. */
public final class KeptWords {
  private final Plans plans;

  public KeptWords(Plans plans) {
    this.plans = plans;
  }

  /** "Done: dill oil, strain, 2 kg". */
  public String tick(KeptReader.Post post, Tick.Kind kind, String task, List<String> more) {
    List<String> parts = new ArrayList<>(List.of(task(post, task)));
    more.stream().filter(text -> !text.isBlank()).forEach(parts::add);
    return said(post.words(), TickWords.said(post.words(), kind), parts);
  }

  /** "Drop: bath A, 40 pieces". */
  public String bath(KeptReader.Post post, String kind, List<String> more) {
    return said(post.words(), word(post.words(), "bath.kind." + kind, kind), more);
  }

  /** "Go: beurre blanc, taste". */
  public String gate(KeptReader.Post post, String kind, String task, String note) {
    return said(
        post.words(),
        word(post.words(), "gate.kind." + kind, kind),
        List.of(task(post, task), note));
  }

  /** A tablet may have sent anything: a word we do not have is said as it came. */
  private static String word(Messages words, String key, String sent) {
    return words.has(key) ? words.say(key) : sent;
  }

  private static String said(Messages words, String what, List<String> parts) {
    String of = String.join(", ", parts.stream().filter(text -> !text.isBlank()).toList());
    return of.isEmpty() ? what : words.say("tablets.kept-said", what, of);
  }

  /** What a task was called on the day it was sent. */
  private String task(KeptReader.Post post, String id) {
    Optional<InForce> inForce = plans.find(post.house(), post.day());
    Optional<Task> task = inForce.flatMap(of -> of.findTask(id));
    return task.map(
            of ->
                new SheetWords(inForce.get().book(), inForce.get().sheet(), post.words()).title(of))
        .orElse(id);
  }

  /** A line that was weighed, by its path in a task. */
  public String line(KeptReader.Post post, String task, String path) {
    return plans.find(post.house(), post.day()).flatMap(of -> of.findTask(task)).stream()
        .flatMap(of -> of.weigh().stream())
        .flatMap(group -> group.lines().stream())
        .filter(line -> line.path().equals(path))
        .map(line -> post.words().text(line.name()))
        .findFirst()
        .orElse(path);
  }
}
