package parfield.web.door;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.Cookie;
import io.javalin.http.HttpResponseException;
import io.javalin.http.SameSite;
import io.nayuki.qrcodegen.QrCode;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Supplier;
import parfield.web.page.Display;
import parfield.web.page.Frame;
import parfield.web.page.Pages;
import parfield.web.page.Screen;

/** Lets a phone in: the computer shows a code, the phone enters it. */
public final class PairScreen implements Screen {
  private final Pages pages;
  private final Pairing pairing;
  private final Supplier<List<String>> addresses;

  /**
   * The screen.
   *
   * @param pages draws it
   * @param pairing gives sessions
   * @param addresses under which other devices reach this server; none without {@code --lan}
   */
  public PairScreen(Pages pages, Pairing pairing, Supplier<List<String>> addresses) {
    this.pages = pages;
    this.pairing = pairing;
    this.addresses = addresses;
  }

  @Override
  public void register(RoutesConfig routes) {
    routes.get("/pair", this::show);
    routes.post("/pair/code", this::newCode);
    routes.post("/pair/end/{session}", this::end);
    routes.post("/pair/enter", this::enter);
  }

  private void show(Context context) {
    Frame frame = Frame.plain("Pair a phone", Display.of(context)).withScript("pair.js");
    if (!Door.isHere(context.ip())) {
      pages.show(context, "door/enter.jte", Map.of("frame", frame, "wrong", false));
      return;
    }
    List<String> reach = addresses.get();
    Optional<Pairing.Code> code = reach.isEmpty() ? Optional.empty() : pairing.code();
    pages.show(
        context,
        "door/pair.jte",
        Map.of(
            "frame",
            frame,
            "addresses",
            reach,
            "code",
            code,
            "picture",
            code.map(shown -> new QrPicture(qr(reach.get(0), shown))),
            "sessions",
            pairing.sessions()));
  }

  /** The code goes behind the number sign: it is not sent in an address, and not logged. */
  private static QrCode qr(String address, Pairing.Code code) {
    return QrCode.encodeText(address + "/pair#" + code.code(), QrCode.Ecc.MEDIUM);
  }

  private void newCode(Context context) {
    onlyHere(context);
    if (!addresses.get().isEmpty()) {
      pairing.newCode();
    }
    context.redirect("/pair");
  }

  private void end(Context context) {
    onlyHere(context);
    try {
      pairing.end(UUID.fromString(context.pathParam("session")));
    } catch (IllegalArgumentException e) {
      throw new HttpResponseException(404, "there is no such device");
    }
    context.redirect("/pair");
  }

  private static void onlyHere(Context context) {
    if (!Door.isHere(context.ip())) {
      throw new HttpResponseException(
          403, "devices are let in and sent away at the computer that runs Parfield");
    }
  }

  private void enter(Context context) {
    String typed = Optional.ofNullable(context.formParam("code")).orElse("");
    String device = Optional.ofNullable(context.userAgent()).orElse("a device");
    Optional<String> secret = pairing.enter(typed, device);
    if (secret.isEmpty()) {
      context.status(403);
      pages.show(
          context,
          "door/enter.jte",
          Map.of(
              "frame",
              Frame.plain("Pair a phone", Display.of(context)).withScript("pair.js"),
              "wrong",
              true));
      return;
    }
    Cookie cookie = new Cookie(Pairing.COOKIE, secret.get());
    cookie.setPath("/");
    cookie.setHttpOnly(true);
    cookie.setSameSite(SameSite.STRICT);
    cookie.setMaxAge((int) Pairing.SESSION_LIFE.toSeconds());
    context.cookie(cookie);
    context.redirect("/");
  }
}
