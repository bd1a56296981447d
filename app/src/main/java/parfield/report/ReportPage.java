package parfield.report;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Base64;
import java.util.Map;
import java.util.Objects;

/**
 * A report that is set: one page that needs no other file, to be shown or printed.
 *
 * @param text XHTML whose style stands for a place holder
 */
public record ReportPage(String text) {
  private static final String STYLE = "/*style*/";

  private static final TemplateEngine ENGINE =
      TemplateEngine.createPrecompiled(
          null, ContentType.Html, ReportPage.class.getClassLoader(), "parfield.web.templates");

  public ReportPage {
    if (!text.contains(STYLE)) {
      throw new IllegalArgumentException("this is no page of a report: it has no room for a style");
    }
  }

  /** Sets a report. */
  public static ReportPage of(Report report) {
    StringOutput output = new StringOutput();
    ENGINE.render("report/report.jte", Map.of("report", report, "style", STYLE), output);
    return new ReportPage(output.toString());
  }

  /** The page for screens; it prints well too. */
  public String html() {
    return styled(screenStyle());
  }

  /** The style of the page for screens as a content security policy names it: its SHA-256. */
  public static String styleHash() {
    try {
      byte[] hash =
          MessageDigest.getInstance("SHA-256")
              .digest(screenStyle().getBytes(StandardCharsets.UTF_8));
      return "'sha256-" + Base64.getEncoder().encodeToString(hash) + "'";
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every JDK has SHA-256", e);
    }
  }

  private static String screenStyle() {
    return resource("report.css") + resource("screen.css");
  }

  /**
   * The page on paper: tagged for who does not see it, its fonts in it.
   *
   * @return a whole PDF file
   */
  public byte[] pdf(Paper paper) {
    return Printing.pdf(
        styled(resource("report.css") + resource("print.css").replace("PAPER", paper.css())));
  }

  private String styled(String style) {
    return text.replace(STYLE, style);
  }

  private static String resource(String name) {
    try (InputStream in = ReportPage.class.getResourceAsStream(name)) {
      return new String(Objects.requireNonNull(in, name).readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(name + " of this build cannot be read", e);
    }
  }
}
