package parfield.answer;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import parfield.formats.FixtureLight;
import parfield.formats.PhotometricFile;
import parfield.units.LengthUnit;

/**
 * A photometric file that was left.
 *
 * @param light that was written
 * @param file what it holds, read back
 * @param name of the file
 */
public record LampWrittenAnswer(FixtureLight light, PhotometricFile file, String name)
    implements Answer {
  /** From where on channels of unlike shape are spoken of. */
  private static final double ALIKE = 0.02;

  public LampWrittenAnswer {
    Objects.requireNonNull(light, "light");
    Objects.requireNonNull(file, "file");
    Objects.requireNonNull(name, "name");
  }

  /** What the file cannot tell, one sentence each. */
  public List<String> losses() {
    List<String> losses = new ArrayList<>();
    double worst = light.worstByDirection();
    if (worst > ALIKE) {
      losses.add(
          "The channels differ in shape, and a photometric file has one table for all: photons by"
              + " direction are right in their sum, but off by up to "
              + Numbers.percent(worst)
              + " % where the light is bright. Write a file for each channel instead.");
    }
    if (light.emitters() > 1) {
      losses.add(
          "The file tells of the "
              + light.emitters()
              + " emitters as of one point. Where it is used near the fixture, state the places of"
              + " the emitters beside it.");
    }
    if (file.photons().map(it -> it.channels().isEmpty()).orElse(true)) {
      losses.add(
          "The channels do not fit into the fields of this format: only their sum is told. Write"
              + " LM-63, or a file for each channel.");
    }
    return losses;
  }

  @Override
  public String text(LengthUnit unit) {
    StringBuilder text = new StringBuilder();
    text.append("The light of fixture ").append(light.fixture()).append(" is in ");
    text.append(name).append(".\n\n");
    text.append(new LampFileAnswer(name, file).figures(unit));
    text.append(Lines.section("What it cannot tell", losses()));
    return text.toString();
  }

  @Override
  public ObjectNode json() {
    ObjectNode json = Json.object();
    json.put("fixture", light.fixture());
    json.set("written", new LampFileAnswer(name, file).json());
    Json.strings(json, "losses", losses());
    return json;
  }
}
