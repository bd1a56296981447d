package parfield.web.transfer;

import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import parfield.answer.Problem;
import parfield.answer.Transferred;
import parfield.formats.Setup;
import parfield.web.measure.TypedNumber;

/**
 * What was typed on the page and not taken, to be shown again with why.
 *
 * @param name that a model shall have
 * @param meter that was read with; empty if none was chosen
 * @param readings as typed
 * @param fields what is wrong, by the id of the field
 * @param remarks what is odd but possible, by the id of the field
 * @param faults what is wrong beside fields
 */
public record TransferForm(
    String name,
    String meter,
    List<String> readings,
    Map<String, String> fields,
    Map<String, String> remarks,
    List<String> faults) {
  static final TransferForm NOTHING =
      new TransferForm("", "", List.of(), Map.of(), Map.of(), List.of());

  static final String METER = "meter";

  public TransferForm {
    readings = List.copyOf(readings);
    fields = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(fields));
    remarks = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(remarks));
    faults = List.copyOf(faults);
  }

  /** A form of which one field is wrong. */
  static TransferForm wrong(String name, String field, Problem problem) {
    return new TransferForm(
        name, "", List.of(), Map.of(field, String.join("; ", words(problem))), Map.of(), List.of());
  }

  /** A problem as sentences. */
  static List<String> words(Problem problem) {
    return Stream.concat(
            Stream.of(problem.title()), problem.hints().stream().map(Problem.Hint::message))
        .toList();
  }

  /** The same with something that is wrong beside its fields. */
  TransferForm withFaults(List<String> more) {
    return new TransferForm(name, meter, readings, fields, remarks, more);
  }

  /** The same with something that is wrong in a field. */
  TransferForm withField(String field, String fault) {
    Map<String, String> all = new LinkedHashMap<>(fields);
    all.put(field, fault);
    return new TransferForm(name, meter, readings, all, remarks, faults);
  }

  /** Id of the field of a reading, counted from 0. */
  public static String field(int reading) {
    return "reading-" + (reading + 1);
  }

  /** What was typed for a reading, counted from 0. */
  public String reading(int index) {
    return index < readings.size() ? readings.get(index) : "";
  }

  /** Whether something has to be mended. */
  public boolean isWrong() {
    return !fields.isEmpty() || !faults.isEmpty() || !remarks.isEmpty();
  }

  /**
   * The readings as they were typed, with what is wrong and what is odd about them.
   *
   * @param setup whose meters can be read with
   * @param needed whether at least one must be there
   */
  static TransferForm readings(Context context, Setup setup, boolean needed) {
    String meter =
        setup.meters().size() == 1
            ? setup.meters().keySet().iterator().next()
            : text(context, METER);
    List<String> typed =
        IntStream.range(0, Transferred.CONFIRMING).mapToObj(i -> text(context, field(i))).toList();
    Map<String, String> fields = new LinkedHashMap<>();
    Map<String, String> remarks = new LinkedHashMap<>();
    if (!setup.meters().containsKey(meter)) {
      fields.put(
          METER,
          setup.meters().isEmpty()
              ? "The bench has no meter yet: state the one you read with on the page Set up"
              : "Choose the meter that you read with: "
                  + String.join(", ", setup.meters().keySet()));
    }
    for (int i = 0; needed && i < typed.size(); i++) {
      if (!typed.get(i).isEmpty()) {
        TypedNumber number = TypedNumber.read(typed.get(i));
        String field = field(i);
        number.problem().ifPresent(problem -> fields.put(field, problem));
        number
            .remark()
            .filter(remark -> context.formParam("keep-" + field) == null)
            .ifPresent(remark -> remarks.put(field, remark));
      }
    }
    if (needed && typed.stream().allMatch(String::isEmpty)) {
      fields.put(field(0), "No reading was typed: type at least one");
    }
    return new TransferForm("", meter, typed, fields, remarks, List.of());
  }

  /** The readings that were typed, by their number from 0; only if nothing is wrong. */
  Map<Integer, ConfirmingSurvey.Typed> values() {
    Map<Integer, ConfirmingSurvey.Typed> values = new LinkedHashMap<>();
    for (int i = 0; i < readings.size(); i++) {
      if (!readings.get(i).isEmpty()) {
        TypedNumber number = TypedNumber.read(readings.get(i));
        values.put(
            i,
            new ConfirmingSurvey.Typed(
                readings.get(i), number.value().getAsDouble(), number.remark().isPresent()));
      }
    }
    return values;
  }

  static String text(Context context, String field) {
    return Optional.ofNullable(context.formParam(field)).orElse("").strip();
  }

  /** All that is to be mended, with the field each belongs to. */
  public List<Map.Entry<String, String>> summary() {
    List<Map.Entry<String, String>> all = new ArrayList<>(fields.entrySet());
    remarks.forEach((field, remark) -> all.add(Map.entry(field, remark)));
    return all;
  }
}
