package parfield.web.door;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import java.net.InetAddress;
import java.net.URI;
import java.net.UnknownHostException;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.IntSupplier;
import java.util.function.Supplier;
import parfield.web.page.Screen;

/**
 * Who may come in, asked before anything else of every request.
 *
 * <p>The host that a browser thinks it talks to must be this machine (a foreign page cannot bend a
 * name of its own here). What changes something must come from a page of this server. Who does not
 * sit at this machine needs a session, which pairing gives. A program that posts a meter's lines
 * needs the word for it instead of both. Every answer carries a content security policy that allows
 * no script but the files of this server.
 */
public final class Door implements Screen {
  /** What every answer carries. */
  private static final Map<String, String> HEADERS =
      Map.of(
          "Content-Security-Policy",
          "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data: blob:;"
              + " connect-src 'self'; font-src 'self'; worker-src 'self'; manifest-src 'self';"
              + " form-action 'self'; base-uri 'none'; frame-ancestors 'none'",
          "X-Content-Type-Options",
          "nosniff",
          "Referrer-Policy",
          "same-origin",
          "Cross-Origin-Opener-Policy",
          "same-origin",
          "Cross-Origin-Resource-Policy",
          "same-origin",
          "Permissions-Policy",
          "camera=(), microphone=(), geolocation=()");

  private static final Set<String> OWN_NAMES = Set.of("localhost", "127.0.0.1", "[::1]");
  private static final Set<String> HARMLESS = Set.of("GET", "HEAD", "OPTIONS");

  /** What is open to a device that has no session: how to get one, and how that page looks. */
  private static final Set<String> OPEN_PATHS = Set.of("/pair", "/pair/enter");

  private final IntSupplier port;
  private final Supplier<Set<String>> lanHosts;
  private final Pairing pairing;
  private final MeterToken meters;

  /**
   * A door.
   *
   * @param port on which the server listens, once it does
   * @param lanHosts names under which other devices may ask for this machine; none without {@code
   *     --lan}
   * @param pairing gives sessions
   * @param meters lets a program post a meter's lines
   */
  public Door(
      IntSupplier port, Supplier<Set<String>> lanHosts, Pairing pairing, MeterToken meters) {
    this.port = port;
    this.lanHosts = lanHosts;
    this.pairing = pairing;
    this.meters = meters;
  }

  @Override
  public void register(RoutesConfig routes) {
    routes.before(this::check);
  }

  private void check(Context context) {
    HEADERS.forEach(context::header);
    String host = host(context);
    if (meters.allows(context.method().name(), context.path(), context.header("Authorization"))) {
      return;
    }
    if (context.path().endsWith("/meter") && context.header("Authorization") != null) {
      throw new HttpResponseException(
          401,
          "the word of this request is not the one by which lines are taken: copy it anew from the"
              + " page of the survey; it is another after each start of the server");
    }
    if (!HARMLESS.contains(context.method().name()) && !comesFromOurPage(context, host)) {
      throw new HttpResponseException(
          403, "this request did not come from a page of this server: open the page here again");
    }
    if (!isHere(context.ip())
        && !isOpen(context.path())
        && pairing.session(context.cookie(Pairing.COOKIE)).isEmpty()) {
      throw new HttpResponseException(
          401,
          "this device is not paired: open /pair at the computer that runs Parfield, and scan or"
              + " type the code that it shows");
    }
  }

  private static boolean isOpen(String path) {
    return OPEN_PATHS.contains(path) || path.startsWith("/styles/") || path.startsWith("/scripts/");
  }

  /** The host that was asked for, if it is this machine. */
  private String host(Context context) {
    String host = context.header("Host");
    if (host != null) {
      String lower = host.toLowerCase(Locale.ROOT);
      int colon = lower.lastIndexOf(':');
      boolean stated = colon > lower.lastIndexOf(']');
      String name = stated ? lower.substring(0, colon) : lower;
      String wanted = stated ? lower.substring(colon + 1) : "80";
      if (wanted.equals(String.valueOf(port.getAsInt()))
          && (OWN_NAMES.contains(name) || lanHosts.get().contains(name))) {
        return lower;
      }
    }
    throw new HttpResponseException(
        421,
        "the host of this request is not this machine: ask for the address that parfield serve"
            + " printed");
  }

  private boolean comesFromOurPage(Context context, String host) {
    Optional<String> origin = Optional.ofNullable(context.header("Origin"));
    if (origin.isPresent()) {
      return origin.get().equalsIgnoreCase("http://" + host);
    }
    if ("same-origin".equals(context.header("Sec-Fetch-Site"))) {
      return true;
    }
    String referer = context.header("Referer");
    return referer != null && sameOrigin(referer, host);
  }

  private static boolean sameOrigin(String address, String host) {
    try {
      URI uri = URI.create(address);
      return "http".equals(uri.getScheme()) && host.equalsIgnoreCase(uri.getAuthority());
    } catch (IllegalArgumentException e) {
      return false;
    }
  }

  /** Whether an address is of this machine itself. */
  public static boolean isHere(String address) {
    try {
      return InetAddress.getByName(address).isLoopbackAddress();
    } catch (UnknownHostException e) {
      return false;
    }
  }
}
