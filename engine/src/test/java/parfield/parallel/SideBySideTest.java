package parfield.parallel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class SideBySideTest {
  @Test
  void resultsStandInTheOrderOfThePieces() {
    assertThat(SideBySide.all(500, i -> i * i))
        .isEqualTo(IntStream.range(0, 500).mapToObj(i -> i * i).toList());
    assertThat(SideBySide.all(0, i -> i)).isEmpty();
  }

  @Test
  void piecesMayBeCutIntoPieces() {
    List<Integer> sums =
        SideBySide.all(
            40, i -> SideBySide.all(40, j -> i * j).stream().mapToInt(Integer::intValue).sum());
    assertThat(sums).isEqualTo(IntStream.range(0, 40).mapToObj(i -> i * 780).toList());
  }

  @Test
  void piecesOfAPoolArePieces() {
    List<Integer> all =
        ForkJoinPool.commonPool().submit(() -> SideBySide.all(100, i -> i + 1)).join();
    assertThat(all).hasSize(100).startsWith(1).endsWith(100);
  }

  @Test
  void eachIsDoneOnce() {
    AtomicInteger done = new AtomicInteger();
    SideBySide.each(1000, i -> done.incrementAndGet());
    assertThat(done).hasValue(1000);
  }

  /** The very exception, with its message: a task of a pool would throw a copy of it. */
  @Test
  void whatThePieceThrowsIsThrown() {
    IllegalArgumentException fault = new IllegalArgumentException("no such lamp");
    assertThatThrownBy(
            () ->
                SideBySide.all(
                    50,
                    i -> {
                      if (i == 30) {
                        throw fault;
                      }
                      return i;
                    }))
        .isSameAs(fault);
  }

  @Test
  void whatWasBegunIsHadLater() {
    Supplier<String> later = SideBySide.ahead(() -> "done");
    assertThat(later.get()).isEqualTo("done");
    assertThat(later.get()).isEqualTo("done");

    IllegalStateException fault = new IllegalStateException("cannot");
    Supplier<String> never =
        SideBySide.ahead(
            () -> {
              throw fault;
            });
    assertThatThrownBy(never::get).isSameAs(fault);
  }
}
