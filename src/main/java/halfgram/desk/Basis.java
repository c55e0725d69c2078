package halfgram.desk;

import halfgram.lot.Lot;
import halfgram.measure.Because;
import halfgram.prep.Begun;
import halfgram.prep.KitchenBook;
import halfgram.prep.PlanRequest;
import halfgram.prep.Planning;
import halfgram.prep.PrepSheet;
import java.util.List;
import java.util.Objects;
import java.util.Set;

/** What a sheet is computed from. The book is known by being the same one: it is large. */
record Basis(KitchenBook book, List<Lot> lots, PlanRequest request, List<Begun> begun) {
  private static final int FEW = 4;

  /** Of this process: a sheet depends on nothing else. */
  private static final LastFew<Basis, PrepSheet> SHEETS = new LastFew<>(FEW);

  /** The same, giving no make one of these ids. */
  Basis sparing(Set<String> spent) {
    return new Basis(book, lots, request.sparing(spent), begun);
  }

  /**
   * The sheet, computed unless it was among the last.
   *
   * @param with the book with these lots
   */
  PrepSheet sheet(KitchenBook with) {
    return SHEETS.get(this, unknown -> Planning.plan(with, request, begun, Because.NOT_ASKED));
  }

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
