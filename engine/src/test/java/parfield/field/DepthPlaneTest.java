package parfield.field;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import parfield.SeededLaw;

class DepthPlaneTest {
  @Test
  void groupsEveryPlaceOnceWithItsCoordinates() {
    SeededLaw.holds(
        100,
        random -> {
          int n = 1 + random.nextInt(200);
          double[] x = new double[n];
          double[] y = new double[n];
          double[] depth = new double[n];
          for (int i = 0; i < n; i++) {
            x[i] = random.nextInt(6) / 10.0;
            y[i] = random.nextInt(4) == 0 ? -0.0 : random.nextDouble();
            depth[i] = random.nextInt(3) / 7.0;
          }
          List<DepthPlane> planes = DepthPlane.of(x, y, depth);
          boolean[] seen = new boolean[n];
          double last = -1;
          for (DepthPlane plane : planes) {
            assertThat(plane.depth()).isGreaterThan(last);
            last = plane.depth();
            assertThat(plane.x()).isSorted().doesNotHaveDuplicates();
            for (int m = 0; m < plane.members().length; m++) {
              int i = plane.members()[m];
              assertThat(seen[i]).isFalse();
              seen[i] = true;
              assertThat(plane.depth()).isEqualTo(depth[i]);
              assertThat(plane.x()[plane.xIndex()[m]]).isEqualTo(x[i]);
              assertThat(plane.y()[plane.yIndex()[m]]).isEqualTo(y[i]);
            }
          }
          assertThat(seen).doesNotContain(false);
        });
  }

  @Test
  void aMemoComputesOnceAndStartsAfreshWhenFull() {
    Memo<Integer, Integer> memo = new Memo<>(3);
    AtomicInteger computed = new AtomicInteger();
    for (int key : new int[] {1, 2, 1, 2, 3, 3}) {
      assertThat(
              memo.get(
                  key,
                  k -> {
                    computed.incrementAndGet();
                    return 10 * k;
                  }))
          .isEqualTo(10 * key);
    }
    assertThat(computed).hasValue(3);
    memo.get(4, k -> 40);
    assertThat(memo.get(1, k -> 11)).as("forgotten when the fourth came").isEqualTo(11);
    assertThat(memo.get(4, k -> 41)).isEqualTo(40);
  }
}
