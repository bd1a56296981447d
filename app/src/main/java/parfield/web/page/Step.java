package parfield.web.page;

import java.util.List;

/** The steps of a bench, in their order, and what stands beside them. */
public enum Step {
  SETUP("Set up", "setup"),
  MEASURE("Measure", "measure"),
  MODEL("Model", "model"),
  EXPLORE("Explore", "explore"),
  RECOMMEND("Recommend", "recommend"),
  PUBLISH("Publish", "publish"),
  SPECTRA("Spectra", "spectra"),
  CARE("Care", "care");

  /** Those that stand beside the others: they are no part of the order. */
  public static final List<Step> BESIDE = List.of(SPECTRA, CARE);

  private final String title;
  private final String path;

  Step(String title, String path) {
    this.title = title;
    this.path = path;
  }

  /** What it is called. */
  public String title() {
    return title;
  }

  /** Last part of its address. */
  public String path() {
    return path;
  }
}
