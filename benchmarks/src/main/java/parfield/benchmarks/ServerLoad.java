package parfield.benchmarks;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.UUID;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import parfield.demo.DemoBench;
import parfield.tank.Place;
import parfield.web.Server;
import parfield.workspace.Entry;
import parfield.workspace.Location;
import parfield.workspace.ReadingWrite;
import parfield.workspace.Workspace;

/**
 * How long the server takes over HTTP: lists and searches over 10,000 surveys of 100 readings each,
 * and twenty phones that enter fifty readings a second for a minute while each of them watches its
 * survey. Ends with exit code 1 if an answer was no success or a reading is missing. The argument
 * is the new file to make it in.
 */
public final class ServerLoad {
  private static final int BENCHES = 1000;
  private static final int SURVEYS = 10;
  private static final int READINGS = 100;
  private static final int CALLS = 200;
  private static final int PHONES = 20;
  private static final int PER_SECOND = 50;
  private static final int SECONDS = 60;
  private static final List<String> WORDS =
      List.of("Long", "Cube", "Lagoon", "Frag", "Nano", "Pillar", "Ånga", "Öresund", "Shelf");

  private final SplittableRandom random = new SplittableRandom(System.nanoTime());
  private final HttpClient client =
      HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();
  private final List<UUID> benches = new ArrayList<>();
  private final List<UUID> surveys = new ArrayList<>();
  private int failures;

  private ServerLoad() {}

  /**
   * Prints the figures.
   *
   * @param arguments the location of the workspace to make, or that was made by an earlier run
   * @throws Exception if a request fails
   */
  public static void main(String[] arguments) throws Exception {
    Locale.setDefault(Locale.ROOT);
    ServerLoad load = new ServerLoad();
    try (Workspace workspace = Workspace.open(Location.parse(arguments[0]));
        Server server = load.filled(workspace)) {
      System.out.println("| what | median, ms | 99 %, ms | most, ms |");
      System.out.println("|---|---|---|---|");
      load.lists(server.address());
      load.phones(workspace, server.address());
    }
    System.out.printf("%d answers were no success%n", load.failures);
    System.exit(load.failures == 0 ? 0 : 1);
  }

  private Server filled(Workspace workspace) {
    if (workspace.holdings().surveys() > 0) {
      workspace.benches().list("", BENCHES, 0).items().forEach(bench -> benches.add(bench.id()));
      benches.forEach(id -> workspace.surveys().of(id).forEach(survey -> surveys.add(survey.id())));
      return Server.start(workspace, new Server.Options(0, false, "load"));
    }
    long start = System.nanoTime();
    Map<String, byte[]> files = Map.of();
    String setup = DemoBench.files(1).get(DemoBench.SETUP);
    for (int bench = 0; bench < BENCHES; bench++) {
      String name = WORDS.get(bench % WORDS.size()) + " bench " + bench;
      UUID id = workspace.benches().create(name, false, setup, files, "load").bench();
      benches.add(id);
      for (int survey = 0; survey < SURVEYS; survey++) {
        UUID made = workspace.surveys().named(id, "height " + survey).id();
        surveys.add(made);
        List<ReadingWrite> writes = new ArrayList<>();
        for (int reading = 0; reading < READINGS; reading++) {
          writes.add(write(reading));
        }
        workspace.readings().write(made, writes, "load");
      }
    }
    System.out.printf(
        "%d benches, %d surveys of %d readings, filled in %.0f s%n",
        BENCHES, surveys.size(), READINGS, (System.nanoTime() - start) / 1e9);
    return Server.start(workspace, new Server.Options(0, false, "load"));
  }

  private ReadingWrite write(int order) {
    int value = random.nextInt(40, 400);
    return new ReadingWrite(
        new UUID(random.nextLong(), random.nextLong()),
        new UUID(random.nextLong(), random.nextLong()),
        0,
        Entry.typed(place(), order, String.valueOf(value), value),
        Instant.now());
  }

  private Place place() {
    return new Place(random.nextDouble(), random.nextDouble() / 2, 0.25);
  }

  private void lists(String address) {
    time("first page: the last 50 benches", address, () -> "/");
    time("list of benches, last page", address, () -> "/benches?page=19");
    time("benches that hold a text", address, () -> "/benches?search=angA");
    time("benches that hold no such text", address, () -> "/benches?search=nowhere");
    time("surveys of one bench", address, () -> "/bench/" + any(benches) + "/measure");
    time(
        "readings of one survey",
        address,
        () -> {
          int k = random.nextInt(surveys.size());
          return "/bench/" + benches.get(k / SURVEYS) + "/measure/" + surveys.get(k) + "/data";
        });
  }

  private UUID any(List<UUID> of) {
    return of.get(random.nextInt(of.size()));
  }

  private void time(String what, String address, java.util.function.Supplier<String> path) {
    double[] times = new double[CALLS];
    for (int i = -CALLS / 4; i < CALLS; i++) {
      String asked = path.get();
      long start = System.nanoTime();
      ask(address + asked);
      if (i >= 0) {
        times[i] = (System.nanoTime() - start) / 1e6;
      }
    }
    print(what, times);
  }

  private void ask(String address) {
    HttpRequest request =
        HttpRequest.newBuilder(URI.create(address)).header("Accept", "text/html").GET().build();
    try {
      HttpResponse<byte[]> answer = client.send(request, BodyHandlers.ofByteArray());
      failures += answer.statusCode() == 200 ? 0 : 1;
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }

  private static void print(String what, double[] times) {
    Arrays.sort(times);
    System.out.printf(
        "| %s | %.1f | %.1f | %.1f |%n",
        what, times[times.length / 2], times[times.length * 99 / 100], times[times.length - 1]);
  }

  private record Phone(List<Double> times, int failures) {}

  /** Twenty phones at ten surveys, two each; every one holds the stream of what changes. */
  private void phones(Workspace workspace, String address)
      throws InterruptedException, ExecutionException, IOException {
    ExecutorService people = Executors.newFixedThreadPool(2 * PHONES);
    long before = workspace.holdings().readings();
    long pace = TimeUnit.SECONDS.toNanos(PHONES) / PER_SECOND;
    List<InputStream> streams = new ArrayList<>();
    List<Future<Phone>> answers = new ArrayList<>();
    long begin = System.nanoTime() + TimeUnit.SECONDS.toNanos(2);
    for (int phone = 0; phone < PHONES; phone++) {
      int survey = phone / 2;
      String base = address + "/bench/" + benches.get(0) + "/measure/" + surveys.get(survey);
      InputStream stream = watch(base);
      streams.add(stream);
      people.execute(() -> drain(stream));
      List<String> bodies = new ArrayList<>();
      for (int i = 0; i < SECONDS * PER_SECOND / PHONES; i++) {
        bodies.add(body());
      }
      long first = begin + phone * pace / PHONES;
      answers.add(people.submit(() -> enter(address, base, bodies, first, pace)));
    }
    List<Double> all = new ArrayList<>();
    for (Future<Phone> answer : answers) {
      all.addAll(answer.get().times());
      failures += answer.get().failures();
    }
    for (InputStream stream : streams) {
      stream.close();
    }
    people.shutdownNow();
    print(
        String.format(
            Locale.ROOT,
            "%d phones, %d readings a second for %d s, each stored",
            PHONES,
            PER_SECOND,
            SECONDS),
        all.stream().mapToDouble(Double::doubleValue).toArray());
    long stored = workspace.holdings().readings() - before;
    System.out.printf("%d readings sent, %d stored%n", all.size(), stored);
    failures += stored == all.size() ? 0 : 1;
  }

  private static void drain(InputStream stream) {
    try {
      stream.transferTo(OutputStream.nullOutputStream());
    } catch (IOException e) {
      // It was closed at the end, as it should be.
    }
  }

  private InputStream watch(String base) throws IOException, InterruptedException {
    return client
        .send(
            HttpRequest.newBuilder(URI.create(base + "/events?since=0"))
                .header("Accept", "text/event-stream")
                .GET()
                .build(),
            BodyHandlers.ofInputStream())
        .body();
  }

  private String body() {
    Place place = place();
    return String.format(
        Locale.ROOT,
        "{\"writes\": [{\"id\": \"%s\", \"reading\": \"%s\", \"basedOn\": 0, \"x\": %s, \"y\": %s,"
            + " \"depth\": %s, \"order\": 1, \"typed\": \"%d\", \"origin\": \"TYPED\", \"kind\":"
            + " \"GRID\", \"when\": %d}]}",
        new UUID(random.nextLong(), random.nextLong()),
        new UUID(random.nextLong(), random.nextLong()),
        place.x(),
        place.y(),
        place.depth(),
        random.nextInt(40, 400),
        System.currentTimeMillis());
  }

  private Phone enter(String address, String base, List<String> bodies, long begin, long pace)
      throws IOException, InterruptedException {
    List<Double> times = new ArrayList<>();
    int bad = 0;
    long due = begin;
    for (String body : bodies) {
      TimeUnit.NANOSECONDS.sleep(Math.max(0, due - System.nanoTime()));
      HttpResponse<String> answer =
          client.send(
              HttpRequest.newBuilder(URI.create(base + "/readings"))
                  .header("Origin", address)
                  .header("Content-Type", "application/json")
                  .POST(BodyPublishers.ofString(body, StandardCharsets.UTF_8))
                  .build(),
              BodyHandlers.ofString());
      // From when it was due: waiting for one's turn counts.
      times.add((System.nanoTime() - due) / 1e6);
      bad += answer.statusCode() == 200 ? 0 : 1;
      due += pace;
    }
    return new Phone(times, bad);
  }
}
