package parfield.field;

import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;

/**
 * Keeps computed values by key, up to a limit, then starts afresh. Thread-safe.
 *
 * @param <K> key, with a sound equals
 * @param <V> value, immutable
 */
final class Memo<K, V> {
  private final ConcurrentHashMap<K, V> values = new ConcurrentHashMap<>();
  private final int limit;

  Memo(int limit) {
    this.limit = limit;
  }

  /** The value of a key, computed once. */
  V get(K key, Function<K, V> compute) {
    V known = values.get(key);
    if (known != null) {
      return known;
    }
    V made = compute.apply(key);
    if (values.size() >= limit) {
      values.clear();
    }
    V earlier = values.putIfAbsent(key, made);
    return earlier == null ? made : earlier;
  }
}
