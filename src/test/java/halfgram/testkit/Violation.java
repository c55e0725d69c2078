package halfgram.testkit;

import com.deque.html.axecore.results.CheckedNode;
import com.deque.html.axecore.results.Rule;

/**
 * One place where a page breaks one rule of accessibility.
 *
 * @param rule axe's name of it
 * @param impact minor, moderate, serious or critical
 * @param target where: a selector
 * @param html the element there
 * @param summary what would mend it
 */
public record Violation(String rule, String impact, String target, String html, String summary) {
  static Violation of(Rule rule, CheckedNode node) {
    return new Violation(
        rule.getId(),
        String.valueOf(node.getImpact()),
        String.valueOf(node.getTarget()).replaceAll("^\\[|\\]$", ""),
        String.valueOf(node.getHtml()),
        String.valueOf(node.getFailureSummary()));
  }

  @Override
  public String toString() {
    return "%s (%s) at %s: %s%n  %s"
        .formatted(rule, impact, target, html, summary.replaceAll("\\s*\n\\s*", " "));
  }
}
