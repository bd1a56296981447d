package parfield.web;

import io.javalin.Javalin;
import io.javalin.config.JavalinConfig;
import io.javalin.config.SizeUnit;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Collectors;
import org.eclipse.jetty.server.handler.GracefulHandler;
import parfield.web.bench.Desk;
import parfield.web.care.CareScreen;
import parfield.web.door.Door;
import parfield.web.door.MeterToken;
import parfield.web.door.OwnAddresses;
import parfield.web.door.PairScreen;
import parfield.web.door.Pairing;
import parfield.web.explore.ExploreScreen;
import parfield.web.home.HomeScreen;
import parfield.web.measure.MeasureScreen;
import parfield.web.meter.MeterScreen;
import parfield.web.meter.SerialPorts;
import parfield.web.model.ModelScreen;
import parfield.web.page.Assets;
import parfield.web.page.Libraries;
import parfield.web.page.Problems;
import parfield.web.page.Screen;
import parfield.web.publish.PublishScreen;
import parfield.web.recommend.RecommendScreen;
import parfield.web.setup.SetupScreen;
import parfield.web.spectra.SpectraScreen;
import parfield.web.transfer.TransferScreen;
import parfield.web.work.JobScreen;
import parfield.workspace.Workspace;

/** The running server: every screen over one workspace. */
public final class Server implements AutoCloseable {
  /** Most bytes of one request. */
  static final long MOST_BYTES = 64L << 20;

  /** Time for requests to finish when the server stops [ms]. */
  private static final long STOP = 5000;

  private final Javalin javalin;
  private final Desk desk;
  private final JobScreen jobs;
  private final MeasureScreen measure;
  private final MeterScreen meter;
  private final Pairing pairing;
  private final boolean lan;

  /**
   * How it is started.
   *
   * @param port to listen on; 0 for a free one
   * @param lan whether other devices of the network may reach it, once paired
   * @param version of the program
   */
  public record Options(int port, boolean lan, String version) {}

  private Server(
      Javalin javalin,
      Desk desk,
      JobScreen jobs,
      MeasureScreen measure,
      MeterScreen meter,
      Pairing pairing,
      boolean lan) {
    this.javalin = javalin;
    this.desk = desk;
    this.jobs = jobs;
    this.measure = measure;
    this.meter = meter;
    this.pairing = pairing;
    this.lan = lan;
  }

  /**
   * Starts it over a workspace, which its caller closes after it.
   *
   * @throws io.javalin.util.JavalinBindException if the port is taken
   */
  public static Server start(Workspace workspace, Options options) {
    Desk desk = Desk.over(workspace, options.version());
    Pairing pairing = new Pairing(Clock.systemUTC());
    MeterToken meters = new MeterToken();
    AtomicInteger port = new AtomicInteger(options.port());
    Door door = new Door(port::get, () -> hosts(options.lan()), pairing, meters);
    PairScreen pair =
        new PairScreen(desk.pages(), pairing, () -> addresses(options.lan(), port.get()));
    JobScreen jobs = new JobScreen(desk.jobs());
    MeasureScreen measure = new MeasureScreen(desk);
    MeterScreen meter =
        new MeterScreen(
            desk,
            measure::say,
            SerialPorts.ofThisMachine(),
            meters,
            () -> meterAddress(options.lan(), port.get()));
    List<Screen> screens = new ArrayList<>();
    screens.add(door);
    screens.add(new Problems(desk.pages()));
    screens.add(new Assets());
    screens.add(new Libraries());
    screens.add(pair);
    screens.add(jobs);
    screens.add(new HomeScreen(desk));
    screens.add(new SetupScreen(desk));
    screens.add(measure);
    screens.add(meter);
    screens.add(new ModelScreen(desk));
    screens.add(new TransferScreen(desk));
    screens.add(new ExploreScreen(desk));
    screens.add(new RecommendScreen(desk));
    screens.add(new PublishScreen(desk));
    screens.add(new SpectraScreen(desk));
    screens.add(new CareScreen(desk));
    Javalin javalin = Javalin.create(config -> configure(config, options, screens));
    javalin.start();
    port.set(javalin.port());
    if (options.lan()) {
      pairing.newCode();
    }
    return new Server(javalin, desk, jobs, measure, meter, pairing, options.lan());
  }

  private static void configure(JavalinConfig config, Options options, List<Screen> screens) {
    config.startup.showJavalinBanner = false;
    config.http.maxRequestSize = MOST_BYTES;
    config.jetty.multipartConfig.maxFileSize(MOST_BYTES, SizeUnit.BYTES);
    config.jetty.multipartConfig.maxTotalRequestSize(MOST_BYTES, SizeUnit.BYTES);
    config.jetty.host = options.lan() ? "0.0.0.0" : "127.0.0.1";
    config.jetty.port = options.port();
    config.jetty.modifyServer(
        server -> {
          server.insertHandler(new GracefulHandler());
          server.setStopTimeout(STOP);
        });
    config.router.javaLangErrorHandler(Problems::tell);
    screens.forEach(screen -> screen.register(config.routes));
  }

  private static Set<String> hosts(boolean lan) {
    return lan ? OwnAddresses.hosts().stream().collect(Collectors.toSet()) : Set.of();
  }

  private static List<String> addresses(boolean lan, int port) {
    return lan
        ? OwnAddresses.hosts().stream().map(host -> "http://" + host + ":" + port).toList()
        : List.of();
  }

  /** Where a program posts: at this machine under its own name, else as other devices reach it. */
  private static String meterAddress(boolean lan, int port) {
    return addresses(lan, port).stream().findFirst().orElse("http://localhost:" + port);
  }

  /** The port it listens on. */
  public int port() {
    return javalin.port();
  }

  /** The address at this machine. */
  public String address() {
    return "http://localhost:" + port();
  }

  /** The addresses at which other devices reach it; none if they may not. */
  public List<String> lanAddresses() {
    return addresses(lan, port());
  }

  /** What the screens work with. */
  Desk desk() {
    return desk;
  }

  /** Who lets phones in. */
  public Pairing pairing() {
    return pairing;
  }

  /** Lets requests finish, stops the work in the background, and ends. */
  @Override
  public void close() {
    desk.jobs().close();
    jobs.close();
    measure.close();
    meter.close();
    javalin.stop();
  }
}
