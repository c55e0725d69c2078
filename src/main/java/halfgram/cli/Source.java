package halfgram.cli;

import halfgram.Wiring;
import halfgram.desk.House;
import halfgram.desk.InForce;
import halfgram.prep.KitchenBook;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.ToIntFunction;

/** Where a command finds its kitchen: in a book's file, or in the database. */
final class Source {
  /** The options that say where. */
  private static final Set<String> WHERE = Set.of("--book", "--data", "--kitchen");

  /** A kitchen of the database. */
  record Stored(Wiring wiring, House house) {
    /** The plan in force on a day, if somebody has opened the day. */
    Optional<InForce> findInForce(LocalDate day) {
      return wiring.plans().find(house, day);
    }
  }

  /** A book with its tubs as they are, and the kitchen it was stored in. */
  record Found(KitchenBook book, Optional<Stored> stored) {}

  private Source() {}

  /** A command's own options and those that say where its kitchen is. */
  static Set<String> with(String... options) {
    Set<String> all = new TreeSet<>(WHERE);
    all.addAll(List.of(options));
    return all;
  }

  /** Runs a command where its arguments say; tells what is wrong with them first. */
  static int run(Cli cli, Arguments arguments, List<String> call, ToIntFunction<Found> work) {
    if (arguments.has("--book") && (arguments.has("--data") || arguments.has("--kitchen"))) {
      arguments.problem("usage.book-or-data");
    }
    if (!arguments.problems().isEmpty()) {
      return cli.usage(arguments.problems());
    }
    Optional<String> file = arguments.find("--book");
    if (file.isPresent()) {
      Books.Opened opened = Books.open(cli, file.get());
      return opened.book().isPresent()
          ? work.applyAsInt(new Found(opened.book().get(), Optional.empty()))
          : opened.status();
    }
    return new Holding(cli, arguments, call.get(0), call.subList(1, call.size()))
        .runOnKitchen(
            (wiring, house) ->
                work.applyAsInt(
                    new Found(book(wiring, house), Optional.of(new Stored(wiring, house)))));
  }

  /** As an export of this moment would read, so that both give the same plan. */
  private static KitchenBook book(Wiring wiring, House house) {
    return wiring.desk().bookOf(wiring.desk().read(tx -> wiring.exportBook().export(tx, house)));
  }
}
