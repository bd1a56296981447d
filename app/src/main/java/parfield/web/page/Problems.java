package parfield.web.page;

import io.javalin.config.RoutesConfig;
import io.javalin.http.ContentTooLargeResponse;
import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import io.javalin.http.HttpResponseException;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import io.javalin.router.EndpointNotFound;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import parfield.answer.Problem;
import parfield.answer.Refusal;
import parfield.formats.InvalidFile;
import parfield.workspace.WorkspaceProblem;

/** Why a request was not done: a page for people, JSON for scripts, always with what to do. */
public final class Problems implements Screen {
  private static final Logger LOG = LoggerFactory.getLogger(Problems.class);

  private static final Problem LARGE =
      Problem.of("what was sent is larger than 64 MiB", "send less, or in several parts");

  /** Where everything begins. */
  private static final String START = "/";

  /** More of an address than this is not shown. */
  private static final int LONGEST = 120;

  private final Pages pages;

  /** Draws problems with these pages. */
  public Problems(Pages pages) {
    this.pages = pages;
  }

  @Override
  public void register(RoutesConfig routes) {
    routes.exception(
        InvalidFile.class,
        (e, context) -> tell(context, HttpStatus.UNPROCESSABLE_CONTENT, Problem.of(e)));
    routes.exception(
        Refusal.class,
        (e, context) -> tell(context, HttpStatus.UNPROCESSABLE_CONTENT, e.problem()));
    routes.exception(
        WorkspaceProblem.class, (e, context) -> tell(context, status(e.kind()), problem(e)));
    routes.exception(
        EndpointNotFound.class,
        (e, context) -> tell(context, HttpStatus.NOT_FOUND, nowhere(context)));
    routes.exception(
        NotFoundResponse.class,
        (e, context) ->
            tell(
                context,
                HttpStatus.NOT_FOUND,
                Problem.of(e.getMessage(), "go back, or begin at the list of benches, " + START)));
    routes.exception(
        HttpResponseException.class,
        (e, context) ->
            tell(
                context,
                HttpStatus.forStatus(e.getStatus()),
                new ContentTooLargeResponse().getMessage().equals(e.getMessage())
                    ? LARGE
                    : Problem.of(e.getMessage())));
    routes.exception(
        Exception.class,
        (e, context) -> {
          if (tooMuch(e)) {
            tell(context, HttpStatus.CONTENT_TOO_LARGE, LARGE);
            return;
          }
          if (garbled(e)) {
            tell(
                context,
                HttpStatus.BAD_REQUEST,
                Problem.of("what was sent cannot be read", "load the page again, and try again"));
            return;
          }
          LOG.error("{} {} failed", context.method(), context.path(), e);
          tell(
              context,
              HttpStatus.INTERNAL_SERVER_ERROR,
              Problem.of(
                  "the program has a fault, and this was not done",
                  "what was stored before is kept; go back and try again"));
        });
    routes.error(
        404,
        context -> {
          if (context.resultInputStream() == null) {
            tell(context, HttpStatus.NOT_FOUND, nowhere(context));
          }
        });
  }

  private static Problem nowhere(Context context) {
    String path = context.path();
    String shown = path.length() > LONGEST ? path.substring(0, LONGEST) + "…" : path;
    return Problem.of(
        context.method().equals(HandlerType.GET) || context.method().equals(HandlerType.HEAD)
            ? "there is no page at " + shown
            : "nothing is taken at " + shown,
        "check the address, or begin at the list of benches, " + START);
  }

  /**
   * Answers where the machine itself gave up, as when its memory is full: the usual way might too.
   */
  public static void tell(HttpServletResponse response, Error error) {
    LOG.error("a request failed", error);
    response.setStatus(HttpStatus.INTERNAL_SERVER_ERROR.getCode());
    response.setContentType("text/plain; charset=utf-8");
    try {
      response
          .getOutputStream()
          .write(
              "The program has a fault or too little memory, and this was not done. What was stored before is kept; go back and try again.\n"
                  .getBytes(StandardCharsets.UTF_8));
    } catch (IOException e) {
      LOG.debug("nobody hears it", e);
    }
  }

  /** The server tells a body that is too large by an exception of its own, deep inside. */
  private static boolean tooMuch(Throwable e) {
    for (Throwable cause = e; cause != null; cause = cause.getCause()) {
      String message = String.valueOf(cause.getMessage());
      if (message.contains("max length exceeded") || message.contains("max file size exceeded")) {
        return true;
      }
    }
    return false;
  }

  /** The server's own exception for it is about to move to another package. */
  private static boolean garbled(Throwable e) {
    for (Throwable cause = e; cause != null; cause = cause.getCause()) {
      if (cause.getClass().getSimpleName().equals("BadMessageException")) {
        return true;
      }
    }
    return false;
  }

  /** The status that a trouble of the workspace is answered with. */
  public static HttpStatus status(WorkspaceProblem.Kind kind) {
    return switch (kind) {
      case NOT_FOUND -> HttpStatus.NOT_FOUND;
      case REFUSED -> HttpStatus.UNPROCESSABLE_CONTENT;
      case STALE -> HttpStatus.CONFLICT;
      case NO_ROOM -> HttpStatus.INSUFFICIENT_STORAGE;
      case UNREADABLE, UNAVAILABLE -> HttpStatus.SERVICE_UNAVAILABLE;
    };
  }

  /** A trouble of the workspace as a problem. */
  public static Problem problem(WorkspaceProblem e) {
    return Problem.of(e.title(), e.hints().toArray(new String[0]));
  }

  /** Answers with a problem, as a page or as JSON, whichever was asked for. */
  public void tell(Context context, HttpStatus status, Problem problem) {
    context.status(status);
    String accept = context.header("Accept");
    if (accept != null && accept.contains("text/html") && context.header("HX-Request") == null) {
      pages.show(
          context,
          "frame/problem.jte",
          Map.of("frame", Frame.plain(problem.title(), Display.of(context)), "problem", problem));
    } else {
      context.contentType("application/problem+json").result(problem.json().toString());
    }
  }
}
