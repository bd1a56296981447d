package parfield.tank;

import java.util.Objects;

/**
 * The four vertical panes.
 *
 * @param left pane at x = 0
 * @param right pane at x = length
 * @param front pane at y = 0
 * @param back pane at y = width
 */
public record Walls(Wall left, Wall right, Wall front, Wall back) {
  public Walls {
    Objects.requireNonNull(left, "left");
    Objects.requireNonNull(right, "right");
    Objects.requireNonNull(front, "front");
    Objects.requireNonNull(back, "back");
  }

  /** Four panes alike. */
  public static Walls all(Wall wall) {
    return new Walls(wall, wall, wall, wall);
  }

  /** The pane on one side. */
  public Wall on(Side side) {
    return switch (side) {
      case LEFT -> left;
      case RIGHT -> right;
      case FRONT -> front;
      case BACK -> back;
    };
  }

  /** These panes with the one on {@code side} replaced. */
  public Walls with(Side side, Wall wall) {
    return new Walls(
        side == Side.LEFT ? wall : left,
        side == Side.RIGHT ? wall : right,
        side == Side.FRONT ? wall : front,
        side == Side.BACK ? wall : back);
  }
}
