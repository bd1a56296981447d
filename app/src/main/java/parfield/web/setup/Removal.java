package parfield.web.setup;

import java.util.Set;
import parfield.formats.SetupPath;
import parfield.formats.SetupText;
import parfield.formats.SetupValue;

/** Something of a setup taken away, and its list with it where an empty one would be a fault. */
final class Removal {
  private static final Set<String> OPTIONAL =
      Set.of("meters", "surveys", "bands", "braces", "opaque", "dials", "aquascape");

  private Removal() {}

  /** The text without what stands at a path. */
  static SetupText of(SetupText text, SetupPath path) {
    SetupText left = text.without(path);
    SetupPath holder = path.parent();
    boolean optional =
        !holder.steps().isEmpty()
            && holder.steps().get(holder.steps().size() - 1) instanceof SetupPath.Key key
            && OPTIONAL.contains(key.key());
    return optional && left.value(holder).map(Removal::empty).orElse(false)
        ? left.without(holder)
        : left;
  }

  static boolean empty(SetupValue value) {
    return value instanceof SetupValue.Nothing
        || (value instanceof SetupValue.Fields fields && fields.entries().isEmpty())
        || (value instanceof SetupValue.Items items && items.elements().isEmpty());
  }
}
