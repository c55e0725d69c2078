package halfgram.technique.bath;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import halfgram.technique.Values;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What a level read with the ruler teaches of the film. */
class LearnedTest {
  private static final Instant NOON = Instant.parse("2027-06-11T12:00:00Z");

  /** The film that is learned is the one that would have lowered the level so. */
  @ParameterizedTest
  @ValueSource(doubles = {0, 0.5, 2})
  void theFilmLearnedIsTheOneThatLowersTheLevel(double water) {
    SphereBath bath = bath(water, 1.7);
    double level = bath.levelAfter(40 * bath.lossPerPiece());
    SphereBath usual = bath(water, 1.25);
    Learned learned = Learned.of(List.of(dropped(40), read(level)), "pearls", usual);
    assertThat(learned.film().orElseThrow()).isCloseTo(1.7, within(1e-6));
  }

  @Test
  void aLevelThatRoseTeachesNoFilm() {
    SphereBath bath = bath(0, 1.25);
    double above = bath.levelAfter(-40);
    Learned learned = Learned.of(List.of(read(above), dropped(40), read(above)), "pearls", bath);
    assertThat(learned.film()).isEmpty();
  }

  private static SphereBath bath(double water, double film) {
    Map<String, BigDecimal> inputs =
        Map.of("water", BigDecimal.valueOf(water), "film", BigDecimal.valueOf(film));
    return new SphereBath(
        new Values(BathInputs.OWN, inputs),
        new SphereBath.Facts(5, 0, 6000, 505, 300, 0.005, 0.02, 0.13, 0, false, 30, false, 12));
  }

  private static BathEntry dropped(long pieces) {
    return entry(BathEntry.Kind.DROP, OptionalLong.of(pieces), Optional.empty());
  }

  private static BathEntry read(double level) {
    return entry(
        BathEntry.Kind.LEVEL, OptionalLong.empty(), Optional.of(BigDecimal.valueOf(level)));
  }

  private static BathEntry entry(
      BathEntry.Kind kind, OptionalLong pieces, Optional<BigDecimal> level) {
    UUID id = UUID.nameUUIDFromBytes((kind + " " + pieces + " " + level).getBytes(UTF_8));
    return new BathEntry(
        id,
        kind,
        new BathEntry.Bath("bath", LocalDate.of(2027, 6, 11), "A"),
        Optional.of("pearls/supper/1"),
        Optional.empty(),
        pieces,
        level,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        "Ada",
        NOON,
        new BathEntry.Sent(id, NOON),
        Optional.empty());
  }
}
