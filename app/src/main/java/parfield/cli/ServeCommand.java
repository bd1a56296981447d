package parfield.cli;

import io.javalin.util.JavalinBindException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import parfield.answer.Refusal;
import parfield.web.Server;
import parfield.workspace.Location;
import parfield.workspace.Workspace;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** {@code parfield serve}: the bench in the browser. */
@Command(
    name = "serve",
    mixinStandardHelpOptions = true,
    header = "Start the bench in the browser.",
    description = {
      "",
      "Set up, measure, model, explore and recommend on pages at this computer. Every reading is"
          + " stored the moment it is typed. Ctrl-C ends it, after what was asked is done."
    },
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {"0:ended by a person", "2:not started: a fault, with what to do"})
final class ServeCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Option(
      names = "--workspace",
      paramLabel = "FILE-or-JDBC-URL",
      description =
          "Where all is stored: a file, made if it is not there, or jdbc:postgresql://…; default:"
              + " parfield/workspace.db in $XDG_DATA_HOME or ~/.local/share.")
  private String place;

  @Option(
      names = "--port",
      paramLabel = "N",
      defaultValue = "8337",
      description = "Port to listen on; 0 for a free one. Default: ${DEFAULT-VALUE}.")
  private int port;

  @Option(
      names = "--lan",
      description =
          "Let other devices of the network in, once they are paired: for a phone beside the tank.")
  private boolean lan;

  @Override
  public Integer call() throws InterruptedException {
    if (port < 0 || port > 65535) {
      throw Refusal.of("a port is a number from 0 to 65535; got " + port, "leave --port out");
    }
    PrintWriter out = spec.commandLine().getOut();
    Location location =
        place == null
            ? Location.standard(System.getenv(), Path.of(System.getProperty("user.home")))
            : Location.parse(place);
    try (Workspace workspace = Workspace.open(location)) {
      workspace.notices().forEach(out::println);
      try (Server server =
          Server.start(workspace, new Server.Options(port, lan, Version.number()))) {
        out.println("Parfield is at " + server.address());
        out.println("workspace: " + workspace.location());
        if (lan) {
          server.lanAddresses().forEach(address -> out.println("for paired devices: " + address));
          out.println("pair a phone at " + server.address() + "/pair");
        }
        out.println("Ctrl-C ends it.");
        out.flush();
        waitForTheEnd();
      }
    } catch (JavalinBindException e) {
      throw Refusal.of(
          "port " + port + " is taken",
          "end the program that uses it, or name another with --port, or --port 0 for a free one");
    }
    return ExitCode.DONE;
  }

  /** Until the process is asked to end; what is open is closed before it does. */
  private static void waitForTheEnd() throws InterruptedException {
    CountDownLatch asked = new CountDownLatch(1);
    Thread waiting = Thread.currentThread();
    Runtime.getRuntime()
        .addShutdownHook(
            new Thread(
                () -> {
                  asked.countDown();
                  try {
                    waiting.join(10_000);
                  } catch (InterruptedException e) {
                    Thread.currentThread().interrupt();
                  }
                }));
    asked.await();
  }
}
