package halfgram;

/** The program: hands over to the command line. */
public final class Halfgram {
  private Halfgram() {}

  public static void main(String[] args) {
    System.out.println("Usage: java -jar halfgram.jar COMMAND");
  }
}
