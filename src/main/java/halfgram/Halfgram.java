package halfgram;

import halfgram.cli.Cli;

/** The program: hands its arguments over to the command line. */
public final class Halfgram {
  private Halfgram() {}

  public static void main(String[] args) {
    System.exit(new Cli(System.out, System.err).run(args));
  }
}
