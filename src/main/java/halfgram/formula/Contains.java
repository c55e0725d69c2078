package halfgram.formula;

import java.util.Collections;
import java.util.SortedSet;
import java.util.TreeSet;

/** Codes of allergens, and tags, that something carries. */
public record Contains(SortedSet<String> allergens, SortedSet<String> tags) {
  public static final Contains NONE = new Contains(new TreeSet<>(), new TreeSet<>());

  public Contains {
    allergens = Collections.unmodifiableSortedSet(new TreeSet<>(allergens));
    tags = Collections.unmodifiableSortedSet(new TreeSet<>(tags));
  }

  /** What either carries. */
  public Contains and(Contains other) {
    SortedSet<String> allAllergens = new TreeSet<>(allergens);
    allAllergens.addAll(other.allergens);
    SortedSet<String> allTags = new TreeSet<>(tags);
    allTags.addAll(other.tags);
    return new Contains(allAllergens, allTags);
  }

  /** What this carries and the other does not. */
  public Contains beyond(Contains other) {
    SortedSet<String> moreAllergens = new TreeSet<>(allergens);
    moreAllergens.removeAll(other.allergens);
    SortedSet<String> moreTags = new TreeSet<>(tags);
    moreTags.removeAll(other.tags);
    return new Contains(moreAllergens, moreTags);
  }

  public boolean isNothing() {
    return allergens.isEmpty() && tags.isEmpty();
  }
}
