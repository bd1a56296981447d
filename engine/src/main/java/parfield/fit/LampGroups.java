package parfield.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import parfield.lamp.Channel;
import parfield.lamp.Fixture;
import parfield.rig.Hanging;
import parfield.spectrum.PhotonSpectrum;
import parfield.survey.Survey;

/**
 * Which channels the surveys can tell apart.
 *
 * <p>Channels of a fixture whose outputs stood in one ratio throughout were only ever seen
 * together: they form a group with one distribution, shared out by their watts.
 */
final class LampGroups {
  private static final double SAME_RATIO = 1e-6;

  /**
   * Channels that were only ever seen together.
   *
   * @param fixture the fixture
   * @param channels their indices in the fixture
   * @param shares of the group's photons at full output by channel, summing to 1
   * @param spectrum of the group as it was seen
   * @param seen whether any survey had it lit
   */
  record Group(
      Fixture fixture,
      List<Integer> channels,
      List<Double> shares,
      PhotonSpectrum spectrum,
      boolean seen) {
    /** Output of the group at a hanging's setting, as a fraction of its full output. */
    double output(Hanging hanging) {
      if (!hanging.fixture().name().equals(fixture.name())) {
        return 0;
      }
      double[] outputs = fixture.outputs(hanging.setting());
      double sum = 0;
      for (int i = 0; i < channels.size(); i++) {
        sum += shares.get(i) * outputs[channels.get(i)];
      }
      return sum;
    }

    /** Names of its channels joined for people. */
    String names() {
      return String.join(
          " + ", channels.stream().map(c -> fixture.channels().get(c).name()).toList());
    }
  }

  private LampGroups() {}

  /** The groups of all fixtures that hang in the surveys and whose distribution is unknown. */
  static List<Group> of(List<Survey> surveys) {
    Map<String, Fixture> fixtures = new TreeMap<>();
    for (Survey survey : surveys) {
      for (Hanging hanging : survey.rig().hangings()) {
        fixtures.putIfAbsent(hanging.fixture().name(), hanging.fixture());
      }
    }
    List<Group> groups = new ArrayList<>();
    for (Fixture fixture : fixtures.values()) {
      groups.addAll(ofFixture(fixture, surveys));
    }
    return List.copyOf(groups);
  }

  private static List<Group> ofFixture(Fixture fixture, List<Survey> surveys) {
    List<double[]> outputs = new ArrayList<>();
    for (Survey survey : surveys) {
      for (Hanging hanging : survey.rig().hangings()) {
        if (hanging.fixture().name().equals(fixture.name())) {
          outputs.add(fixture.outputs(hanging.setting()));
        }
      }
    }
    List<List<Integer>> together = new ArrayList<>();
    for (int c = 0; c < fixture.channels().size(); c++) {
      List<Integer> home = null;
      for (List<Integer> candidate : together) {
        if (proportional(outputs, candidate.get(0), c)) {
          home = candidate;
        }
      }
      if (home == null) {
        home = new ArrayList<>();
        together.add(home);
      }
      home.add(c);
    }
    return together.stream().map(members -> group(fixture, members, outputs)).toList();
  }

  private static boolean proportional(List<double[]> outputs, int a, int b) {
    double sumA = outputs.stream().mapToDouble(row -> row[a]).sum();
    double sumB = outputs.stream().mapToDouble(row -> row[b]).sum();
    if (sumA == 0 || sumB == 0) {
      return false;
    }
    return outputs.stream().allMatch(row -> Math.abs(row[a] / sumA - row[b] / sumB) < SAME_RATIO);
  }

  private static Group group(Fixture fixture, List<Integer> members, List<double[]> outputs) {
    boolean watts = members.stream().allMatch(c -> fixture.channels().get(c).watts().orElse(0) > 0);
    double[] shares = new double[members.size()];
    double total = 0;
    for (int i = 0; i < shares.length; i++) {
      Channel channel = fixture.channels().get(members.get(i));
      shares[i] = watts ? channel.watts().getAsDouble() : 1;
      total += shares[i];
    }
    List<Double> parts = new ArrayList<>();
    for (double share : shares) {
      parts.add(share / total);
    }
    boolean seen = outputs.stream().anyMatch(row -> members.stream().anyMatch(c -> row[c] > 0));
    return new Group(fixture, List.copyOf(members), parts, mixed(fixture, members, parts), seen);
  }

  /** The photons of the members together, on a grid of 2 nm. */
  private static PhotonSpectrum mixed(Fixture fixture, List<Integer> members, List<Double> parts) {
    if (members.size() == 1) {
      return fixture.channels().get(members.get(0)).spectrumOrFlat();
    }
    double step = 2;
    int points = (int) ((PhotonSpectrum.PAR_TO_NM - PhotonSpectrum.PAR_FROM_NM) / step) + 1;
    double[] wavelengths = new double[points];
    double[] photons = new double[points];
    for (int m = 0; m < members.size(); m++) {
      PhotonSpectrum spectrum = fixture.channels().get(members.get(m)).spectrumOrFlat();
      double scale =
          parts.get(m) / spectrum.photons(PhotonSpectrum.PAR_FROM_NM, PhotonSpectrum.PAR_TO_NM);
      for (int i = 0; i < points; i++) {
        wavelengths[i] = PhotonSpectrum.PAR_FROM_NM + i * step;
        photons[i] += scale * spectrum.at(wavelengths[i]);
      }
    }
    return new PhotonSpectrum(wavelengths, photons);
  }
}
