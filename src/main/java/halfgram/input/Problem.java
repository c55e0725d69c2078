package halfgram.input;

import halfgram.measure.Message;

/**
 * One thing wrong with entered data.
 *
 * @param path where: a JSON path such as {@code $.formulas[3].versions[0].lines[2].percent}
 * @param value what stands there, shortened to 60 characters; empty when it is missing
 * @param message what is wrong and what would be accepted
 */
public record Problem(String path, String value, Message message) {
  public Problem {
    value = value.length() > 60 ? value.substring(0, 57) + "..." : value;
  }
}
