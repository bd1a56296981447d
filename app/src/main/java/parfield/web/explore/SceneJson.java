package parfield.web.explore;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.stream.Collectors;
import parfield.answer.Json;
import parfield.field.Departure;
import parfield.formats.Setup;
import parfield.lamp.Channel;
import parfield.lamp.Emitter;
import parfield.lamp.Fixture;
import parfield.lamp.Master;
import parfield.rig.Hanging;
import parfield.rig.Rig;
import parfield.survey.Band;
import parfield.survey.Reading;
import parfield.survey.Survey;
import parfield.tank.Tank;
import parfield.units.LengthUnit;

/** What a page must know of a bench to draw its light: JSON, lengths in metres. */
final class SceneJson {
  private SceneJson() {}

  static ObjectNode of(
      Setup setup, LengthUnit unit, VolumeFields.Lattice fine, VolumeFields.Lattice coarse) {
    ObjectNode json = Json.object();
    Tank tank = setup.tank();
    ObjectNode box = json.putObject("tank");
    box.put("length", tank.length());
    box.put("width", tank.width());
    box.put("depth", tank.depth());
    box.put("rim", tank.opening().rim());
    json.put("unit", unit.symbol());
    json.put("perMetre", unit.fromMetres(1));
    json.set("fine", lattice(fine));
    json.set("coarse", lattice(coarse));
    ArrayNode bands = json.putArray("bands");
    for (Band band : setup.bands().values()) {
      bands.addObject().put("name", band.name()).put("from", band.from()).put("to", band.to());
    }
    ObjectNode fixtures = json.putObject("fixtures");
    setup.fixtures().values().forEach(fixture -> fixtures.set(fixture.name(), fixture(fixture)));
    ArrayNode rigs = json.putArray("rigs");
    setup.rigs().values().forEach(rig -> rigs.add(rig(rig)));
    ArrayNode rocks = json.putArray("rocks");
    tank.aquascape().rocks().forEach(rock -> rocks.add(RockJson.of(rock)));
    ArrayNode readings = json.putArray("readings");
    for (Survey survey : setup.surveys().values()) {
      double[] ppfd = survey.ppfd();
      for (int i = 0; i < ppfd.length; i++) {
        Reading reading = survey.readings().get(i);
        readings
            .addObject()
            .put("rig", survey.rig().name())
            .put("x", reading.place().x())
            .put("y", reading.place().y())
            .put("depth", reading.place().depth())
            .put("ppfd", ppfd[i]);
      }
    }
    json.put(
        "leftOut",
        Departure.of(tank).stream().map(Departure::inWords).collect(Collectors.joining(" ")));
    return json;
  }

  private static ObjectNode lattice(VolumeFields.Lattice lattice) {
    ObjectNode json = Json.object();
    json.put("columns", lattice.columns());
    json.put("rows", lattice.rows());
    json.put("layers", lattice.layers());
    return json;
  }

  private static ObjectNode fixture(Fixture fixture) {
    ObjectNode json = Json.object();
    json.put("length", fixture.length());
    json.put("width", fixture.width());
    ArrayNode emitters = json.putArray("emitters");
    for (Emitter emitter : fixture.emitters()) {
      emitters.addObject().put("x", emitter.x()).put("y", emitter.y());
    }
    ArrayNode channels = json.putArray("channels");
    for (Channel channel : fixture.channels()) {
      ObjectNode entry = channels.addObject();
      entry.put("name", channel.name());
      ArrayNode outputs = entry.putArray("outputs");
      for (int percent = 0; percent <= 100; percent++) {
        outputs.add(channel.curve().outputAt(percent));
      }
    }
    ArrayNode masters = json.putArray("masters");
    for (Master master : fixture.masters()) {
      ObjectNode entry = masters.addObject();
      entry.put("name", master.name());
      ArrayNode scales = entry.putArray("scales");
      master.scales().forEach(scales::add);
    }
    return json;
  }

  private static ObjectNode rig(Rig rig) {
    ObjectNode json = Json.object();
    json.put("name", rig.name());
    ArrayNode hangings = json.putArray("hangings");
    ObjectNode dials = json.putObject("dials");
    for (Hanging hanging : rig.hangings()) {
      hangings
          .addObject()
          .put("fixture", hanging.fixture().name())
          .put("x", hanging.x())
          .put("y", hanging.y())
          .put("height", hanging.height())
          .put("tilt", hanging.tilt())
          .put("yaw", hanging.yaw());
      ObjectNode of = dials.putObject(hanging.fixture().name());
      for (String dial : hanging.fixture().dials()) {
        of.put(dial, hanging.setting().percent(dial));
      }
    }
    return json;
  }
}
