package halfgram.book;

import halfgram.measure.Length;
import halfgram.measure.Message;
import halfgram.measure.Quantity;
import halfgram.station.Container;
import java.math.BigDecimal;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.regex.Pattern;

/** Reads how large a container is inside: lengths to a tenth of a millimetre, below ten metres. */
final class VesselReader {
  private static final Predicate<String> LENGTH =
      Pattern.compile("(?=.*[1-9])(\\d{1,4}(\\.\\d)? mm|\\d{1,3}(\\.\\d{1,2})? (cm|in))")
          .asMatchPredicate();
  private static final BigDecimal LONGEST_MILLIMETRES = BigDecimal.valueOf(10_000);

  private VesselReader() {}

  /** How large it is inside; empty where the book does not say. */
  static Optional<Container.Inside> inside(Node node) {
    Optional<Node> inside = node.object("inside");
    Optional<Container.Inside> read =
        inside.map(
            in ->
                new Container.Inside(
                    millimetres(in, "length"), millimetres(in, "width"), millimetres(in, "depth")));
    inside.ifPresent(Node::done);
    return read;
  }

  private static BigDecimal millimetres(Node node, String key) {
    Optional<Length> length =
        node.find(
            key,
            text ->
                Optional.of(text)
                    .filter(LENGTH)
                    .flatMap(Quantity::parse)
                    .flatMap(Length::find)
                    .filter(of -> of.millimetres().compareTo(LONGEST_MILLIMETRES) < 0),
            "accept.length");
    if (!node.has(key)) {
      node.problem(key, "", "problem.missing", Message.of("accept.length"));
    }
    return length.map(Length::millimetres).orElse(BigDecimal.ONE);
  }
}
