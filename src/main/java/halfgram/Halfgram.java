package halfgram;

import halfgram.cli.Cli;
import java.util.logging.Level;
import java.util.logging.Logger;

/** The program: hands its arguments over to the command line. */
public final class Halfgram {
  /** Says itself, with a stack, what the command says in a sentence. */
  private static final Logger START = Logger.getLogger("io.javalin.Javalin");

  private Halfgram() {}

  public static void main(String[] args) {
    // Libraries speak only when something is wrong.
    Logger.getLogger("").setLevel(Level.WARNING);
    START.setLevel(Level.OFF);
    System.exit(new Cli(System.out, System.err).run(args));
  }
}
