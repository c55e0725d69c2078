package halfgram.pages;

import com.google.zxing.BarcodeFormat;
import com.google.zxing.EncodeHintType;
import com.google.zxing.WriterException;
import com.google.zxing.common.BitMatrix;
import com.google.zxing.qrcode.QRCodeWriter;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import java.util.Map;

/**
 * A text as a square of dots that a camera reads.
 *
 * @param side how many dots wide, with the quiet border
 * @param path what is dark, as the path of a drawing of that side
 */
public record Qr(int side, String path) {
  private static final int QUIET = 4;

  public static Qr of(String text) {
    BitMatrix dots;
    try {
      dots =
          new QRCodeWriter()
              .encode(
                  text,
                  BarcodeFormat.QR_CODE,
                  0,
                  0,
                  Map.of(
                      EncodeHintType.MARGIN,
                      QUIET,
                      EncodeHintType.ERROR_CORRECTION,
                      ErrorCorrectionLevel.M));
    } catch (WriterException e) {
      throw new IllegalArgumentException(text, e);
    }
    return new Qr(dots.getWidth(), path(dots));
  }

  /** Row by row, what is dark side by side in one go. */
  private static String path(BitMatrix dots) {
    StringBuilder path = new StringBuilder();
    for (int y = 0; y < dots.getHeight(); y++) {
      int x = 0;
      while (x < dots.getWidth()) {
        int from = x;
        while (x < dots.getWidth() && dots.get(x, y)) {
          x++;
        }
        if (x > from) {
          path.append('M').append(from).append(' ').append(y);
          path.append('h').append(x - from).append("v1h-").append(x - from).append('z');
        } else {
          x++;
        }
      }
    }
    return path.toString();
  }
}
