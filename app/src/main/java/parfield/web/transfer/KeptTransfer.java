package parfield.web.transfer;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import parfield.answer.Json;
import parfield.answer.RecommendationAnswer;
import parfield.answer.Table;
import parfield.answer.TransferAnswer;
import parfield.tank.Place;
import parfield.units.LengthUnit;
import parfield.web.bench.AdviceDocument;
import parfield.web.recommend.Choice;
import parfield.web.recommend.KeptAdvice;
import parfield.workspace.Result;
import parfield.workspace.StoredFile;

/**
 * What a light model of another tank came to on a bench, as it is kept: the answer that the command
 * line gives, word by word and number by number.
 *
 * @param result as it is stored
 * @param document what it holds
 */
public record KeptTransfer(Result result, JsonNode document) {
  /** Tables of the answer, by the names that pages ask for. */
  private static final String TABLES = "tables";

  static KeptTransfer read(Result result, byte[] bytes) {
    return new KeptTransfer(result, AdviceDocument.read(bytes));
  }

  /**
   * The document to be kept of an answer.
   *
   * @param answer what was found
   * @param published file of the model that was applied
   * @param here the stored model of this tank
   */
  static byte[] document(TransferAnswer answer, StoredFile published, Result here) {
    ObjectNode document = Json.object();
    document.set("answer", answer.json());
    document.set("advice", AdviceDocument.document(answer.recommendation()));
    ObjectNode applied = document.putObject("published");
    applied.put("name", answer.model());
    applied.put("digest", published.digest());
    applied.put("size", published.size());
    document.put("model", here.id().toString());
    for (LengthUnit unit : LengthUnit.values()) {
      ObjectNode told = document.putObject(unit.symbol());
      told.put("text", answer.text(unit));
      ObjectNode tables = told.putObject(TABLES);
      RecommendationAnswer advice = answer.recommendation();
      tables.set("errors", answer.errors().json());
      tables.set("parts", answer.parts().json());
      answer.readings(unit).ifPresent(table -> tables.set("readings", table.json()));
      tables.set("verdicts", advice.verdicts(unit).json());
      tables.set("figures", advice.figures(unit).json());
      tables.set(
          "options", RecommendationAnswer.options(advice.recommendation().options(), unit).json());
    }
    return AdviceDocument.bytes(document);
  }

  /** The answer in JSON, as the command line gives it. */
  public JsonNode answer() {
    return document.get("answer");
  }

  /** The answer as text. */
  public String text(LengthUnit unit) {
    return document.path(unit.symbol()).path("text").asText();
  }

  /** A table of the answer: {@code errors}, {@code parts}, {@code verdicts}, …; maybe not there. */
  public Optional<Table> table(String name, LengthUnit unit) {
    return Optional.of(document.path(unit.symbol()).path(TABLES).path(name))
        .filter(JsonNode::isObject)
        .map(Table::of);
  }

  /** Share of the mean's variance of each cause, in the order of the table {@code parts}. */
  public List<Double> shares() {
    List<Double> shares = new ArrayList<>();
    answer()
        .at("/transfer_error/parts")
        .forEach(part -> shares.add(part.path("share_of_mean_variance").asDouble()));
    return shares;
  }

  /** The recommendation in it. */
  public KeptAdvice advice() {
    return new KeptAdvice(result, document.get("advice"));
  }

  /** The recommended option. */
  public Choice best() {
    return advice().choice(null);
  }

  /** Whether readings of this tank are in it already. */
  public boolean updated() {
    return answer().path("update").isObject();
  }

  /** Whether those readings lie farther off than chance explains. */
  public boolean surprising() {
    return answer().at("/update/surprising").asBoolean();
  }

  /** How many of those readings were set aside. */
  public int setAside() {
    return answer().at("/update/set_aside").size();
  }

  /** What the applied model is called. */
  public String published() {
    return document.at("/published/name").asText();
  }

  /** The file of the applied model. */
  StoredFile publishedFile() {
    return new StoredFile(
        document.at("/published/digest").asText(), document.at("/published/size").asLong());
  }

  /** Id of the stored model of this tank. */
  UUID model() {
    return UUID.fromString(document.path("model").asText());
  }

  /** Where the readings that would confirm it are to be taken. */
  List<Place> places() {
    List<Place> places = new ArrayList<>();
    answer()
        .at("/recommendation/next_readings")
        .forEach(
            reading ->
                places.add(
                    new Place(
                        metres(reading, "x"), metres(reading, "y"), metres(reading, "depth"))));
    return places;
  }

  private static double metres(JsonNode reading, String key) {
    return LengthUnit.CM.toMetres(reading.path(key + "_cm").asDouble());
  }
}
