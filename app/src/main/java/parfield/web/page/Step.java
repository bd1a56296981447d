package parfield.web.page;

/** The steps of a bench, in their order, and what stands beside them. */
public enum Step {
  SETUP("Set up", "setup"),
  MEASURE("Measure", "measure"),
  MODEL("Model", "model"),
  EXPLORE("Explore", "explore"),
  RECOMMEND("Recommend", "recommend"),
  PUBLISH("Publish", "publish"),
  /** Beside the steps: it is no part of their order. */
  SPECTRA("Spectra", "spectra");

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
