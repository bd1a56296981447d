package parfield.formats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parfield.tank.Place;
import parfield.tank.Tank;
import parfield.units.LengthUnit;

class PlacesFileTest {
  private static final Tank TANK = Tank.of(0.9, 0.6, 0.5);

  @TempDir private Path folder;

  private PlacesFile.Read read(String text, Double... depths) throws IOException {
    return PlacesFile.read(
        Files.writeString(folder.resolve("places.csv"), text),
        TANK,
        LengthUnit.CM,
        List.of(depths));
  }

  @Test
  void columnsComeInAnyOrderEachWithItsUnit() throws IOException {
    PlacesFile.Read read = read("depth_in,y_cm,x (cm)\n10,20,30\n");

    assertThat(read.places())
        .singleElement()
        .satisfies(
            place -> {
              assertThat(place.x()).isEqualTo(0.30);
              assertThat(place.y()).isEqualTo(0.20);
              assertThat(place.depth()).isEqualTo(0.254);
            });
    assertThat(read.assumptions()).isEmpty();
  }

  @Test
  void unstatedUnitsAreTakenFromTheSetupAndToldSo() throws IOException {
    PlacesFile.Read read = read("x,y,depth_cm,note\n10,20,30,a\n");

    assertThat(read.places()).containsExactly(new Place(0.1, 0.2, 0.3));
    assertThat(read.assumptions())
        .containsExactly(
            "places.csv: the column note is not used",
            "places.csv states no unit for x, y: cm taken, as in the setup");
  }

  @Test
  void placesWithoutDepthsComeOnceForEachDepthGiven() throws IOException {
    PlacesFile.Read read = read("x_cm;y_cm\n10,5;20\n30;40\n", 0.15, 0.3);

    assertThat(read.places())
        .containsExactly(
            new Place(0.105, 0.2, 0.15),
            new Place(0.3, 0.4, 0.15),
            new Place(0.105, 0.2, 0.3),
            new Place(0.3, 0.4, 0.3));
  }

  @Test
  void faultsAreTold() {
    assertFault(
        "x_cm,y_cm\n1,2\n",
        "places.csv:1: depth: got neither a column nor a depth beside the file, allowed one of them; add a column depth_cm, or give --depth");
    assertFault(
        "x_cm,y_cm,depth_cm\n",
        "places.csv: number of places: got 0, allowed 1 or more; write a row for each place");
    assertFault(
        "x_cm,y_cm,depth_cm\n91,2,3\n",
        "places.csv:2: x: got 91 cm, allowed 0 to 90 cm, inside the tank; x runs from the left pane: correct the reading or the tank");
    assertFault(
        "x_cm,y_cm,depth_cm\n9,NaN,3\n",
        "places.csv:2: y: got NaN, allowed a number; write a number");
    assertFault(
        "x_cm,depth_cm\n9,3\n",
        "places.csv:1: columns: got x_cm, depth_cm, allowed x, y, depth; name the column that holds y");
    assertFault(
        "x_cm,x_in,y_cm,depth_cm\n9,3,1,1\n",
        "places.csv:1: columns: got two for x, allowed one; delete one of them");
  }

  @Test
  void depthsAreStatedOnce() {
    assertThatThrownBy(() -> read("x_cm,y_cm,depth_cm\n1,2,3\n", 0.1))
        .hasMessage(
            "places.csv:1: depth: got a column and a depth beside the file, allowed one of them; delete the column, or leave --depth out");
  }

  private void assertFault(String text, String message) {
    assertThatThrownBy(() -> read(text)).isInstanceOf(InvalidFile.class).hasMessage(message);
  }
}
