package parfield.formats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import java.io.IOException;
import java.net.URISyntaxException;
import java.net.URL;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The files that the fuzzer began with and those that it found, read once more. */
class LightFileCorpusTest {
  private static List<Path> kept(String parser) throws IOException, URISyntaxException {
    URL folder = LightFileCorpusTest.class.getResource("LightFileFuzzingInputs/" + parser);
    try (Stream<Path> files = Files.list(Path.of(folder.toURI()))) {
      return files.sorted().toList();
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"lm63", "eulumdat", "exchangedSpectrum"})
  void readOrRefused(String parser) throws IOException, URISyntaxException {
    List<Path> files = kept(parser);
    assertThat(files).isNotEmpty();
    Consumer<byte[]> trial =
        parser.equals("exchangedSpectrum")
            ? LightFileTrial::exchangedSpectrum
            : LightFileTrial::photometric;
    // Once before: that loads every class, whose memory is no file's.
    trial.accept(Files.readAllBytes(files.get(0)));
    for (Path file : files) {
      byte[] bytes = Files.readAllBytes(file);
      assertThatCode(() -> trial.accept(bytes)).as(file.toString()).doesNotThrowAnyException();
    }
  }
}
