package parfield.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A form of a page, as a browser would send it if nothing were typed into it. */
public final class HtmlForm {
  private static final Pattern FIELD =
      Pattern.compile("(?s)<input[^>]*>|<select[^>]*>.*?</select>|<textarea[^>]*>.*?</textarea>");

  private HtmlForm() {}

  /** The fields of the form that is sent to an address ending so. */
  public static List<Map.Entry<String, String>> fields(String page, String action) {
    Matcher form =
        Pattern.compile("(?s)<form[^>]*action=\"[^\"]*" + Pattern.quote(action) + "\".*?</form>")
            .matcher(page);
    if (!form.find()) {
      throw new AssertionError("the page has no form for " + action);
    }
    List<Map.Entry<String, String>> fields = new ArrayList<>();
    FIELD.matcher(form.group()).results().map(MatchResult::group).forEach(tag -> add(fields, tag));
    return fields;
  }

  private static void add(List<Map.Entry<String, String>> fields, String tag) {
    String open = tag.substring(0, tag.indexOf('>') + 1);
    String name = attribute(open, "name");
    if (tag.startsWith("<select")) {
      String chosen =
          Pattern.compile("<option[^>]*>")
              .matcher(tag.substring(open.length()))
              .results()
              .map(MatchResult::group)
              .filter(option -> option.contains(" selected"))
              .map(option -> attribute(option, "value"))
              .findFirst()
              .orElse("");
      fields.add(Map.entry(name, chosen));
    } else if (tag.startsWith("<textarea")) {
      fields.add(
          Map.entry(name, plain(tag.substring(open.length(), tag.length() - 11).stripLeading())));
    } else if (!open.contains("type=\"checkbox\"") || open.contains(" checked")) {
      fields.add(Map.entry(name, attribute(open, "value")));
    }
  }

  private static String attribute(String tag, String name) {
    Matcher matcher = Pattern.compile(" " + name + "=\"([^\"]*)\"").matcher(tag);
    return matcher.find() ? plain(matcher.group(1)) : "";
  }

  private static String plain(String html) {
    return html.replace("&lt;", "<")
        .replace("&gt;", ">")
        .replace("&#34;", "\"")
        .replace("&#39;", "'")
        .replace("&amp;", "&");
  }
}
