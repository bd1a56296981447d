package parfield.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import org.junit.jupiter.api.Test;

class StatusLineTest {
  private final StringWriter err = new StringWriter();

  @Test
  void showsABarAndWordsOnOneLineAndWipesItInTheEnd() {
    try (StatusLine status = new StatusLine(new PrintWriter(err), true)) {
      status.show(0.42, "best so far");
      status.show("done");
    }

    assertThat(err.toString().split("\r", -1))
        .containsExactly(
            "",
            "[########            ]  42 %  best so far",
            "done" + " ".repeat(37),
            " ".repeat(4),
            "");
  }

  @Test
  void isNeverWiderThanATerminal() {
    try (StatusLine status = new StatusLine(new PrintWriter(err), true)) {
      status.show(1, "x".repeat(200));
    }

    assertThat(err.toString().split("\r")).allSatisfy(l -> assertThat(l.length()).isLessThan(80));
    assertThat(err.toString()).contains("x…");
  }

  @Test
  void saysNothingWhereThereIsNoTerminal() {
    try (StatusLine status = new StatusLine(new PrintWriter(err), false)) {
      status.show(0.5, "best so far");
    }

    assertThat(err.toString()).isEmpty();
  }
}
