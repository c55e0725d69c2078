package halfgram.event;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.measure.Ratio;
import java.util.List;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The covers made over the guests promised. */
class BufferTest {

  /** Source: a catering textbook's banquet example, 100 guaranteed and 10 more. */
  @Test
  void hundredGuestsAreMadeAHundredAndTen() {
    assertThat(Buffer.PUBLISHED.prepared(100)).isEqualTo(110);
  }

  /** Source: the same textbook's tiers: 10 % to 100 guests, 5 % to 1,000, 3 % above. */
  @ParameterizedTest
  @CsvSource({
    "10,11",
    "50,55",
    "60,66",
    "90,99",
    "200,210",
    "400,420",
    "1000,1050",
    "2000,2060",
    "5000,5150"
  })
  void tierAddsItsPublishedShare(int guests, int made) {
    assertThat(Buffer.PUBLISHED.prepared(guests)).isEqualTo(made);
  }

  /** Part of a cover is a cover: 84 guests and 10 % are 92.4. Common practice. */
  @ParameterizedTest
  @CsvSource({"1,2", "84,93", "91,101", "201,212", "1500,1545", "1501,1547"})
  void partOfACoverIsRoundedUp(int guests, int made) {
    assertThat(Buffer.PUBLISHED.prepared(guests)).isEqualTo(made);
  }

  /** The textbook does not say what happens at its own edge; common sense. */
  @Test
  void moreGuestsNeverPrepareLess() {
    int before = 0;
    for (int guests = 0; guests <= 5000; guests++) {
      int made = Buffer.PUBLISHED.prepared(guests);
      assertThat(made).as("for " + guests + " guests").isBetween(Math.max(before, guests), 6000);
      before = made;
    }
  }

  /** Away from the plateau above an edge, the tier alone decides; whole-number arithmetic. */
  @Test
  void tiersHoldForEveryCountBeyondTheirEdges() {
    for (int guests = 0; guests <= 5000; guests++) {
      int percent = guests <= 100 ? 10 : guests <= 1000 ? 5 : 3;
      int tier = (guests * (100 + percent) + 99) / 100;
      int edge = guests <= 100 ? 0 : guests <= 1000 ? 110 : 1050;
      assertThat(Buffer.PUBLISHED.prepared(guests))
          .as("for " + guests + " guests")
          .isEqualTo(Math.max(tier, edge));
    }
  }

  @Test
  void nobodyInvitedNobodyServed() {
    assertThat(Buffer.PUBLISHED.prepared(0)).isZero();
  }

  @Test
  void eventsOwnShareReplacesTheTiers() {
    assertThat(Buffer.flat(Ratio.percent(0)).prepared(84)).isEqualTo(84);
    assertThat(Buffer.flat(Ratio.percent(2)).prepared(84)).isEqualTo(86);
  }

  @Test
  void countPastTheLastClosedTierIsMadeAtLeastAsItIs() {
    Buffer closed = new Buffer(List.of(new Buffer.Tier(OptionalInt.of(100), Ratio.percent(10))));
    assertThat(closed.prepared(100)).isEqualTo(110);
    assertThat(closed.prepared(105)).isEqualTo(110);
    assertThat(closed.prepared(300)).isEqualTo(300);
  }
}
