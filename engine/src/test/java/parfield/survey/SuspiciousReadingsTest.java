package parfield.survey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parfield.rig.Rig;
import parfield.survey.Suspicion.Kind;
import parfield.tank.Place;
import parfield.tank.Tank;

class SuspiciousReadingsTest {
  /** Seeds apart from those that the hurdles were set on. */
  private static final long SEED = 7_000_000;

  private static final Survey CLEAN = new SimulatedSurvey(3).clean();

  @ParameterizedTest
  @CsvSource({
    "open-1/low.csv, 0.9, 0.6, 0.5",
    "open-1/high.csv, 0.9, 0.6, 0.5",
    "open-2/near.csv, 1.2, 0.6, 0.55"
  })
  void findsNothingInTheOpenBenches(String file, double length, double width, double depth)
      throws IOException {
    Path folder = Path.of("..", "..", "shared", "challenge");
    assumeTrue(Files.isDirectory(folder), "the sibling folder shared/challenge is absent");
    List<Reading> readings = new ArrayList<>();
    List<String> lines = Files.readAllLines(folder.resolve(file));
    for (int line = 2; line <= lines.size(); line++) {
      double[] cells =
          Arrays.stream(lines.get(line - 1).split(",")).mapToDouble(Double::parseDouble).toArray();
      readings.add(
          new Reading(line, new Place(cells[0] / 100, cells[1] / 100, cells[2] / 100), cells[3]));
    }
    Rig rig = CLEAN.rig().withTank(Tank.of(length, width, depth));
    assertThat(SuspiciousReadings.find(new Survey(file, rig, CLEAN.meter(), readings))).isEmpty();
  }

  /** Measured on 1800 surveys: 1.6 % of clean grids raise an alarm. */
  @Test
  void raisesFewFalseAlarms() {
    List<Long> alarms =
        LongStream.range(SEED, SEED + 150)
            .parallel()
            .filter(seed -> !SuspiciousReadings.find(new SimulatedSurvey(seed).clean()).isEmpty())
            .boxed()
            .toList();
    // At a rate of 2 %, more than 8 of 150 come up in less than one sample in a hundred.
    assertThat(alarms).as("seeds with a false alarm").hasSizeLessThanOrEqualTo(8);
  }

  /**
   * Measured on 200 of each kind: slips of the decimal point 98 %, digits exchanged 90 %, rows
   * exchanged 84 %, a stuck display 99 %.
   */
  @Test
  void findsBlunders() {
    List<Long> missed =
        LongStream.range(SEED + 1000, SEED + 1200)
            .parallel()
            .filter(
                seed -> {
                  SimulatedSurvey simulated = new SimulatedSurvey(seed);
                  Survey survey = simulated.clean();
                  SplittableRandom random = simulated.random();
                  Blunder blunder =
                      switch ((int) (seed % 4)) {
                        case 0 -> Blunder.decimal(survey, random);
                        case 1 -> Blunder.digits(survey, random);
                        case 2 -> Blunder.rows(survey, random);
                        default -> Blunder.stuck(survey, random);
                      };
                  return !blunder.isNamedIn(SuspiciousReadings.find(blunder.survey()));
                })
            .boxed()
            .toList();
    // At least 90 % of 200.
    assertThat(missed).as("seeds of missed blunders").hasSizeLessThanOrEqualTo(20);
  }

  @Test
  void namesASlipOfTheDecimalPoint() {
    double value = CLEAN.readings().get(20).value();
    Survey slipped = Blunder.with(CLEAN, List.of(20), List.of(value * 10)).survey();
    assertThat(SuspiciousReadings.find(slipped))
        .singleElement()
        .satisfies(
            suspicion -> {
              assertThat(suspicion.kind()).isEqualTo(Kind.DECIMAL_SLIP);
              assertThat(suspicion.readings()).containsExactly(20);
              assertThat(suspicion.reason())
                  .matches(
                      String.format(
                          "%s read where its neighbours suggest \\d+; %s would fit: a slip of the"
                              + " decimal point\\?",
                          Digits.typed(value * 10), Digits.typed(value)));
            });
  }

  @Test
  void aReadingIsJudgedByItsPlaceNotItsTurn() {
    for (long seed = SEED + 2000; seed < SEED + 2010; seed++) {
      SimulatedSurvey simulated = new SimulatedSurvey(seed);
      Blunder blunder = Blunder.digits(simulated.clean(), simulated.random());
      List<Reading> shuffled = new ArrayList<>(blunder.survey().readings());
      Collections.shuffle(shuffled, new Random(seed));
      assertThat(linesAndKinds(blunder.survey().withReadings(shuffled)))
          .as("seed %d", seed)
          .isEqualTo(linesAndKinds(blunder.survey()));
    }
  }

  private static List<String> linesAndKinds(Survey survey) {
    return SuspiciousReadings.find(survey).stream()
        .map(
            suspicion ->
                suspicion.kind()
                    + " "
                    + suspicion.readings().stream()
                        .map(i -> survey.readings().get(i).line())
                        .sorted()
                        .toList())
        .sorted()
        .toList();
  }

  @Test
  void namesReadingsBelowTheAmbient() {
    Meter meter = new Meter("probe", 1.32, false, 4, 0.05, 0.02, 0.007, 1);
    Survey survey =
        new Survey(
            "low",
            CLEAN.rig(),
            meter,
            List.of(
                new Reading(1, new Place(0.1, 0.1, 0.1), 120),
                new Reading(2, new Place(0.2, 0.1, 0.1), 3)));
    assertThat(SuspiciousReadings.find(survey))
        .containsExactly(
            new Suspicion(
                Kind.NEGATIVE,
                List.of(1),
                "3 read, less than the ambient of 4 that is subtracted: read it or the ambient"
                    + " again"));
  }

  @Test
  void smallGridsRaiseNoAlarm() {
    List<Reading> eleven = CLEAN.readings().subList(0, 11);
    Survey slipped = Blunder.with(CLEAN.withReadings(eleven), List.of(5), List.of(9999.0)).survey();
    assertThat(SuspiciousReadings.find(slipped)).isEmpty();
    assertThat(SuspiciousReadings.find(CLEAN.withReadings(CLEAN.readings().subList(0, 1))))
        .isEmpty();
  }

  @Test
  void darkGridsRaiseNoAlarm() {
    List<Reading> dark =
        CLEAN.readings().stream()
            .map(reading -> new Reading(reading.line(), reading.place(), 0))
            .toList();
    assertThat(SuspiciousReadings.find(CLEAN.withReadings(dark)))
        .allSatisfy(suspicion -> assertThat(suspicion.kind()).isEqualTo(Kind.STUCK));
  }

  @Test
  void aModelExplainsEachSlip() {
    double[] predicted = IntStream.range(0, 24).mapToDouble(i -> 153 + 40 * (i % 6)).toArray();
    double[] sigma = Arrays.stream(predicted).map(ppfd -> 0.03 * ppfd).toArray();
    double[] shown = predicted.clone();
    shown[0] = 1530; // slip of the decimal point
    shown[6] = 513; // digits exchanged
    shown[14] = predicted[17];
    shown[17] = predicted[14]; // two places exchanged
    shown[22] = 900; // for no reason that shows
    List<Suspicion> found = SuspiciousReadings.against(grid(shown), predicted, sigma);
    assertThat(found)
        .containsExactly(
            new Suspicion(
                Kind.DECIMAL_SLIP,
                List.of(0),
                "1530 read where 153 ± 4.6 is predicted; 153 would fit: a slip of the decimal"
                    + " point?"),
            new Suspicion(
                Kind.DIGITS_SWAPPED,
                List.of(6),
                "513 read where 153 ± 4.6 is predicted; 153 would fit: two digits exchanged?"),
            new Suspicion(
                Kind.PLACES_SWAPPED,
                List.of(14, 17),
                "353 and 233 read where 233 ± 7.0, 353 ± 11 are predicted: each would fit at the"
                    + " other's place; exchanged?"),
            new Suspicion(
                Kind.UNEXPLAINED,
                List.of(22),
                "900 read where 313 ± 9.4 is predicted, 62.5 standard errors away: read it"
                    + " again"));
  }

  @Test
  void aModelExplainsExchangedLinesAndAStuckDisplay() {
    double[] predicted =
        IntStream.range(0, 24).mapToDouble(i -> 100 + 30 * (i % 6) + 90 * (i / 6)).toArray();
    double[] sigma = Arrays.stream(predicted).map(ppfd -> 0.03 * ppfd).toArray();
    double[] rows = predicted.clone();
    for (int i = 0; i < 6; i++) {
      rows[6 + i] = predicted[18 + i];
      rows[18 + i] = predicted[6 + i];
    }
    assertThat(SuspiciousReadings.against(grid(rows), predicted, sigma))
        .containsExactly(
            new Suspicion(
                Kind.ROWS_SWAPPED,
                List.of(6, 7, 8, 9, 10, 11, 18, 19, 20, 21, 22, 23),
                "rows (370 400 430 460 490 520) and (190 220 250 280 310 340) of one depth fit much"
                    + " better at each other's place: exchanged?"));

    double[] columns = predicted.clone();
    for (int j = 0; j < 4; j++) {
      columns[6 * j + 1] = predicted[6 * j + 5];
      columns[6 * j + 5] = predicted[6 * j + 1];
    }
    assertThat(SuspiciousReadings.against(grid(columns), predicted, sigma))
        .singleElement()
        .satisfies(
            suspicion -> {
              assertThat(suspicion.kind()).isEqualTo(Kind.COLUMNS_SWAPPED);
              assertThat(suspicion.readings()).containsExactly(1, 5, 7, 11, 13, 17, 19, 23);
            });

    double[] stuck = predicted.clone();
    Arrays.fill(stuck, 6, 10, 190);
    assertThat(SuspiciousReadings.against(grid(stuck), predicted, sigma))
        .containsExactly(
            new Suspicion(
                Kind.STUCK,
                List.of(7, 8, 9),
                "190 read 4 times in succession where 220 ± 6.6, 250 ± 7.5, 280 ± 8.4 are"
                    + " predicted: did the display stick?"));
    assertThat(SuspiciousReadings.against(grid(predicted), predicted, sigma)).isEmpty();
  }

  @Test
  void speaksAsTheMeterShows() {
    // Shown = PPFD / 1.25 + 2 where the immersion factor is still to be applied.
    Meter meter = new Meter("probe", 1.25, false, 2, 0.05, 0.02, 0.007, 1);
    Survey survey =
        new Survey(
            "low", CLEAN.rig(), meter, List.of(new Reading(1, new Place(0.1, 0.1, 0.1), 90)));
    assertThat(
            SuspiciousReadings.against(survey, new double[] {200}, new double[] {10})
                .get(0)
                .reason())
        .isEqualTo("90 read where 162 ± 8.0 is predicted, 9.0 standard errors away: read it again");
  }

  @Test
  void saysWhatIsWrong() {
    Survey survey = grid(new double[] {100, 200, 300});
    assertThatThrownBy(
            () -> SuspiciousReadings.against(survey, new double[2], new double[] {1, 1, 1}))
        .hasMessage("survey low has 3 readings but got 2 predictions");
    assertThatThrownBy(() -> SuspiciousReadings.against(survey, new double[3], new double[4]))
        .hasMessage("survey low has 3 readings but got 4 standard errors");
    assertThatThrownBy(
            () ->
                SuspiciousReadings.against(
                    survey, new double[] {100, 200, 300}, new double[] {1, 0, 1}))
        .hasMessage(
            "a prediction must be finite and its standard error above 0; got 200.0 ± 0.0 for"
                + " reading 2 of survey low");
  }

  /** Six columns, as many rows as there are values for. */
  private static Survey grid(double[] shown) {
    List<Reading> readings = new ArrayList<>();
    for (int i = 0; i < shown.length; i++) {
      int row = i / 6;
      readings.add(
          new Reading(i + 2, new Place(0.075 + 0.1 * (i % 6), 0.05 + 0.1 * row, 0.15), shown[i]));
    }
    return new Survey("low", CLEAN.rig().withTank(Tank.of(0.9, 0.6, 0.5)), CLEAN.meter(), readings);
  }
}
