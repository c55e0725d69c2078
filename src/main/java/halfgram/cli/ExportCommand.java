package halfgram.cli;

import halfgram.Wiring;
import halfgram.desk.ExportTable;
import halfgram.desk.House;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * {@code export FILE}: a kitchen's book, or one table of it, into a file, in place of what was
 * there; {@code -} writes it on the standard output.
 */
final class ExportCommand {
  private final Cli cli;

  ExportCommand(Cli cli) {
    this.cli = cli;
  }

  int run(List<String> args) {
    Arguments arguments = new Arguments(args, Set.of("--data", "--kitchen", "--table"), Set.of());
    String file = arguments.word("FILE");
    Optional<String> table =
        arguments.find(
            "--table",
            name -> Optional.of(name).filter(ExportTable.names()::contains),
            "accept.table",
            String.join(", ", ExportTable.names()));
    return new Holding(cli, arguments, "export", args)
        .runOnKitchen((wiring, house) -> write(file, bytes(wiring, house, table)));
  }

  private static byte[] bytes(Wiring wiring, House house, Optional<String> table) {
    if (table.isPresent()) {
      return wiring.exportTable().find(house, table.get()).orElseThrow();
    }
    String book = wiring.desk().read(tx -> wiring.exportBook().text(tx, house));
    return book.getBytes(StandardCharsets.UTF_8);
  }

  private int write(String file, byte[] bytes) {
    if (file.equals("-")) {
      cli.out().print(new String(bytes, StandardCharsets.UTF_8));
      return Exit.DONE;
    }
    try {
      cli.files().write(file, bytes);
    } catch (IOException e) {
      cli.error(file + ": " + DataFolder.reason(cli.messages(), e));
      return Exit.UNUSABLE;
    }
    cli.out().println(cli.messages().say("export.done", file, bytes.length));
    return Exit.DONE;
  }
}
