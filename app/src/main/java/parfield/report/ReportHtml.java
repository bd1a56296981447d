package parfield.report;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Objects;

/** Sets a report as one page that needs no other file. Thread-safe. */
public final class ReportHtml {
  private static final TemplateEngine ENGINE =
      TemplateEngine.createPrecompiled(
          null, ContentType.Html, ReportHtml.class.getClassLoader(), "parfield.web.templates");

  private ReportHtml() {}

  /** The report as a page for screens, that prints well too. */
  public static String of(Report report) {
    return page(report, resource("report.css") + resource("screen.css"));
  }

  /** The report as a page of one paper, well-formed as XML. */
  static String of(Report report, Paper paper) {
    return page(report, resource("report.css") + resource("print.css").replace("PAPER", paper.css()));
  }

  private static String page(Report report, String style) {
    StringOutput output = new StringOutput();
    ENGINE.render("report/report.jte", Map.of("report", report, "style", style), output);
    return output.toString();
  }

  private static String resource(String name) {
    try (InputStream in = ReportHtml.class.getResourceAsStream(name)) {
      return new String(
          Objects.requireNonNull(in, name).readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(name + " of this build cannot be read", e);
    }
  }
}
