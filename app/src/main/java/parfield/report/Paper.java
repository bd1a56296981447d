package parfield.report;

import java.util.Locale;
import parfield.units.LengthUnit;

/** A sheet that a report is printed on. */
public enum Paper {
  /** ISO 216: 210 mm by 297 mm. */
  A4("A4", 210, 297),
  /** US Letter, 8.5 in by 11 in (ANSI/ASME Y14.1). */
  LETTER("Letter", 215.9, 279.4);

  private final String title;
  private final double widthMm;
  private final double heightMm;

  Paper(String title, double widthMm, double heightMm) {
    this.title = title;
    this.widthMm = widthMm;
    this.heightMm = heightMm;
  }

  /** The paper of people who measure in a unit. */
  public static Paper usualFor(LengthUnit unit) {
    return unit == LengthUnit.CM ? A4 : LETTER;
  }

  /** As people call it. */
  public String title() {
    return title;
  }

  /** Shorter side [mm]. */
  public double widthMm() {
    return widthMm;
  }

  /** Longer side [mm]. */
  public double heightMm() {
    return heightMm;
  }

  /** Name of a report's file on this paper. */
  public String fileName() {
    return "report-" + name().toLowerCase(Locale.ROOT) + ".pdf";
  }

  /** The size as style sheets write it. */
  String css() {
    return String.format(Locale.ROOT, "%smm %smm", widthMm, heightMm);
  }
}
