package halfgram;

import halfgram.book.BookReader;
import halfgram.book.Reference;
import halfgram.web.Words;
import java.util.concurrent.CompletableFuture;

/** What the program carries with it and needs from the start. */
record Carried(Words words, BookReader reader) {
  /** Reads it beside what else a start has to do. */
  static CompletableFuture<Carried> read() {
    return CompletableFuture.supplyAsync(
        () -> new Carried(new Words(), new BookReader(Reference.load())));
  }
}
