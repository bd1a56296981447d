package parfield.report;

import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.Objects;

/**
 * A picture of a report.
 *
 * @param svg the drawing
 * @param alternative what it shows, for who does not see it
 * @param caption printed below it
 */
public record Picture(String svg, String alternative, String caption) {
  public Picture {
    Objects.requireNonNull(svg, "svg");
    if (alternative.isBlank()) {
      throw new IllegalArgumentException("a picture needs a text in its place; got none");
    }
    Objects.requireNonNull(caption, "caption");
  }

  /** The drawing as an address that holds it. */
  public String address() {
    return "data:image/svg+xml;base64,"
        + Base64.getEncoder().encodeToString(svg.getBytes(StandardCharsets.UTF_8));
  }
}
