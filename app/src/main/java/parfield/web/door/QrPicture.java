package parfield.web.door;

import io.nayuki.qrcodegen.QrCode;

/** A QR code as the path of an SVG picture. */
public final class QrPicture {
  private static final int MARGIN = 4;

  private final QrCode code;

  QrPicture(QrCode code) {
    this.code = code;
  }

  /** Modules along a side, with the quiet margin. */
  public int side() {
    return code.size + 2 * MARGIN;
  }

  /** The dark modules, a square each, as path data. */
  public String path() {
    StringBuilder path = new StringBuilder();
    for (int y = 0; y < code.size; y++) {
      for (int x = 0; x < code.size; x++) {
        if (code.getModule(x, y)) {
          path.append('M').append(x + MARGIN).append(' ').append(y + MARGIN).append("h1v1h-1z");
        }
      }
    }
    return path.toString();
  }
}
