package parfield.report;

import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.slf4j.Slf4jLogger;
import com.openhtmltopdf.svgsupport.BatikSVGDrawer;
import com.openhtmltopdf.util.XRLog;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Objects;
import java.util.Set;

/** Prints pages, tagged, with their fonts in them. Thread-safe. */
public final class Printing {
  static final String FAMILY = "DejaVu Sans";

  private static final int NORMAL = 400;
  private static final int BOLD = 700;

  static {
    XRLog.setLoggerImpl(new Slf4jLogger());
  }

  private Printing() {}

  /**
   * Makes the first report quicker: reads fonts and the classes of printing. Needed for nothing
   * else.
   */
  public static void prepare() {
    pdf(
        "<html><head><title>x</title><style>body { font-family: '"
            + FAMILY
            + "' }</style></head><body><b>x</b> x<svg xmlns=\"http://www.w3.org/2000/svg\""
            + " width=\"9\" height=\"9\"><text x=\"1\" y=\"8\">x</text></svg></body></html>");
  }

  /**
   * Prints a page.
   *
   * @param page well-formed XHTML
   * @return a whole PDF file
   */
  static byte[] pdf(String page) {
    ByteArrayOutputStream out = new ByteArrayOutputStream(1 << 20);
    PdfRendererBuilder builder = new PdfRendererBuilder();
    builder.usePdfUaAccessibility(true);
    builder.useFont(() -> font("DejaVuSans.ttf"), FAMILY, NORMAL, FontStyle.NORMAL, true);
    builder.useFont(() -> font("DejaVuSans-Bold.ttf"), FAMILY, BOLD, FontStyle.NORMAL, true);
    builder.useSVGDrawer(new BatikSVGDrawer(BatikSVGDrawer.SvgScriptMode.SECURE, Set.of("data")));
    builder.withHtmlContent(page, null);
    builder.withProducer("Parfield");
    builder.toStream(out);
    try {
      builder.run();
    } catch (IOException e) {
      throw new UncheckedIOException("the report cannot be printed", e);
    }
    return out.toByteArray();
  }

  private static InputStream font(String name) {
    return Objects.requireNonNull(Printing.class.getResourceAsStream("fonts/" + name), name);
  }
}
