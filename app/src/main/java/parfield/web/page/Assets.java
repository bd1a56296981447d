package parfield.web.page;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Pattern;

/**
 * The scripts and styles of the pages, out of the program itself and kept once asked for. A name
 * holds small letters, digits and hyphens, in one folder at most, so that it reaches nothing else.
 */
public final class Assets implements Screen {
  private static final Pattern NAME = Pattern.compile("(?:[a-z0-9-]+/)?[a-z0-9-]+\\.(css|js|svg)");

  private static final Map<String, String> TYPES =
      Map.of(
          "css", "text/css; charset=utf-8",
          "js", "text/javascript; charset=utf-8",
          "svg", "image/svg+xml");

  private final Map<String, Asset> known = new ConcurrentHashMap<>();

  private record Asset(byte[] bytes, String type, String etag) {}

  @Override
  public void register(RoutesConfig routes) {
    routes.get("/scripts/<name>", context -> send(context, "scripts"));
    routes.get("/styles/<name>", context -> send(context, "styles"));
  }

  private void send(Context context, String folder) {
    String name = context.pathParam("name");
    Asset asset =
        Optional.ofNullable(known.computeIfAbsent(folder + "/" + name, Assets::read))
            .orElseThrow(() -> new NotFoundResponse("there is no page at " + context.path()));
    context.header("ETag", asset.etag).header("Cache-Control", "no-cache");
    if (asset.etag.equals(context.header("If-None-Match"))) {
      context.status(304);
    } else {
      context.contentType(asset.type).result(asset.bytes);
    }
  }

  /** The file of a path, or null if there is none: what is not there is not kept. */
  private static Asset read(String path) {
    String name = path.substring(path.indexOf('/') + 1);
    if (!NAME.matcher(name).matches()) {
      return null;
    }
    try (InputStream in = Assets.class.getResourceAsStream("/parfield/web/" + path)) {
      if (in == null) {
        return null;
      }
      byte[] bytes = in.readAllBytes();
      String type = TYPES.get(name.substring(name.lastIndexOf('.') + 1));
      return new Asset(bytes, type, '"' + UUID.nameUUIDFromBytes(bytes).toString() + '"');
    } catch (IOException e) {
      throw new UncheckedIOException("a part of a page cannot be read: " + path, e);
    }
  }
}
