package halfgram.pages.tablets;

import halfgram.pages.Qr;

/**
 * A pairing that waits for its tablet.
 *
 * @param stations what it will show
 * @param minutes for how long the code counts
 * @param address of the page where the code is typed
 * @param link that has the code in it already
 */
record CodeView(
    String name, String stations, String code, long minutes, String address, String link, Qr qr) {

  /** Whether no other device finds that address. */
  public boolean isAlone() {
    return address.matches("https?://(localhost|127\\.[0-9.]+|\\[::1])(:\\d+)?/.*");
  }
}
