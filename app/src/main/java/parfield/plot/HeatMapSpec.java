package parfield.plot;

import java.util.List;
import java.util.Objects;
import parfield.survey.Band;

/**
 * A plane of PPFD as a picture: a level one seen from above, or an upright one seen from the front.
 *
 * @param caption title and summary
 * @param scene the tank and what is drawn over the plane
 * @param ppfd the values [µmol m⁻² s⁻¹]
 * @param scale range of the colours; values beyond it take the colour of its end
 * @param levels PPFD of the thin isolines [µmol m⁻² s⁻¹]
 * @param bands whose ends are drawn as thick isolines with the band's name
 * @param quantity what the colours mean, with its unit
 */
public record HeatMapSpec(
    Caption caption,
    Scene scene,
    Raster ppfd,
    Scale scale,
    List<Double> levels,
    List<Band> bands,
    String quantity) {
  /** What the colours mean where nothing else is said. */
  public static final String PPFD = "PPFD, µmol m⁻² s⁻¹";

  public HeatMapSpec {
    Objects.requireNonNull(quantity, "quantity");
    Objects.requireNonNull(caption, "caption");
    Objects.requireNonNull(scene, "scene");
    Objects.requireNonNull(ppfd, "ppfd");
    Objects.requireNonNull(scale, "scale");
    levels = List.copyOf(levels);
    bands = List.copyOf(bands);
  }

  /** The scale and levels that suit the values, no bands. */
  public static HeatMapSpec of(Caption caption, Scene scene, Raster ppfd) {
    Scale scale = Scale.of(List.of(ppfd));
    return new HeatMapSpec(caption, scene, ppfd, scale, scale.levels(), List.of(), PPFD);
  }

  /** This picture on another scale, with that scale's levels. */
  public HeatMapSpec withScale(Scale newScale) {
    return new HeatMapSpec(caption, scene, ppfd, newScale, newScale.levels(), bands, quantity);
  }

  /** This picture with the ends of bands. */
  public HeatMapSpec withBands(List<Band> newBands) {
    return new HeatMapSpec(caption, scene, ppfd, scale, levels, newBands, quantity);
  }

  /** This picture of something else than PPFD. */
  public HeatMapSpec withQuantity(String newQuantity) {
    return new HeatMapSpec(caption, scene, ppfd, scale, levels, bands, newQuantity);
  }
}
