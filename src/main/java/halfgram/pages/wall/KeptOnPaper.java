package halfgram.pages.wall;

import halfgram.book.Moments;
import halfgram.desk.Belated;
import halfgram.desk.EnteringLater;
import halfgram.desk.Plans;
import halfgram.pages.KeptReader;
import halfgram.pages.KeptWords;
import halfgram.prep.Tick;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** What a revoked tablet sent of what was done on paper. */
public final class KeptOnPaper implements KeptReader {
  private final KeptWords kept;

  public KeptOnPaper(Plans plans) {
    this.kept = new KeptWords(plans);
  }

  @Override
  public Optional<Work> read(Post post) {
    PaperForm form = PaperForm.of(post::field);
    if (!post.path().equals("paper/entry") || !form.isReadable() || !form.isFilled()) {
      return Optional.empty();
    }
    List<PaperForm.Row> rows = form.rows().stream().filter(PaperForm.Row::isFilled).toList();
    String said = rows.stream().map(row -> said(post, row)).collect(Collectors.joining("; "));
    boolean needsCook = rows.get(0).who().isEmpty() && post.cook().isEmpty();
    return Optional.of(new Work(said, needsCook, then -> enter(post, form, then)));
  }

  private String said(Post post, PaperForm.Row row) {
    List<String> more = List.of(row.started(), row.done(), row.made(), row.who(), row.note());
    String verdict = row.gate().verdict().toLowerCase(Locale.ROOT);
    String note = row.note();
    if (verdict.isEmpty() || row.isMoved()) {
      Tick.Kind kind = row.isMoved() ? PaperEntries.kind(row) : Tick.Kind.NOTE;
      String moved = kept.tick(post, kind, row.task(), more);
      return verdict.isEmpty() ? moved : kept.gate(post, verdict, row.task(), "") + "; " + moved;
    }
    return kept.gate(post, verdict, row.task(), note);
  }

  private static Optional<String> enter(Post post, PaperForm form, Belated then) {
    LocalDate day = Moments.date(post.field("date")).orElse(post.day());
    PaperEntries entries =
        new PaperEntries(
            post.house(),
            day,
            post.words(),
            new PaperEntries.From(
                post.kept().tablet(),
                Optional.of(post.cook()).filter(cook -> !cook.isEmpty()),
                post.cook().isEmpty() ? form.rows().get(0).who() : post.cook(),
                post.at()),
            id -> then.ticking().findTask(post.house(), day, id));
    EnteringLater entering =
        new EnteringLater(then.desk(), then.plans(), then.ticking(), then.gating());
    Map<Integer, PaperEntries.Faults> faults = entries.enter(form, entering);
    List<String> said = new ArrayList<>();
    faults
        .values()
        .forEach(
            of -> {
              said.addAll(of.fields().values());
              said.addAll(of.asks());
            });
    return said.isEmpty() ? Optional.empty() : Optional.of(String.join("; ", said));
  }
}
