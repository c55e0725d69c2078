package halfgram.web;

import halfgram.people.Tablet;
import io.javalin.http.Context;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;

/**
 * Regions that many tablets ask for at once, because they have heard of the same change: what is
 * the same for some of them is rendered once.
 *
 * <p>Rules. Shared is only what was asked for because of a change, for a moment, and between
 * tablets that see the same: same kitchen as of the same change, same address, language, cook and
 * stations. The token in the forms is put in for each. The numbers in them may be the same on
 * several tablets: they are each device's own.
 */
final class Regions {
  private static final long MOMENT_NANOS = TimeUnit.SECONDS.toNanos(1);
  private static final int MOST = 256;

  /** What a region depends on, besides the time. */
  private record Alike(
      UUID kitchen,
      long change,
      String address,
      String language,
      Optional<String> cook,
      List<String> stations) {}

  /** A region as rendered for one of them. */
  private record Region(String html, String token) {
    String with(String other) {
      return html.replace(token, other);
    }
  }

  private record Made(long at, CompletableFuture<Optional<Region>> region) {}

  private final Map<Alike, Made> made = new UsedLast<>(MOST);

  /** Whoever is first with something makes it; those who come meanwhile wait for that. */
  void answer(Visit visit, Context context, String token, Runnable work) {
    CompletableFuture<Optional<Region>> mine = new CompletableFuture<>();
    CompletableFuture<Optional<Region>> first = first(alike(visit, context), mine);
    if (first != mine) {
      first.join().ifPresentOrElse(region -> answer(visit, context, region.with(token)), work);
      return;
    }
    Optional<Region> region = Optional.empty();
    try {
      work.run();
      region =
          Optional.ofNullable(context.result())
              .filter(html -> context.statusCode() == 200)
              .map(html -> new Region(html, token));
    } finally {
      mine.complete(region);
    }
  }

  private static Alike alike(Visit visit, Context context) {
    return new Alike(
        visit.kitchen().id(),
        visit.kitchen().change(),
        context.path() + "?" + context.queryString(),
        visit.language(),
        visit.cook(),
        visit.caller().tablet().map(Tablet::stations).orElse(List.of()));
  }

  private static void answer(Visit visit, Context context, String html) {
    Visit.html(context, 200);
    context.header("X-Change", String.valueOf(visit.kitchen().change()));
    context.result(html);
  }

  private synchronized CompletableFuture<Optional<Region>> first(
      Alike alike, CompletableFuture<Optional<Region>> mine) {
    long now = System.nanoTime();
    Made known = made.get(alike);
    if (known != null && now - known.at() < MOMENT_NANOS) {
      return known.region();
    }
    made.put(alike, new Made(now, mine));
    return mine;
  }
}
