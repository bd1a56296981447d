package parfield.formats;

import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Supplier;
import parfield.fit.FitReport;
import parfield.fit.LightModel;
import parfield.fit.Truth;
import parfield.lamp.CosinePower;
import parfield.lamp.HarmonicIntensity;
import parfield.lamp.IntensityDistribution;
import parfield.lamp.ScaledIntensity;
import parfield.lamp.TabulatedIntensity;
import parfield.tank.Side;
import parfield.units.Estimate;

/** Reads a light model from JSON tokens as they come; stops at the first fault. For one model. */
final class ModelReader {
  static final String AGAIN = "fit again and write the model anew";

  private static final Map<String, Double> NOT_FINITE =
      Map.of(
          "NaN", Double.NaN,
          "Infinity", Double.POSITIVE_INFINITY,
          "-Infinity", Double.NEGATIVE_INFINITY);

  private final String file;
  private final JsonParser parser;
  private final Notes notes;
  private String path = "";

  ModelReader(String file, JsonParser parser, Notes notes) {
    this.file = file;
    this.parser = parser;
    this.notes = notes;
  }

  /** Reads the value of one key. */
  private interface Value {
    void read() throws IOException;
  }

  /** Keys of an object with what reads each; all of them must be there. */
  private final class Keys {
    private final Map<String, Value> values = new HashMap<>();
    private final Map<String, Object> read = new HashMap<>();

    /** A key whose value {@code how} reads. */
    <T> Keys with(String key, Read<T> how) {
      values.put(key, () -> read.put(key, how.read()));
      return this;
    }

    /** What was read for a key. */
    <T> T get(Class<T> type, String key) {
      Object value = read.get(key);
      if (value == null) {
        throw fault(inside(key), "nothing", "", AGAIN);
      }
      return type.cast(value);
    }

    double number(String key) {
      return get(Double.class, key);
    }

    String text(String key) {
      return get(String.class, key);
    }

    @SuppressWarnings("unchecked")
    <T> List<T> list(String key) {
      return (List<T>) get(List.class, key);
    }
  }

  private interface Read<T> {
    T read() throws IOException;
  }

  LightModel model() throws IOException {
    try {
      parser.nextToken();
      Keys keys =
          object(
              new Keys()
                  .with("parfield_model", this::version)
                  .with("units", this::units)
                  .with("discrepancy", this::number)
                  .with("report", this::report)
                  .with("best", this::truth)
                  .with("draws", () -> list(this::truth)));
      keys.number("parfield_model");
      keys.get(Map.class, "units");
      if (parser.nextToken() != null) {
        throw fault("end of the file", shown(), "nothing after the model", AGAIN);
      }
      return make(
          () ->
              new LightModel(
                  keys.get(Truth.class, "best"),
                  keys.list("draws"),
                  keys.number("discrepancy"),
                  keys.get(FitReport.class, "report")));
    } catch (JsonProcessingException e) {
      JsonLocation at = e.getLocation();
      throw notes.fatal(
          new Fault(
              file,
              at == null ? 0 : at.getLineNr(),
              at == null ? 0 : at.getColumnNr(),
              "this is no JSON of a light model",
              Notes.shown(String.valueOf(e.getOriginalMessage())),
              "",
              AGAIN));
    }
  }

  private Double version() throws IOException {
    double version = number();
    if (version != ModelFile.VERSION) {
      throw fault(
          path,
          NumberText.shown(version),
          String.valueOf(ModelFile.VERSION),
          "fit again with this program, or take the one that wrote the file");
    }
    return version;
  }

  private Map<String, String> units() throws IOException {
    Keys keys = new Keys();
    ModelWriter.UNITS.keySet().forEach(quantity -> keys.with(quantity, this::text));
    object(keys);
    ModelWriter.UNITS.forEach(
        (quantity, unit) -> {
          if (!keys.text(quantity).equals(unit)) {
            throw fault(inside(quantity), Notes.shown(keys.text(quantity)), unit, AGAIN);
          }
        });
    return ModelWriter.UNITS;
  }

  private Truth truth() throws IOException {
    Keys sides = new Keys();
    for (Side side : Side.values()) {
      sides.with(side.name().toLowerCase(Locale.ROOT), this::number);
    }
    Keys keys =
        object(
            new Keys()
                .with("clear", () -> object(sides))
                .with("bottom_reflectance", this::number)
                .with("yellowing", this::number)
                .with("offset_x", this::number)
                .with("offset_y", this::number)
                .with("height_offset", this::number)
                .with("aperture", this::number)
                .with("meter_scale", this::number)
                .with("distributions", this::distributions));
    keys.get(Keys.class, "clear");
    List<Double> clear = new ArrayList<>();
    for (Side side : Side.values()) {
      clear.add(sides.number(side.name().toLowerCase(Locale.ROOT)));
    }
    return make(
        () ->
            new Truth(
                fixtures(keys),
                clear,
                keys.number("bottom_reflectance"),
                keys.number("yellowing"),
                keys.number("offset_x"),
                keys.number("offset_y"),
                keys.number("height_offset"),
                keys.number("aperture"),
                keys.number("meter_scale")));
  }

  @SuppressWarnings("unchecked")
  private static Map<String, List<IntensityDistribution>> fixtures(Keys keys) {
    return (Map<String, List<IntensityDistribution>>) keys.get(Map.class, "distributions");
  }

  private Map<String, List<IntensityDistribution>> distributions() throws IOException {
    expect(JsonToken.START_OBJECT, "an object");
    Map<String, List<IntensityDistribution>> fixtures = new TreeMap<>();
    while (parser.nextToken() == JsonToken.FIELD_NAME) {
      String name = parser.currentName();
      parser.nextToken();
      fixtures.put(name, list(this::distribution));
    }
    return fixtures;
  }

  private IntensityDistribution distribution() throws IOException {
    Keys keys =
        object(
            new Keys()
                .with("kind", this::text)
                .with("cosine", this::rows)
                .with("sine", this::rows)
                .with("peak", this::number)
                .with("exponent", this::number)
                .with("factor", this::number)
                .with("base", this::distribution)
                .with("gamma", this::row)
                .with("azimuth", this::row)
                .with("intensity", this::rows));
    String kind = keys.text("kind");
    return switch (kind) {
      case "harmonic" ->
          make(
              () ->
                  new HarmonicIntensity(
                      keys.get(double[][].class, "cosine"), keys.get(double[][].class, "sine")));
      case "cosine power" ->
          make(() -> new CosinePower(keys.number("peak"), keys.number("exponent")));
      case "scaled" ->
          make(
              () ->
                  new ScaledIntensity(
                      keys.get(IntensityDistribution.class, "base"), keys.number("factor")));
      case "tabulated" ->
          make(
              () ->
                  new TabulatedIntensity(
                      keys.get(double[].class, "gamma"),
                      keys.get(double[].class, "azimuth"),
                      keys.get(double[][].class, "intensity")));
      default ->
          throw fault(
              inside("kind"),
              Notes.shown(kind),
              "harmonic, cosine power, scaled, tabulated",
              AGAIN);
    };
  }

  private FitReport report() throws IOException {
    Keys keys =
        object(
            new Keys()
                .with("relative_residual", this::number)
                .with("statements", () -> list(this::text))
                .with("findings", () -> list(this::finding))
                .with("cross_validation", () -> list(this::crossValidation))
                .with("residuals", () -> list(this::residual)));
    return make(
        () ->
            new FitReport(
                keys.list("findings"),
                keys.list("residuals"),
                keys.list("cross_validation"),
                keys.list("statements"),
                keys.number("relative_residual")));
  }

  private FitReport.Finding finding() throws IOException {
    Keys keys =
        object(
            new Keys()
                .with("name", this::text)
                .with("stated", this::number)
                .with("fitted", this::estimate));
    return new FitReport.Finding(
        keys.text("name"), keys.number("stated"), keys.get(Estimate.class, "fitted"));
  }

  private Estimate estimate() throws IOException {
    Keys keys =
        object(
            new Keys()
                .with("value", this::number)
                .with("low", this::number)
                .with("high", this::number));
    return make(() -> new Estimate(keys.number("value"), keys.number("low"), keys.number("high")));
  }

  private FitReport.CrossValidation crossValidation() throws IOException {
    Keys keys =
        object(
            new Keys()
                .with("held_out", this::text)
                .with("median", this::number)
                .with("percentile_90", this::number)
                .with("mean_error", this::number));
    return new FitReport.CrossValidation(
        keys.text("held_out"),
        keys.number("median"),
        keys.number("percentile_90"),
        keys.number("mean_error"));
  }

  private FitReport.Residual residual() throws IOException {
    Keys keys =
        object(
            new Keys()
                .with("survey", this::text)
                .with("index", this::number)
                .with("measured", this::number)
                .with("predicted", this::number)
                .with("sigmas", this::number)
                .with("suspicion", this::text));
    return new FitReport.Residual(
        keys.text("survey"),
        (int) keys.number("index"),
        keys.number("measured"),
        keys.number("predicted"),
        keys.number("sigmas"),
        keys.text("suspicion"));
  }

  private Keys object(Keys keys) throws IOException {
    expect(JsonToken.START_OBJECT, "an object");
    String outer = path;
    while (parser.nextToken() == JsonToken.FIELD_NAME) {
      String key = parser.currentName();
      Value value = keys.values.get(key);
      if (value == null) {
        throw fault(
            "unknown key" + (outer.isEmpty() ? "" : " in " + outer),
            Notes.shown(key),
            Notes.shown(keys.values.keySet().stream().sorted().toList()),
            AGAIN);
      }
      path = outer.isEmpty() ? key : outer + "." + key;
      parser.nextToken();
      value.read();
      path = outer;
    }
    return keys;
  }

  private <T> List<T> list(Read<T> element) throws IOException {
    expect(JsonToken.START_ARRAY, "an array");
    List<T> list = new ArrayList<>();
    String outer = path;
    while (parser.nextToken() != JsonToken.END_ARRAY) {
      path = outer + "[" + (list.size() + 1) + "]";
      list.add(element.read());
    }
    path = outer;
    return list;
  }

  private double[] row() throws IOException {
    expect(JsonToken.START_ARRAY, "an array");
    double[] row = new double[16];
    int size = 0;
    while (parser.nextToken() != JsonToken.END_ARRAY) {
      if (size == row.length) {
        row = Arrays.copyOf(row, 2 * size);
      }
      row[size++] = number();
    }
    return Arrays.copyOf(row, size);
  }

  private double[][] rows() throws IOException {
    return list(this::row).toArray(double[][]::new);
  }

  private String text() throws IOException {
    expect(JsonToken.VALUE_STRING, "a text");
    return parser.getText();
  }

  /** A number; what is none, JSON has to write as a text. */
  private Double number() throws IOException {
    if (parser.currentToken() == JsonToken.VALUE_STRING) {
      Double none = NOT_FINITE.get(parser.getText());
      if (none != null) {
        return none;
      }
    }
    if (parser.currentToken() != JsonToken.VALUE_NUMBER_FLOAT) {
      expect(JsonToken.VALUE_NUMBER_INT, "a number");
    }
    return parser.getDoubleValue();
  }

  private void expect(JsonToken token, String limit) throws IOException {
    if (parser.currentToken() != token) {
      throw fault(path.isEmpty() ? "the file" : path, shown(), limit, AGAIN);
    }
  }

  private String shown() throws IOException {
    return parser.currentToken() == null ? "nothing" : Notes.shown(parser.getText());
  }

  private String inside(String key) {
    return path.isEmpty() ? key : path + "." + key;
  }

  private <T> T make(Supplier<T> value) {
    try {
      return value.get();
    } catch (IllegalArgumentException e) {
      throw fault(path.isEmpty() ? "the model" : path, "", "", e.getMessage());
    }
  }

  private InvalidFile fault(String what, String value, String limit, String cure) {
    JsonLocation at = parser.currentTokenLocation();
    return notes.fatal(new Fault(file, at.getLineNr(), at.getColumnNr(), what, value, limit, cure));
  }
}
