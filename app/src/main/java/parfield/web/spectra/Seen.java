package parfield.web.spectra;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import parfield.answer.Answer;
import parfield.answer.Problem;
import parfield.answer.Table;

/**
 * What a view shows: the tables, pictures and sentences of an answer, in this order.
 *
 * @param summary the answer in one line
 * @param parts in their order
 * @param answer from which all of it comes; empty if there is none
 * @param problem why there is none
 */
public record Seen(
    String summary, List<Part> parts, Optional<Answer> answer, Optional<Problem> problem) {
  public Seen {
    Objects.requireNonNull(summary, "summary");
    parts = List.copyOf(parts);
    Objects.requireNonNull(answer, "answer");
    Objects.requireNonNull(problem, "problem");
  }

  /** One piece of a view. */
  public sealed interface Part permits Figures, Picture, Sentences {}

  /**
   * A table.
   *
   * @param caption what it is, and what shares are of
   * @param table its cells
   * @param folded whether it is opened by hand, as the twin of a picture
   */
  public record Figures(String caption, Table table, boolean folded) implements Part {}

  /**
   * A picture.
   *
   * @param svg of it, safe to stand in a page
   */
  public record Picture(String svg) implements Part {
    /**
     * A picture as it may stand in a page: the page's policy allows no style in an attribute, and
     * its digits are tabular anyway.
     */
    public static Picture of(String svg) {
      return new Picture(svg.replace(" style=\"font-variant-numeric:tabular-nums\"", ""));
    }
  }

  /**
   * Sentences under a heading.
   *
   * @param heading of them
   * @param sentences one or more
   * @param caution whether they are to be heeded
   */
  public record Sentences(String heading, List<String> sentences, boolean caution)
      implements Part {}

  /** Nothing but why. */
  static Seen refused(Problem problem) {
    return new Seen(problem.title(), List.of(), Optional.empty(), Optional.of(problem));
  }

  /** Gathers the parts of a view. For one thread. */
  static final class Builder {
    private final List<Part> parts = new ArrayList<>();

    Builder picture(String svg) {
      parts.add(Picture.of(svg));
      return this;
    }

    Builder table(String caption, Table table) {
      parts.add(new Figures(caption, table, false));
      return this;
    }

    Builder folded(String caption, Table table) {
      parts.add(new Figures(caption, table, true));
      return this;
    }

    Builder sentences(String heading, List<String> sentences) {
      if (!sentences.isEmpty()) {
        parts.add(new Sentences(heading, List.copyOf(sentences), false));
      }
      return this;
    }

    Builder cautions(String heading, List<String> sentences) {
      if (!sentences.isEmpty()) {
        parts.add(new Sentences(heading, List.copyOf(sentences), true));
      }
      return this;
    }

    Seen of(String summary, Answer answer) {
      return new Seen(summary, parts, Optional.of(answer), Optional.empty());
    }
  }
}
