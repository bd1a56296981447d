package parfield.web.setup;

import java.util.List;
import parfield.formats.SetupPath;
import parfield.formats.SetupText;
import parfield.formats.SetupValue;

/** Another name for something in a setup, and for it wherever the setup speaks of it. */
final class Renaming {
  private Renaming() {}

  /**
   * Renames.
   *
   * @param text of the setup
   * @param path of what is renamed
   * @param name that it gets
   * @throws parfield.formats.InvalidFile if the name is taken, or its text cannot be changed
   */
  static SetupText of(SetupText text, SetupPath path, String name) {
    List<SetupPath.Step> steps = path.steps();
    String old = nameAt(path, steps.size() - 1);
    SetupText renamed = text.renamed(path, name);
    SetupPath holder = path.parent();
    if (holder.equals(SetupForm.FIXTURES)) {
      return hung(renamed, old, name);
    } else if (holder.equals(SetupForm.RIGS)) {
      return stated(renamed, SetupForm.SURVEYS, "rig", old, name);
    } else if (holder.equals(SetupForm.METERS)) {
      return stated(renamed, SetupForm.SURVEYS, "meter", old, name);
    } else if (holder.equals(SetupForm.BANDS)) {
      SetupText all = renamed;
      for (int i = 0; i < renamed.size(SetupForm.DEMANDS); i++) {
        all = changed(all, SetupForm.DEMANDS.at(i).key("band"), old, name);
      }
      return all;
    } else if (steps.size() == 4 && holder.parent().parent().equals(SetupForm.FIXTURES)) {
      return dials(scaled(renamed, holder.parent(), old, name), nameAt(path, 1), old, name);
    }
    return renamed;
  }

  private static String nameAt(SetupPath path, int i) {
    return ((SetupPath.Name) path.steps().get(i)).name();
  }

  private static SetupText changed(SetupText text, SetupPath path, String old, String name) {
    return text.value(path).filter(value -> value.plain().equals(old)).isPresent()
        ? text.with(path, new SetupValue.Text(name))
        : text;
  }

  private static SetupText stated(
      SetupText text, SetupPath entries, String key, String old, String name) {
    SetupText all = text;
    for (String entry : text.names(entries)) {
      all = changed(all, entries.name(entry).key(key), old, name);
    }
    return all;
  }

  private static SetupText hung(SetupText text, String old, String name) {
    SetupText all = text;
    for (String rig : text.names(SetupForm.RIGS)) {
      SetupPath hang = SetupForm.RIGS.name(rig).key("hang");
      for (int i = 0; i < text.size(hang); i++) {
        all = changed(all, hang.at(i).key("fixture"), old, name);
      }
    }
    return all;
  }

  private static SetupText scaled(SetupText text, SetupPath fixture, String old, String name) {
    SetupText all = text;
    for (String master : text.names(fixture.key("dials"))) {
      SetupPath scales = fixture.key("dials").name(master).key("scales");
      for (int i = 0; i < text.size(scales); i++) {
        all = changed(all, scales.at(i), old, name);
      }
    }
    return all;
  }

  /** The dial of a fixture in every rig that it hangs in. */
  private static SetupText dials(SetupText text, String fixture, String old, String name) {
    SetupText all = text;
    for (String rig : text.names(SetupForm.RIGS)) {
      SetupPath path = SetupForm.RIGS.name(rig);
      boolean here = false;
      boolean elsewhere = false;
      for (int i = 0; i < text.size(path.key("hang")); i++) {
        String hung = SetupForm.fixtureAt(text, path, i);
        if (hung.equals(fixture)) {
          here = true;
          all = dial(all, path.key("hang").at(i).key("dials"), old, name, false);
        } else {
          elsewhere |= SetupForm.dialsOf(text, hung).contains(old);
        }
      }
      if (here) {
        all = dial(all, path.key("dials"), old, name, elsewhere);
      }
    }
    return all;
  }

  /** A dial's setting under another name; the old one stays where another fixture needs it. */
  private static SetupText dial(
      SetupText text, SetupPath dials, String old, String name, boolean keep) {
    if (!text.names(dials).contains(old) || text.names(dials).contains(name)) {
      return text;
    }
    return keep
        ? text.with(dials.name(name), text.value(dials.name(old)).orElseThrow())
        : text.renamed(dials.name(old), name);
  }
}
