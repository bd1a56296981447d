package parfield.web;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import parfield.demo.DemoBench;
import parfield.workspace.Location;
import parfield.workspace.Workspace;

/** A server over a workspace of its own, on a free port, and a client that sits at this machine. */
public final class TestServer implements AutoCloseable {
  private final Workspace workspace;
  private final Server server;
  private final HttpClient client = HttpClient.newHttpClient();

  private TestServer(Workspace workspace, Server server) {
    this.workspace = workspace;
    this.server = server;
  }

  /** A server over an empty workspace in a folder. */
  public static TestServer start(Path folder) {
    return start(folder, false);
  }

  /** A server over an empty workspace in a folder, maybe open to the network. */
  public static TestServer start(Path folder, boolean lan) {
    Workspace workspace = Workspace.open(Location.parse(folder.resolve("workspace.db").toString()));
    return new TestServer(workspace, Server.start(workspace, new Server.Options(0, lan, "test")));
  }

  /** The sample bench, put into the workspace; its id. */
  public UUID sample() {
    return workspace
        .benchFiles()
        .take("Sample bench", true, DemoBench.SETUP, Sample.FILES, "test")
        .bench();
  }

  /** The sample bench's files, made once: its readings are computed. */
  private static final class Sample {
    static final Map<String, byte[]> FILES = new LinkedHashMap<>();

    static {
      DemoBench.files(1)
          .forEach((name, text) -> FILES.put(name, text.getBytes(StandardCharsets.UTF_8)));
    }
  }

  public Workspace workspace() {
    return workspace;
  }

  public Server server() {
    return server;
  }

  /** The address of a path. */
  public String address(String path) {
    return server.address() + path;
  }

  /** A request to a path, to be filled in. */
  public HttpRequest.Builder request(String path) {
    return HttpRequest.newBuilder(URI.create(address(path)));
  }

  /** Sends a request. */
  public HttpResponse<String> send(HttpRequest request) {
    try {
      return client.send(request, BodyHandlers.ofString());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }

  /** Asks for a page. */
  public HttpResponse<String> get(String path) {
    return send(request(path).header("Accept", "text/html").GET().build());
  }

  /** Sends a form as a page of this server would. */
  public HttpResponse<String> post(String path, Map<String, String> form) {
    return post(path, List.copyOf(form.entrySet()));
  }

  /** Sends a form in which a field may come more than once. */
  public HttpResponse<String> post(String path, List<Map.Entry<String, String>> form) {
    String body =
        form.stream()
            .map(field -> encoded(field.getKey()) + "=" + encoded(field.getValue()))
            .collect(Collectors.joining("&"));
    return send(
        request(path)
            .header("Origin", server.address())
            .header("Accept", "text/html")
            .header("Content-Type", "application/x-www-form-urlencoded")
            .POST(BodyPublishers.ofString(body))
            .build());
  }

  /** Sends JSON as a script of this server would. */
  public HttpResponse<String> postJson(String path, String json) {
    return send(
        request(path)
            .header("Origin", server.address())
            .header("Content-Type", "application/json")
            .POST(BodyPublishers.ofString(json))
            .build());
  }

  private static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }

  @Override
  public void close() {
    server.close();
    workspace.close();
  }
}
