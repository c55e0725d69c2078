package halfgram.web;

/** What a page is asked of what is to be seen on it. */
final class InSight {
  /** What of it lies outside of the screen, or under something else, once all of it is drawn. */
  static final String HIDDEN =
      """
      async (told) => {
        await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
        return told.map((selector) => document.querySelector(selector))
          .filter((one) => {
            const {left, right, top, bottom} = one.getBoundingClientRect();
            return [top + 3, bottom - 3].some((y) =>
              !one.contains(document.elementFromPoint((left + right) / 2, y)));
          })
          .map((one) => one.className + ' ' + one.textContent);
      }
      """;

  private InSight() {}
}
