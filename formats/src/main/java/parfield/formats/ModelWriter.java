package parfield.formats;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.Map;
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

/** Writes a light model as JSON, key by key. For one model. */
final class ModelWriter {
  /** Quantities of the file and their units, named in the file itself. */
  static final Map<String, String> UNITS =
      Map.of(
          "length", "m",
          "angle", "rad",
          "ppfd", "µmol/m²/s",
          "intensity", "µmol/s/sr",
          "yellowing", "1/m");

  private final JsonGenerator json;

  ModelWriter(JsonGenerator json) {
    this.json = json;
    json.setPrettyPrinter(new DefaultPrettyPrinter());
  }

  void model(LightModel model) throws IOException {
    json.writeStartObject();
    json.writeNumberField("parfield_model", ModelFile.VERSION);
    json.writeObjectFieldStart("units");
    for (String quantity : UNITS.keySet().stream().sorted().toList()) {
      json.writeStringField(quantity, UNITS.get(quantity));
    }
    json.writeEndObject();
    json.writeNumberField("discrepancy", model.discrepancy());
    json.writeFieldName("report");
    report(model.report());
    json.writeFieldName("best");
    truth(model.best());
    json.writeArrayFieldStart("draws");
    for (Truth draw : model.draws()) {
      truth(draw);
    }
    json.writeEndArray();
    json.writeEndObject();
  }

  private void truth(Truth truth) throws IOException {
    json.writeStartObject();
    json.writeObjectFieldStart("clear");
    for (Side side : Side.values()) {
      json.writeNumberField(
          side.name().toLowerCase(Locale.ROOT), truth.clear().get(side.ordinal()));
    }
    json.writeEndObject();
    json.writeNumberField("bottom_reflectance", truth.bottomReflectance());
    json.writeNumberField("yellowing", truth.yellowing());
    json.writeNumberField("offset_x", truth.offsetX());
    json.writeNumberField("offset_y", truth.offsetY());
    json.writeNumberField("height_offset", truth.heightOffset());
    json.writeNumberField("aperture", truth.aperture());
    json.writeNumberField("meter_scale", truth.meterScale());
    json.writeObjectFieldStart("distributions");
    for (Map.Entry<String, List<IntensityDistribution>> fixture :
        truth.distributions().entrySet()) {
      json.writeArrayFieldStart(fixture.getKey());
      for (IntensityDistribution distribution : fixture.getValue()) {
        distribution(distribution);
      }
      json.writeEndArray();
    }
    json.writeEndObject();
    json.writeEndObject();
  }

  private void distribution(IntensityDistribution distribution) throws IOException {
    json.writeStartObject();
    if (distribution instanceof HarmonicIntensity harmonic) {
      json.writeStringField("kind", "harmonic");
      rows("cosine", harmonic.cosine());
      rows("sine", harmonic.sine());
    } else if (distribution instanceof CosinePower lobe) {
      json.writeStringField("kind", "cosine power");
      json.writeNumberField("peak", lobe.peak());
      json.writeNumberField("exponent", lobe.exponent());
    } else if (distribution instanceof ScaledIntensity scaled) {
      json.writeStringField("kind", "scaled");
      json.writeNumberField("factor", scaled.factor());
      json.writeFieldName("base");
      distribution(scaled.base());
    } else if (distribution instanceof TabulatedIntensity table) {
      json.writeStringField("kind", "tabulated");
      row("gamma", table.gammas());
      row("azimuth", table.azimuths());
      rows("intensity", table.intensities());
    } else {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "a model file knows harmonic, cosine power, scaled and tabulated distributions; got"
                  + " %s",
              distribution.getClass().getSimpleName()));
    }
    json.writeEndObject();
  }

  private void row(String name, double[] values) throws IOException {
    json.writeFieldName(name);
    json.writeArray(values, 0, values.length);
  }

  private void rows(String name, double[][] rows) throws IOException {
    json.writeArrayFieldStart(name);
    for (double[] row : rows) {
      json.writeArray(row, 0, row.length);
    }
    json.writeEndArray();
  }

  private void report(FitReport report) throws IOException {
    json.writeStartObject();
    json.writeNumberField("relative_residual", report.relativeResidual());
    json.writeArrayFieldStart("statements");
    for (String statement : report.statements()) {
      json.writeString(statement);
    }
    json.writeEndArray();
    json.writeArrayFieldStart("findings");
    for (FitReport.Finding finding : report.findings()) {
      json.writeStartObject();
      json.writeStringField("name", finding.name());
      json.writeNumberField("stated", finding.stated());
      Estimate fitted = finding.fitted();
      json.writeObjectFieldStart("fitted");
      json.writeNumberField("value", fitted.value());
      json.writeNumberField("low", fitted.low());
      json.writeNumberField("high", fitted.high());
      json.writeEndObject();
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeArrayFieldStart("cross_validation");
    for (FitReport.CrossValidation held : report.crossValidation()) {
      json.writeStartObject();
      json.writeStringField("held_out", held.heldOut());
      json.writeNumberField("median", held.median());
      json.writeNumberField("percentile_90", held.percentile90());
      json.writeNumberField("mean_error", held.meanError());
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeArrayFieldStart("residuals");
    for (FitReport.Residual residual : report.residuals()) {
      json.writeStartObject();
      json.writeStringField("survey", residual.survey());
      json.writeNumberField("index", residual.index());
      json.writeNumberField("measured", residual.measured());
      json.writeNumberField("predicted", residual.predicted());
      json.writeNumberField("sigmas", residual.sigmas());
      json.writeStringField("suspicion", residual.suspicion());
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeEndObject();
  }
}
