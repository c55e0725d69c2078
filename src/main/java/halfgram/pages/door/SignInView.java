package halfgram.pages.door;

import halfgram.web.Knock.Kept;
import java.util.List;

/**
 * The page where somebody signs in.
 *
 * @param to where they wanted to go
 * @param kept what they had typed there
 * @param name as typed
 * @param said why it did not work
 * @param because why they are here at all
 * @param demos the demo kitchen's people, whom anybody at this machine can be
 */
public record SignInView(
    String to, List<Kept> kept, String name, String said, String because, List<Demo> demos) {

  /** One of the demo's people. */
  public record Demo(String kitchen, String account, String shown, String role, String does) {}
}
