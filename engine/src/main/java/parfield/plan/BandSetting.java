package parfield.plan;

import java.util.Objects;
import parfield.lamp.Setting;
import parfield.survey.Band;
import parfield.units.Estimate;

/**
 * What to dial on the recommended rig if one band alone is wanted.
 *
 * @param band wanted
 * @param extent of which as much as possible shall be in band
 * @param setting that puts most of it in band
 * @param coverage share of the extent in band at that setting
 */
public record BandSetting(Band band, Extent extent, Setting setting, Estimate coverage) {
  public BandSetting {
    Objects.requireNonNull(band, "band");
    Objects.requireNonNull(extent, "extent");
    Objects.requireNonNull(setting, "setting");
    Objects.requireNonNull(coverage, "coverage");
  }
}
