package halfgram.formula;

import halfgram.technique.Addition;
import halfgram.technique.Result;
import halfgram.technique.Values;
import halfgram.technique.bath.SphereBath;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * A technique attached to one step of a formula, worked out for a batch of 1 kg of basis.
 *
 * @param name of the technique
 * @param parts what of the formula it is told about: codes by the technique's keys
 * @param values its inputs as used
 * @param result what they come to; empty where only a plan can say (pieces in a bath)
 * @param additions what it adds to every batch
 */
public record TechniqueUse(
    String name,
    String step,
    SortedMap<String, String> parts,
    Values values,
    Optional<Result> result,
    List<Addition> additions) {
  public TechniqueUse {
    parts = new TreeMap<>(parts);
    additions = List.copyOf(additions);
  }

  /** Whether pieces are dropped in a bath. */
  public boolean drops() {
    return additions.stream().anyMatch(Addition.Drops.class::isInstance);
  }

  /** Its inputs as somebody typed them or the formula's lines gave them; without defaults. */
  public SortedMap<String, String> typed() {
    SortedMap<String, String> typed = new TreeMap<>();
    values
        .all()
        .forEach(
            (input, value) -> {
              if (!value.typed().isEmpty()) {
                typed.put(input, value.typed());
              }
            });
    return typed;
  }

  /** Formula of the bath that pieces are dropped in. */
  public String bath() {
    return part("bath");
  }

  /** Container code of one bath. */
  public String pan() {
    return part("pan");
  }

  /** Whether the pieces hold the alginate, and the bath the calcium. */
  public boolean isDirect() {
    return SphereBath.isDirect(values);
  }

  /**
   * Ingredient code of the alginate: a line of the bath; direct: in the pieces, through nesting.
   */
  public String alginate() {
    return part("alginate");
  }

  /** Ingredient code of the calcium salt: in the pieces, through nesting; direct: of the bath. */
  public Optional<String> salt() {
    return Optional.ofNullable(parts.get("salt"));
  }

  /** Row code of that salt in the reference table. */
  public Optional<String> saltKind() {
    return Optional.ofNullable(parts.get("saltKind"));
  }

  private String part(String key) {
    return Optional.ofNullable(parts.get(key))
        .orElseThrow(() -> new IllegalStateException(name + " was told of no " + key));
  }
}
