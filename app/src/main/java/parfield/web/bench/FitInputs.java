package parfield.web.bench;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import parfield.survey.Reading;
import parfield.workspace.StoredFile;

/** What a fit depends on, as a digest: the same digest, the same light model. */
final class FitInputs {
  private FitInputs() {}

  /** The setup as plain maps and lists, its keys as compared; empty if it is no such YAML. */
  static Map<?, ?> tree(String text) {
    if (YamlText.tooDeep(text)) {
      return Map.of();
    }
    try {
      Object root =
          new Load(LoadSettings.builder().setMaxAliasesForCollections(50).build())
              .loadFromString(text);
      Map<Object, Object> tree = new LinkedHashMap<>();
      if (root instanceof Map<?, ?> map) {
        map.forEach((key, value) -> tree.put(SetupBlocks.canonical(String.valueOf(key)), value));
      }
      return tree;
    } catch (YamlEngineException | ClassCastException e) {
      return Map.of();
    }
  }

  /** Names of the surveys that a setup states. */
  static Set<String> surveys(Map<?, ?> tree) {
    Set<String> names = new LinkedHashSet<>();
    if (tree.get("surveys") instanceof Map<?, ?> surveys) {
      surveys.keySet().forEach(name -> names.add(String.valueOf(name)));
    }
    return names;
  }

  static String digest(
      Map<?, ?> tree, Map<String, StoredFile> files, Map<String, List<Reading>> readings) {
    Map<String, Object> relevant = new LinkedHashMap<>();
    tree.forEach((key, value) -> relevant.put(String.valueOf(key), value));
    relevant.remove("bands");
    relevant.remove("livestock");
    relevant.remove("day");
    relevant.remove("demands");
    Map<Object, Object> taken = new LinkedHashMap<>();
    Set<Object> rigs = new LinkedHashSet<>();
    if (tree.get("surveys") instanceof Map<?, ?> surveys) {
      surveys.forEach(
          (name, survey) -> {
            if (!readings.getOrDefault(String.valueOf(name), List.of()).isEmpty()
                && survey instanceof Map<?, ?> stated) {
              Map<Object, Object> of = new LinkedHashMap<>(stated);
              of.remove("grid");
              taken.put(name, of);
              rigs.add(stated.get("rig"));
            }
          });
    }
    relevant.put("surveys", taken);
    if (tree.get("rigs") instanceof Map<?, ?> all) {
      Map<Object, Object> used = new LinkedHashMap<>(all);
      used.keySet().retainAll(rigs);
      relevant.put("rigs", used);
    }
    MessageDigest digest = sha256();
    add(digest, relevant.toString());
    files.forEach((name, file) -> add(digest, name + ' ' + file.digest()));
    readings.forEach(
        (name, all) -> {
          if (!all.isEmpty()) {
            add(digest, name);
            all.forEach(reading -> add(digest, reading.place() + " " + reading.value()));
          }
        });
    return HexFormat.of().formatHex(digest.digest());
  }

  /** A text as a digest. */
  static String digest(String text) {
    MessageDigest digest = sha256();
    add(digest, text);
    return HexFormat.of().formatHex(digest.digest());
  }

  /** Bands and demands as a setup states them. */
  static List<Object> aims(Map<?, ?> tree) {
    return Arrays.asList(tree.get("bands"), tree.get("demands"));
  }

  private static void add(MessageDigest digest, String text) {
    digest.update(Objects.requireNonNull(text).getBytes(StandardCharsets.UTF_8));
    digest.update((byte) 0);
  }

  private static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}
