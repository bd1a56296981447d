package parfield.formats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parfield.survey.Reading;
import parfield.tank.Place;

/** A setup whose files and readings are held in memory. */
class HeldSetupTest {
  private static final String SETUP =
      """
      parfield: 1
      length: cm
      tank: {length: 90, width: 60, water: 50}
      fixtures:
        pendant:
          emitters: [{x: 0, y: 0}]
          channels: {blue: {spectrum: spectra/blue.csv}}
          distribution: fitted
      rigs:
        low: {hang: [{fixture: pendant, x: 45, y: 30, height: 15}], dials: {blue: 100}}
      meters: {probe: {applied: true}}
      surveys:
        first: {rig: low, meter: probe, grid: {depths: [10, 25], columns: 3, rows: 2}}
        second: {rig: low, meter: probe, readings: second.csv}
      """;

  private static final Map<String, byte[]> FILES =
      Map.of(
          "spectra/blue.csv",
          blue().getBytes(StandardCharsets.UTF_8),
          "second.csv",
          "x,y,depth,ppfd\n45,30,10,200\n".getBytes(StandardCharsets.UTF_8));

  private static String blue() {
    return IntStream.rangeClosed(40, 70)
        .mapToObj(tens -> 10 * tens + "," + (tens == 45 ? 1 : 0) + "\n")
        .collect(Collectors.joining("", "nm,photons\n", ""));
  }

  @Test
  @DisplayName("a survey without a reading is planned, not taken")
  void planned() {
    Setup setup = SetupFile.read("bench", SETUP, FILES, Map.of("first", List.of()));

    assertThat(setup.surveys()).containsOnlyKeys("second");
    assertThat(setup.plans()).containsOnlyKeys("first", "second");
    assertThat(setup.plans().get("first").grid().orElseThrow().places())
        .contains(new Place(0.15, 0.15, 0.10), new Place(0.45, 0.15, 0.25));
    assertThat(setup.plans().get("second").grid()).isEmpty();
  }

  @Test
  @DisplayName("readings that are held stand for the file")
  void held() {
    Reading reading = new Reading(0, new Place(0.1, 0.2, 0.3), 71.5);

    Setup setup =
        SetupFile.read(
            "bench", SETUP, FILES, Map.of("first", List.of(), "second", List.of(reading)));

    assertThat(setup.surveys().get("second").readings()).containsExactly(reading);
  }

  @Test
  void readingsOutsideTheTankAreFaults() {
    Reading reading = new Reading(0, new Place(0.95, 0.2, 0.3), 71.5);

    assertThatThrownBy(
            () -> SetupFile.read("bench", SETUP, FILES, Map.of("first", List.of(reading))))
        .isInstanceOf(InvalidFile.class)
        .hasMessageContaining(
            "bench:13:10: surveys.first: got 1 readings outside the water: x 95, y 20, depth 30,"
                + " allowed places within the tank; make the tank as large as it is, or take these"
                + " readings back");
  }

  @Test
  @DisplayName("no name in a setup leads to the file system")
  void namesStayInMemory() {
    String escaping = SETUP.replace("spectra/blue.csv", "../../../../etc/passwd");

    assertThatThrownBy(() -> SetupFile.read("bench", escaping, FILES, Map.of("first", List.of())))
        .isInstanceOf(InvalidFile.class)
        .hasMessageContaining("no such file")
        .hasMessageContaining("one of the bench's files");
  }

  @Test
  void gridThatDoesNotFit() {
    String deep = SETUP.replace("[10, 25], columns: 3, rows: 2", "[10, 55], columns: 3");

    assertThatThrownBy(() -> SetupFile.read("bench", deep, FILES, Map.of("first", List.of())))
        .isInstanceOf(InvalidFile.class)
        .hasMessageContaining("surveys.first.grid.depths")
        .hasMessageContaining("got 55, allowed above 0 to 50 cm")
        .hasMessageContaining("columns or rows alone");
  }

  @Test
  @DisplayName("places of one's own are a grid, in the order in which they are written")
  void ownPlaces() {
    String own =
        SETUP.replace(
            "depths: [10, 25], columns: 3, rows: 2", "places: [[45, 30, 15], [20, 10.5, 25]]");

    Setup setup = SetupFile.read("bench", own, FILES, Map.of("first", List.of()));

    assertThat(setup.plans().get("first").grid().orElseThrow().places())
        .containsExactly(new Place(0.45, 0.30, 0.15), new Place(0.20, 0.105, 0.25));
  }

  @Test
  void ownPlacesThatDoNotFit() {
    for (Map.Entry<String, String> wrong :
        Map.of(
                "places: [[95, 30, 15]]", "got 95, allowed 0 to 90 cm",
                "places: [[45, 30]]", "got 2 numbers, allowed 3: x, y, depth",
                "places: []", "got 0 places, allowed 1 to 1000",
                "places: [[45, 30, 15]], depths: [10]", "places beside depths, columns or rows",
                "places: 45", "a list")
            .entrySet()) {
      String text = SETUP.replace("depths: [10, 25], columns: 3, rows: 2", wrong.getKey());

      assertThatThrownBy(() -> SetupFile.read("bench", text, FILES, Map.of("first", List.of())))
          .isInstanceOf(InvalidFile.class)
          .hasMessageContaining("surveys.first.grid.places")
          .hasMessageContaining(wrong.getValue());
    }
  }

  @Test
  @DisplayName("a file of a survey with a grid may be named later, of one without it may not")
  void readingsNamedLater() {
    assertThat(SetupFile.read("bench", SETUP, FILES, Map.of()).surveys())
        .containsOnlyKeys("second");
    String gridless = SETUP.replace(", grid: {depths: [10, 25], columns: 3, rows: 2}", "");

    assertThatThrownBy(() -> SetupFile.read("bench", gridless, FILES, Map.of()))
        .isInstanceOf(InvalidFile.class)
        .hasMessageContaining("surveys.first.readings");
  }

  @Test
  @DisplayName("what a setup names is gathered, each file once, and nothing else")
  void gathered() {
    String text = SETUP.replace("second.csv", "./x/../second.csv");
    Map<String, byte[]> files = new HashMap<>(FILES);
    files.put("unnamed.csv", new byte[1]);

    SetupFile.Gathered gathered =
        SetupFile.gather("bench", text.getBytes(StandardCharsets.UTF_8), files);

    assertThat(gathered.text()).isEqualTo(text);
    assertThat(gathered.files()).containsOnlyKeys("spectra/blue.csv", "second.csv");
    assertThat(gathered.setup().surveys()).containsOnlyKeys("second");
  }

  @Test
  @DisplayName("files of a folder are gathered under the names that the setup gives them")
  void gatheredFolder(@TempDir Path folder) throws IOException {
    Files.createDirectories(folder.resolve("bench/spectra"));
    Files.writeString(folder.resolve("bench/setup.yaml"), SETUP.replace("second.csv", "../up.csv"));
    Files.write(folder.resolve("bench/spectra/blue.csv"), FILES.get("spectra/blue.csv"));
    Files.write(folder.resolve("up.csv"), FILES.get("second.csv"));

    SetupFile.Gathered gathered = SetupFile.gather(folder.resolve("bench/setup.yaml"));

    assertThat(gathered.files()).containsOnlyKeys("spectra/blue.csv", "up.csv");
    Setup again = SetupFile.read("bench", gathered.text(), gathered.files(), Map.of());
    assertThat(again.surveys().get("second").readings())
        .isEqualTo(gathered.setup().surveys().get("second").readings());

    Files.write(folder.resolve("bench/up.csv"), new byte[1]);
    Files.writeString(
        folder.resolve("bench/setup.yaml"),
        gathered.text() + "  third: {rig: low, meter: probe, readings: up.csv}\n");
    assertThatThrownBy(() -> SetupFile.gather(folder.resolve("bench/setup.yaml")))
        .hasMessageContaining("got up.csv, two files of the name up.csv");
  }
}
