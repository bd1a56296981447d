package parfield.spectrum;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.ejml.data.DMatrixRMaj;

/** The shape of a reference spectrum: least spectral angle. */
final class ShapeGoal extends MixGoal {
  private final PhotonSpectrum reference;
  private final WaveBand over;

  ShapeGoal(PhotonSpectrum reference, WaveBand over) {
    this.reference = Objects.requireNonNull(reference, "reference");
    this.over = Objects.requireNonNull(over, "over");
    if (!(over.photons(reference) > 0)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "the reference holds no photons within %s to %s nm; compare where it has some",
              over.fromNm(),
              over.toNm()));
    }
  }

  @Override
  public Finding<Double> mismatch(PhotonSpectrum light) {
    if (!(over.photons(light) > 0)) {
      return Finding.notDefined(
          String.format(Locale.ROOT, "no photons within %s to %s nm", over.fromNm(), over.toNm()));
    }
    GaussNodes nodes =
        GaussNodes.of(
            over.fromNm(), over.toNm(), List.of(light.wavelengths(), reference.wavelengths()));
    return Finding.of(nodes.angle(nodes.values(light::at), nodes.values(reference::at)));
  }

  @Override
  Problem problem(List<ChannelLight> channels) {
    List<Wavelengths> samples = new ArrayList<>();
    samples.add(reference.wavelengths());
    channels.forEach(channel -> samples.add(channel.spectrum().wavelengths()));
    GaussNodes nodes = GaussNodes.of(over.fromNm(), over.toNm(), samples);
    DMatrixRMaj a = new DMatrixRMaj(nodes.size(), channels.size());
    double[] b = nodes.values(reference::at);
    for (int i = 0; i < nodes.size(); i++) {
      double root = Math.sqrt(nodes.weight(i));
      b[i] *= root;
      for (int c = 0; c < channels.size(); c++) {
        a.set(i, c, root * channels.get(c).spectrum().at(nodes.nm(i)));
      }
    }
    return new Problem(a, b);
  }
}
