package halfgram.testkit;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.NotFoundException;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.Reader;
import com.google.zxing.ReaderException;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import javax.imageio.ImageIO;

/** A camera: reads the square of dots in a picture. */
public final class Dots {
  private static final int QUIET = 40;

  private Dots() {}

  /** What the dots of a picture say. */
  public static String read(byte[] png) {
    try {
      BufferedImage picture = ImageIO.read(new ByteArrayInputStream(png));
      int width = picture.getWidth() + 2 * QUIET;
      int height = picture.getHeight() + 2 * QUIET;
      int[] pixels = new int[width * height];
      java.util.Arrays.fill(pixels, 0xffffff);
      for (int y = 0; y < picture.getHeight(); y++) {
        for (int x = 0; x < picture.getWidth(); x++) {
          pixels[(y + QUIET) * width + x + QUIET] = picture.getRGB(x, y) & 0xffffff;
        }
      }
      Reader reader = new QRCodeReader();
      RGBLuminanceSource light = new RGBLuminanceSource(width, height, pixels);
      return reader.decode(new BinaryBitmap(new HybridBinarizer(light))).getText();
    } catch (NotFoundException e) {
      throw new AssertionError("no dots in the picture", e);
    } catch (ReaderException e) {
      throw new AssertionError("dots that cannot be read", e);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
