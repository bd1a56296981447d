package parfield.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parfield.answer.Refusal;

class OutputFileTest {
  @TempDir private Path folder;

  @Test
  void aFileThatIsThereIsReplacedWhole() throws IOException {
    Path file = Files.writeString(folder.resolve("out.csv"), "a much longer text than the new one");

    OutputFile.check(file, List.of());
    OutputFile.write(file, "µ\n");

    assertThat(file).hasContent("µ\n");
    assertThat(Run.files(folder)).containsExactly("out.csv");
  }

  @Test
  void anInputIsNotOverwrittenByWhateverNameItGoes() throws IOException {
    Path input = Files.writeString(folder.resolve("setup.yaml"), "x");
    Path link = Files.createSymbolicLink(folder.resolve("link"), input);

    assertThatThrownBy(() -> OutputFile.check(link, List.of(input)))
        .isInstanceOf(Refusal.class)
        .hasMessage(link + " is read by this command: it is not overwritten");
  }

  @Test
  void theFolderMustBeThere() {
    assertThatThrownBy(() -> OutputFile.check(folder.resolve("no/out.csv"), List.of()))
        .isInstanceOf(Refusal.class)
        .hasMessageEndingWith("cannot be written: there is no folder " + folder.resolve("no"));
    assertThatThrownBy(() -> OutputFile.check(folder, List.of()))
        .isInstanceOf(Refusal.class)
        .hasMessage(folder + " cannot be written: it is a folder");
  }
}
