package halfgram.words;

import halfgram.measure.Length;
import halfgram.measure.Unit;
import halfgram.technique.bath.BathEntry;
import halfgram.technique.bath.LiveBaths;
import java.math.BigDecimal;
import java.time.Duration;
import java.util.Optional;

/** What was entered at a bath, said. */
public final class BathWords {
  private static final BigDecimal HUNDREDTH = new BigDecimal("0.01");

  private final Messages words;
  private final LiveBaths live;

  public BathWords(Messages words, LiveBaths live) {
    this.words = words;
    this.live = live;
  }

  /** One entry in a sentence; of one that was taken back only what kind it was. */
  public String say(BathEntry entry) {
    String label = entry.bath().label();
    return switch (entry.kind()) {
      case DROP -> words.say("bath.did.drop", number(entry.id()), entry.pieces().orElse(0), label);
      case LIFT -> lift(entry);
      case BROKE ->
          words.say("bath.did.broke", entry.pieces().orElse(0), number(drop(entry)), label);
      case LEVEL -> level(entry);
      case CHANGED -> changed(entry);
      case UNDO -> words.say("bath.did.undo");
    };
  }

  private static java.util.UUID drop(BathEntry entry) {
    return entry.drop().orElse(entry.id());
  }

  private String number(java.util.UUID drop) {
    return live.findDrop(drop).map(one -> String.valueOf(one.number())).orElse("");
  }

  private String lift(BathEntry entry) {
    return live.findDrop(drop(entry))
        .flatMap(
            drop ->
                drop.lift()
                    .map(
                        lift ->
                            words.say(
                                "bath.did.lift",
                                drop.number(),
                                took(lift.took()),
                                words.say(lift.timing().key()),
                                words
                                    .figures()
                                    .length(Length.millimetres(lift.skin()), HUNDREDTH)
                                    .whole())))
        .orElseGet(() -> words.say(entry.kind().key()));
  }

  /** Of a drop that was lifted too soon or too late, by how much; empty for one on time. */
  public String timing(LiveBaths.Drop drop) {
    return drop.lift()
        .filter(lift -> lift.timing() != LiveBaths.Timing.RIGHT)
        .map(
            lift ->
                words.say(
                    "bath.timed",
                    drop.number(),
                    words.say(lift.timing().key()),
                    took(lift.took()),
                    took(drop.set())))
        .orElse("");
  }

  private String level(BathEntry entry) {
    double mm = entry.millimetres().orElse(BigDecimal.ZERO).doubleValue();
    String label = entry.bath().label();
    Optional<LiveBaths.Run> run =
        live.findBath(label)
            .flatMap(bath -> bath.runs().stream().findFirst())
            .flatMap(live::findRun);
    if (run.isEmpty()) {
      return words.say(entry.kind().key());
    }
    double least = run.get().bath().leastLevel();
    return words.say(
        mm < least ? "bath.did.level-low" : "bath.did.level",
        label,
        words.length(Length.millimetres(mm)),
        litres(words, run.get().bath().litresAt(mm)),
        words.length(Length.millimetres(least)));
  }

  private String changed(BathEntry entry) {
    return words.say(
        "bath.did.changed",
        entry.bath().label(),
        entry.fresh().orElse(""),
        entry.rule().map(rule -> words.say(rule.key())).orElse(words.say("bath.by-choice")));
  }

  /** "2 min 28 s". */
  public static String took(Duration time) {
    long seconds = Math.max(0, time.toSeconds());
    return seconds < 60 ? seconds + " s" : seconds / 60 + " min " + seconds % 60 + " s";
  }

  /** What a bath holds, to a hundredth of a litre. */
  public static String litres(Messages words, double litres) {
    return words
        .figures()
        .volume(BigDecimal.valueOf(litres).multiply(Unit.LITRE.factor()), BigDecimal.TEN)
        .whole();
  }
}
