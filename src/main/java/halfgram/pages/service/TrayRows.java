package halfgram.pages.service;

import halfgram.pass.AtPass;
import halfgram.pass.Component;
import halfgram.words.Dots;
import java.util.ArrayList;
import java.util.List;

/**
 * What to take from next: what the courses that lie open take is in sight, the rest lies folded.
 *
 * @param said what is said of those that lie folded; empty without any
 * @param open whether the fold lies open, as something was just entered in it
 */
record TrayRows(List<TrayRow> now, List<TrayRow> later, String said, boolean open) {

  static TrayRows of(PassScene scene, AtPass at, List<CourseBox> courses, Touched touched) {
    if (at.run().isOver(scene.now())) {
      return new TrayRows(List.of(), List.of(), "", false);
    }
    List<String> folded =
        courses.stream().filter(one -> !one.folded().isEmpty()).map(CourseBox::code).toList();
    List<TrayRow> now = new ArrayList<>();
    List<TrayRow> later = new ArrayList<>();
    for (AtPass.Shelf shelf : at.shelves()) {
      boolean near = folded.isEmpty() || isTaken(scene, at, folded, shelf.component());
      (near ? now : later).add(TrayRow.of(scene, at, shelf));
    }
    String said = later.isEmpty() ? "" : said(scene, later);
    return new TrayRows(now, later, said, touched.isOneOf(later));
  }

  /** Whether plates to go of a course that lies open take some of it. */
  private static boolean isTaken(
      PassScene scene, AtPass at, List<String> folded, Component component) {
    return at.lines().stream()
        .filter(line -> line.toGo() > 0 && !folded.contains(line.key().course()))
        .anyMatch(line -> line.takes(scene.book().formulary(), component));
  }

  private static String said(PassScene scene, List<TrayRow> later) {
    String said = scene.words().say("pass.trays-later", later.size());
    long trouble = later.stream().filter(row -> !row.look().isEmpty()).count();
    return trouble == 0 ? said : said + Dots.BETWEEN + scene.words().say("pass.trouble", trouble);
  }
}
