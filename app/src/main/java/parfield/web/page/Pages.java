package parfield.web.page;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import io.javalin.http.Context;
import java.util.Map;

/** Draws pages from templates, which were compiled with the program. Thread-safe. */
public final class Pages {
  private final TemplateEngine engine =
      TemplateEngine.createPrecompiled(
          null, ContentType.Html, Pages.class.getClassLoader(), "parfield.web.templates");

  /**
   * Answers with a page.
   *
   * @param context of the request
   * @param template as in {@code home/benches.jte}
   * @param values by the names of the template's parameters
   */
  public void show(Context context, String template, Map<String, Object> values) {
    context.html(text(template, values));
  }

  /** A template's text with its values. */
  public String text(String template, Map<String, Object> values) {
    StringOutput output = new StringOutput();
    engine.render(template, values, output);
    return output.toString();
  }
}
