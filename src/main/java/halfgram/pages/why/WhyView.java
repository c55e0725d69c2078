package halfgram.pages.why;

import halfgram.measure.Because;
import halfgram.pages.WhyLink;
import halfgram.pages.WhyTree;
import halfgram.words.Messages;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;

/**
 * How one number came to be.
 *
 * @param plan which plan it is a number of
 * @param back the page of its day
 * @param found none or one
 * @param nearest where the path is not known, one that is nearly the same; none or one
 */
record WhyView(
    String path, String plan, String back, List<WhyTree.Asked> found, List<Link> nearest) {
  /** So many levels stand on one page; further ones are a link away. */
  private static final int LEVELS = 3;

  /** A way to the why of another number. */
  record Link(String text, String href) {}

  static WhyView of(
      Because.Recording recording, String path, PlanName plan, String root, Messages words) {
    UnaryOperator<String> href = to -> WhyLink.of(root, plan.text(), to);
    List<WhyTree.Asked> found =
        new WhyTree(recording, words, href, LEVELS).find(path).stream().toList();
    Optional<String> nearest = found.isEmpty() ? recording.findNearest(path) : Optional.empty();
    return new WhyView(
        path,
        title(plan, words),
        root + "?date=" + plan.day(),
        found,
        nearest.map(known -> new Link(known, href.apply(known))).stream().toList());
  }

  private static String title(PlanName plan, Messages words) {
    if (plan.number() == WhyLink.PREVIEW) {
      return words.say("today.why-preview", plan.day());
    }
    String key = plan.proposed() ? "today.why-proposed" : "today.why-plan";
    return words.say(key, plan.number(), plan.day());
  }
}
