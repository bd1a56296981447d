package parfield.validation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import parfield.ReferenceFolder;

/** The table of published values against the reference folder that it was taken from. */
class PublishedValuesTest {
  private static final Map<String, String> QUANTITIES =
      Map.of("Ed", "E_d", "Eu", "E_u", "Eou", "E_0u", "Lu", "L_u", "E0d", "E_0d", "E0u", "E_0u");

  private static PublishedValue value(String ofCase, String quantity) {
    List<PublishedValue> found =
        PublishedValues.of(ofCase).stream().filter(v -> v.quantity().equals(quantity)).toList();
    assertThat(found).as("%s, %s", ofCase, quantity).hasSize(1);
    return found.get(0);
  }

  @Test
  void holdsTheCanonicalProblemsWithTheirScatter() {
    for (Map<String, String> row : ReferenceFolder.rows("mobley1993_canonical.csv")) {
      String quantity = row.get("quantity");
      PublishedValue value =
          value(
              "ocean problem " + row.get("problem") + " at albedo " + row.get("omega0"),
              QUANTITIES.get(quantity) + " at depth " + row.get("optical_depth_tau"));
      double mean = Double.parseDouble(row.get("published_mean_of_models"));
      double scatter = 2 * Double.parseDouble(row.get("published_cv_sd_over_mean"));
      double least = Map.of("Ed", .013, "Eou", .015, "Lu", .05).get(quantity);
      assertThat(value.value()).isEqualTo(mean);
      assertThat(value.tolerance())
          .isCloseTo(Math.max(least, scatter) * mean, within(.01 * value.tolerance()));
      assertThat(value.kind()).isEqualTo(PublishedValue.Tolerance.SPREAD);
    }
  }

  @Test
  void holdsTheDerivedCases() {
    Map<String, String> names =
        Map.of(
            "P1_rayleigh_deep", "deep Rayleigh water at albedo ",
            "rayleigh_lambert_bottom_0.5_at_tau5", "Rayleigh water over a bottom at albedo ",
            "normal_beam_HG_g0.90_tau0.50_bottom0.3", "beam into water of g .90 over a bottom",
            "normal_beam_HG_g0.75_tau1.00_bottom0.3", "beam into water of g .75 over a bottom",
            "normal_beam_HG_g0.00_tau0.30_bottom0.5", "beam into clear water over a bottom");
    for (Map<String, String> row : ReferenceFolder.rows("derived_deterministic_benchmarks.csv")) {
      String name = names.get(row.get("case"));
      String ofCase = name.endsWith("albedo ") ? name + row.get("omega0") : name;
      for (String quantity : List.of("Ed", "Eu", "E0d", "E0u")) {
        assertThat(value(ofCase, QUANTITIES.get(quantity) + " at depth " + row.get("tau")).value())
            .isEqualTo(Double.parseDouble(row.get(quantity)));
      }
    }
  }

  @Test
  void holdsTheSlabsAndLayers() {
    List<Map<String, String>> rows = ReferenceFolder.rows("mcml_validation.csv");
    holds(rows, "slab_matched", "Rd_total", "matched slab", "R");
    holds(rows, "slab_matched", "T_total_incl_unscattered", "matched slab", "T");
    holds(rows, "semi_infinite_n1.5", "R_total_incl", "half-space of index 1.5", "R");
    holds(rows, "three_layer", "specular", "first face of index 1.37", "R");
    holds(rows, "three_layer", "Rd_diffuse", "three layers", "R_d");
    holds(rows, "three_layer", "absorbed", "three layers", "A");
    holds(rows, "three_layer", "T_diffuse", "three layers", "T");
    holds(rows, "three_layer", "A_layer1", "three layers", "A of layer 1");
    holds(rows, "three_layer", "A_layer2", "three layers", "A of layer 2");
    holds(rows, "three_layer", "A_layer3", "three layers", "A of layer 3");
    String isotropic = "oblique beam on an isotropic slab";
    holds(rows, "slab_oblique_mu0_0.5_tau1_a0.99", "R_total", isotropic, "R");
    holds(rows, "slab_oblique_mu0_0.5_tau1_a0.99", "T_total", isotropic, "T");
    String forward = "oblique beam on a forward scattering slab";
    holds(rows, "slab_oblique_mu0_0.5_tau4_a0.99", "R_total", forward, "R");
    holds(rows, "slab_oblique_mu0_0.5_tau4_a0.99", "T_total", forward, "T");
  }

  private static void holds(
      List<Map<String, String>> rows, String key, String measure, String ofCase, String quantity) {
    PublishedValue value = value(ofCase, quantity);
    assertThat(rows)
        .as("%s %s", key, measure)
        .anyMatch(
            row ->
                row.get("case").equals(key)
                    && row.get("quantity").startsWith(measure)
                    && Double.parseDouble(row.get("value")) == value.value()
                    && (value.kind() != PublishedValue.Tolerance.ERROR
                        || Double.parseDouble(row.get("std_error")) == value.tolerance()));
  }

  @Test
  void holdsFresnelAndFormFactors() {
    for (Map<String, String> row : ReferenceFolder.rows("fresnel_air_water.csv")) {
      int degrees = Integer.parseInt(row.get("incidence_deg_in_air"));
      if (degrees == 0 || degrees == 60 || degrees == 80) {
        assertThat(value("beam onto water at " + degrees + " degrees", "R").value())
            .isEqualTo(Double.parseDouble(row.get("R_unpol_n1.34")));
      }
    }
    List<Double> factors =
        ReferenceFolder.rows("view_factors.csv").stream()
            .map(row -> Double.parseDouble(row.get("value")))
            .toList();
    List<PublishedValue> used =
        PublishedValues.all().stream().filter(v -> v.ofCase().startsWith("form factor")).toList();
    assertThat(used).hasSize(11);
    assertThat(used).allSatisfy(value -> assertThat(factors).contains(value.value()));
  }

  /** Figures that stand in no table of the reference: PHYSICS §1 and §3, and the closed forms. */
  @Test
  void holdsTheClosedForms() {
    double index = 1.34;
    double normal = Math.pow((index - 1) / (index + 1), 2);
    assertThat(value("n-squared law", "L from above at depth 0").value())
        .isCloseTo(index * index * (1 - normal), within(1e-6));
    assertThat(value("even sky onto water", "E_d at depth 0").value())
        .isCloseTo(1 - .067511, within(1e-9));
    assertThat(value("bottom and surface trading light", "flux through depth .5").value())
        .isCloseTo(361.218 / (1 - .5 * .480681), within(5e-3));
  }
}
