package parfield.plot;

import java.awt.image.BufferedImage;
import java.awt.image.WritableRaster;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Base64;
import javax.imageio.ImageIO;
import javax.imageio.stream.MemoryCacheImageOutputStream;

/** SVG text under way: elements are written as they come, numbers with one decimal. */
final class Svg {
  private final StringBuilder out = new StringBuilder(1 << 15);

  /** Opens an element; attributes come as name, value, name, value. */
  Svg open(String name, Object... attributes) {
    start(name, attributes);
    out.append('>');
    return this;
  }

  /** Writes an element without content. */
  Svg empty(String name, Object... attributes) {
    start(name, attributes);
    out.append("/>\n");
    return this;
  }

  /** Closes an element. */
  Svg close(String name) {
    out.append("</").append(name).append(">\n");
    return this;
  }

  /** Writes an element with text. */
  Svg element(String name, String text, Object... attributes) {
    open(name, attributes);
    out.append(escaped(text));
    return close(name);
  }

  /** Writes what another has written. */
  Svg append(Svg other) {
    out.append(other.out);
    return this;
  }

  /** Text in ink over the same text in a wide stroke of paper, legible on any colour. */
  Svg haloed(String text, double halo, Object... attributes) {
    Object[] under = java.util.Arrays.copyOf(attributes, attributes.length + 10);
    Object[] stroke = {
      "stroke",
      Look.PAPER,
      "stroke-width",
      halo,
      "stroke-linejoin",
      "round",
      "stroke-opacity",
      0.85,
      "aria-hidden",
      "true"
    };
    System.arraycopy(stroke, 0, under, attributes.length, stroke.length);
    return element("text", text, under).element("text", text, attributes);
  }

  /**
   * An image in the colours of viridis.
   *
   * @param indices of the colours, row by row from the top
   */
  Svg image(
      int columns, int rows, int[] indices, double left, double top, double width, double height) {
    BufferedImage image =
        new BufferedImage(columns, rows, BufferedImage.TYPE_BYTE_INDEXED, Viridis.palette());
    WritableRaster pixels = image.getRaster();
    for (int i = 0; i < indices.length; i++) {
      pixels.setSample(i % columns, i / columns, 0, indices[i]);
    }
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (MemoryCacheImageOutputStream stream = new MemoryCacheImageOutputStream(bytes)) {
      if (!ImageIO.write(image, "png", stream)) {
        throw new IllegalStateException("this Java has no PNG writer");
      }
    } catch (IOException e) {
      throw new UncheckedIOException("an image could not be written to memory", e);
    }
    String data = Base64.getEncoder().encodeToString(bytes.toByteArray());
    return empty(
        "image",
        "x",
        left,
        "y",
        top,
        "width",
        width,
        "height",
        height,
        "preserveAspectRatio",
        "none",
        "xlink:href",
        "data:image/png;base64," + data);
  }

  /** A coordinate with one decimal at most; the same in every locale. */
  static String number(double value) {
    long tenths = Math.round(value * 10);
    String whole = Long.toString(Math.abs(tenths) / 10);
    long decimal = Math.abs(tenths) % 10;
    return (tenths < 0 ? "-" : "") + whole + (decimal == 0 ? "" : "." + decimal);
  }

  /** Text as XML content or attribute value; characters that XML forbids are left out. */
  static String escaped(String text) {
    StringBuilder safe = new StringBuilder(text.length() + 16);
    text.codePoints()
        .filter(
            c ->
                (c >= ' ' && !(c >= 0xD800 && c <= 0xDFFF) && c != 0xFFFE && c != 0xFFFF)
                    || c == '\t'
                    || c == '\n')
        .forEach(
            c -> {
              switch (c) {
                case '&' -> safe.append("&amp;");
                case '<' -> safe.append("&lt;");
                case '>' -> safe.append("&gt;");
                case '"' -> safe.append("&quot;");
                default -> safe.appendCodePoint(c);
              }
            });
    return safe.toString();
  }

  @Override
  public String toString() {
    return out.toString();
  }

  private void start(String name, Object... attributes) {
    out.append('<').append(name);
    for (int i = 0; i < attributes.length; i += 2) {
      out.append(' ').append(attributes[i]).append("=\"");
      Object value = attributes[i + 1];
      if (value instanceof Double number && attributes[i].toString().endsWith("opacity")) {
        out.append(Math.round(number * 100) / 100.0);
      } else if (value instanceof Double number) {
        out.append(number(number));
      } else {
        out.append(escaped(value.toString()));
      }
      out.append('"');
    }
  }
}
