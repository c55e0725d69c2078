package halfgram.pages.wall;

import halfgram.book.Moments;
import halfgram.desk.Bathing;
import halfgram.desk.Belated;
import halfgram.desk.Gating;
import halfgram.desk.Plans;
import halfgram.desk.Ticking;
import halfgram.measure.Amount;
import halfgram.pages.KeptReader;
import halfgram.pages.KeptWords;
import halfgram.prep.Task;
import halfgram.prep.Tick;
import halfgram.words.Messages;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Ticks and entries at baths and gates that a revoked tablet sent from its wall. */
public final class KeptAtWall implements KeptReader {
  /** Where they are sent; a cook who is chosen first sends what waited along. */
  private static final Set<String> PATHS = Set.of("tick", "bath", "gate", "wall/cook");

  private final KeptWords kept;

  public KeptAtWall(Plans plans) {
    this.kept = new KeptWords(plans);
  }

  @Override
  public Optional<Work> read(Post post) {
    if (!PATHS.contains(post.path())) {
      return Optional.empty();
    }
    BathForm bath = BathForm.of(post::field);
    if (!bath.isEmpty()) {
      return bath.isReadable() ? Optional.of(bath(post, bath)) : Optional.empty();
    }
    GateForm gate = GateForm.of(post::field);
    if (!gate.isEmpty()) {
      return gate.isReadable() ? Optional.of(gate(post, gate)) : Optional.empty();
    }
    TickForm tick = TickForm.of(post::field);
    return tick.isReadable() ? Optional.of(tick(post, tick)) : Optional.empty();
  }

  private Work tick(Post post, TickForm form) {
    boolean weighed = form.tickKind() == Tick.Kind.WEIGHED;
    List<String> more =
        List.of(
            weighed ? kept.line(post, form.task(), form.line()) : "",
            form.amount().strip(),
            form.note().strip());
    return new Work(
        kept.tick(post, form.tickKind(), form.task(), more),
        post.cook().isEmpty(),
        then -> enter(post, form, then));
  }

  private static Optional<String> enter(Post post, TickForm form, Belated then) {
    Messages words = post.words();
    Optional<Task> found = then.ticking().findTask(post.house(), post.day(), form.task());
    if (found.isEmpty()) {
      return Optional.of(words.say("web.not-found", form.task()));
    }
    Task task = found.get();
    if (form.tickKind() == Tick.Kind.WEIGHED && !form.namesLineOf(task)) {
      return Optional.of(words.say("web.not-found", form.line()));
    }
    Optional<Amount> said = form.saysAmount(task) ? form.amount(task) : Optional.empty();
    if (form.saysAmount(task) && said.isEmpty()) {
      return Optional.of(words.say("wall.amount-fault", TickForm.sample(task, words)));
    }
    if (form.lacksReason()) {
      return Optional.of(words.say("wall.reason-fault"));
    }
    Ticking.Entry entry = form.entry(said, post.cook(), post.kept().tablet(), post.at(), true);
    Ticking.Outcome outcome = then.ticking().tick(post.house(), post.day(), entry);
    if (outcome instanceof Ticking.Refused refused) {
      return Optional.of(words.say(refused.because()));
    }
    return outcome instanceof Ticking.NoSuchTask
        ? Optional.of(words.say("web.not-found", form.task()))
        : Optional.empty();
  }

  private Work bath(Post post, BathForm form) {
    String kind = form.kind().name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
    List<String> more =
        List.of(
            form.label(), form.formula(), form.pieces(), form.millimetres(), form.note().strip());
    return new Work(
        kept.bath(post, kind, more), post.cook().isEmpty(), then -> enter(post, form, then));
  }

  private static Optional<String> enter(Post post, BathForm form, Belated then) {
    Optional<String> fault = form.fault().map(key -> post.words().say(key));
    if (fault.isPresent()) {
      return fault;
    }
    Bathing.Entry entry = form.entry(post.cook(), post.kept().tablet(), post.at());
    Bathing.Outcome outcome = then.bathing().enter(post.house(), post.day(), entry);
    if (outcome instanceof Bathing.Refused refused) {
      return Optional.of(post.words().say(refused.because()));
    }
    if (outcome instanceof Bathing.Worn worn) {
      return Optional.of(post.words().say(worn.because()));
    }
    return outcome instanceof Bathing.Unknown unknown
        ? Optional.of(post.words().say("web.not-found", unknown.what()))
        : Optional.empty();
  }

  private Work gate(Post post, GateForm form) {
    String kind = form.kind().name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
    return new Work(
        kept.gate(post, kind, form.get("task"), form.get("note").strip()),
        post.cook().isEmpty(),
        then -> enter(post, form, then));
  }

  private static Optional<String> enter(Post post, GateForm form, Belated then) {
    Optional<String> fault = form.fault().map(message -> post.words().say(message));
    if (fault.isPresent()) {
      return fault;
    }
    Gating.Entry entry = form.entry(post.cook(), post.kept().tablet(), post.at());
    Gating.Outcome outcome =
        then.gating().enter(post.house(), Moments.date(form.get("date")).orElse(post.day()), entry);
    if (outcome instanceof Gating.Refused refused) {
      return Optional.of(post.words().say(refused.because()));
    }
    return outcome instanceof Gating.Unknown unknown
        ? Optional.of(post.words().say("web.not-found", unknown.what()))
        : Optional.empty();
  }
}
