package halfgram.desk;

import halfgram.lot.Lot;
import halfgram.prep.Begun;
import halfgram.prep.KitchenBook;
import halfgram.prep.PlanRequest;
import java.util.List;
import java.util.Objects;

/** What a sheet is computed from. The book is known by being the same one: it is large. */
record Basis(KitchenBook book, List<Lot> lots, PlanRequest request, List<Begun> begun) {
  @Override
  @SuppressWarnings("ReferenceEquality")
  public boolean equals(Object other) {
    return other instanceof Basis basis
        && basis.book == book
        && basis.request.equals(request)
        && basis.lots.equals(lots)
        && basis.begun.equals(begun);
  }

  @Override
  public int hashCode() {
    return Objects.hash(System.identityHashCode(book), request);
  }
}
