package parfield.formats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parfield.plan.NamedTank;
import parfield.units.LengthUnit;

/** A person's own list of tanks. */
class TanksFileTest {
  @TempDir private Path folder;

  private List<NamedTank> read(String text, LengthUnit unit) throws IOException {
    Path file = folder.resolve("tanks.csv");
    Files.writeString(file, text);
    return TanksFile.read(file, unit);
  }

  @Test
  @DisplayName("columns in any order, each in its unit, others left alone")
  void reads() throws IOException {
    List<NamedTank> tanks =
        read(
            "length (in);water_cm;note;name;width\n48;50;old;the long one;55,5\n24;40;;cube;60\n",
            LengthUnit.CM);

    assertThat(tanks).extracting(NamedTank::name).containsExactly("the long one", "cube");
    // 48 in = 121.92 cm: the inch is 2.54 cm by definition (international yard and pound, 1959).
    assertThat(tanks.get(0).tank().length()).isCloseTo(1.2192, within(1e-12));
    assertThat(tanks.get(0).tank().width()).isCloseTo(0.555, within(1e-12));
    assertThat(tanks.get(0).tank().depth()).isEqualTo(0.5);
    assertThat(
            read("name,length,width,water\na,10,10,10\n", LengthUnit.INCH).get(0).tank().length())
        .isCloseTo(0.254, within(1e-12));
  }

  @Test
  @DisplayName("every fault is told with its line and what to do")
  void faults() {
    assertThatThrownBy(
            () ->
                read(
                    "name,length,width,water\n,60,60,50\nbig,60,0,50\nodd,sixty,60,5000\n",
                    LengthUnit.CM))
        .isInstanceOf(InvalidFile.class)
        .hasMessageContaining("tanks.csv:2: name: got nothing")
        .hasMessageContaining("tanks.csv:3: width: got 0, allowed above 0 to 2000 cm")
        .hasMessageContaining("tanks.csv:4: length: got sixty, allowed above 0 to 2000 cm")
        .hasMessageContaining("tanks.csv:4: water: got 5000");
    assertThatThrownBy(() -> read("name,length,width\na,1,2\n", LengthUnit.CM))
        .hasMessageContaining("name the column that holds water");
    assertThatThrownBy(() -> read("name,length_ft,width,water\na,1,2,3\n", LengthUnit.CM))
        .hasMessageContaining("got ft, allowed cm or in");
    assertThatThrownBy(() -> read("name,length,width,water\n", LengthUnit.CM))
        .hasMessageContaining("number of tanks: got 0, allowed 1 to 12");
    assertThatThrownBy(
            () -> read("name,length,width,water\n" + "a,60,60,50\n".repeat(13), LengthUnit.CM))
        .hasMessageContaining("number of tanks: got 13, allowed 1 to 12");
  }
}
