package parfield.web.publish;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import parfield.answer.LampLight;
import parfield.answer.Refusal;
import parfield.formats.PhotometricFile;
import parfield.formats.Setup;
import parfield.lamp.Channel;
import parfield.web.bench.Desk;
import parfield.web.bench.OpenBench;
import parfield.web.bench.StoredModel;
import parfield.web.page.Screen;

/** Photometric files of a bench's fixtures, to be taken away. */
public final class LampFiles implements Screen {
  private final Desk desk;

  /** The files over a desk. */
  LampFiles(Desk desk) {
    this.desk = desk;
  }

  /**
   * What can be taken away of one fixture.
   *
   * @param fixture its name
   * @param channels names of its channels
   * @param dark names of those without a spectrum, whose candela are not known
   */
  public record Offer(String fixture, List<String> channels, List<String> dark) {
    public Offer {
      channels = List.copyOf(channels);
      dark = List.copyOf(dark);
    }

    /** What asks for a file: of one channel, or of all where its name is empty. */
    public String query(String as, String channel) {
      String all = "as=" + as + "&fixture=" + encoded(fixture);
      return channel.isEmpty() ? all : all + "&channel=" + encoded(channel);
    }
  }

  private static String encoded(String name) {
    return URLEncoder.encode(name, StandardCharsets.UTF_8).replace("+", "%20");
  }

  /** What can be taken away of a bench; nothing while its setup has faults. */
  static List<Offer> offers(OpenBench bench) {
    return bench.setup().map(Setup::fixtures).orElse(Map.of()).values().stream()
        .map(
            fixture ->
                new Offer(
                    fixture.name(),
                    fixture.channels().stream().map(Channel::name).toList(),
                    fixture.channels().stream()
                        .filter(channel -> channel.spectrum().isEmpty())
                        .map(Channel::name)
                        .toList()))
        .toList();
  }

  @Override
  public void register(RoutesConfig routes) {
    routes.get("/bench/{id}/publish/light", this::file);
  }

  private void file(Context context) {
    OpenBench bench = desk.benches().of(context);
    PhotometricFile.Format format =
        Arrays.stream(PhotometricFile.Format.values())
            .filter(it -> it.key().equals(context.queryParam("as")))
            .findFirst()
            .orElseThrow(() -> Refusal.of("no such photometric format", "take lm63 or eulumdat"));
    LampLight lamp =
        LampLight.of(
            bench.bench(),
            Optional.ofNullable(context.queryParam("fixture")),
            Optional.ofNullable(context.queryParam("channel")),
            Map.of());
    Optional<StoredModel> model = desk.benches().model(bench);
    if (model.isEmpty() && !lamp.stated()) {
      throw Refusal.of(
          "there is no light model of this bench yet", "fit one at the step Model, then come back");
    }
    LocalDate date =
        model
            .map(it -> LocalDate.ofInstant(it.result().when(), ZoneOffset.UTC))
            .orElseGet(() -> LocalDate.now(ZoneOffset.UTC));
    byte[] bytes = lamp.light(model.map(StoredModel::model), date).bytes(format);
    String name = lamp.fixture().name() + lamp.channel().map(channel -> "-" + channel).orElse("");
    context
        .contentType("application/octet-stream")
        .header(
            "Content-Disposition",
            "attachment; filename*=UTF-8''" + encoded(name) + format.ending())
        .result(bytes);
  }
}
