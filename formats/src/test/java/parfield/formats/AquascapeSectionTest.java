package parfield.formats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import parfield.aquascape.Bounds;
import parfield.aquascape.Box;
import parfield.aquascape.Ellipsoid;
import parfield.aquascape.Mesh;
import parfield.aquascape.Rock;
import parfield.optics.Reflectance;

/** The tank of the bench is 90 × 60 cm, its water 50 cm deep. */
class AquascapeSectionTest {
  /** The rocks of the sound bench. */
  private static final String ROCKS =
      TestBench.FULL.substring(
          TestBench.FULL.indexOf("  aquascape:\n"), TestBench.FULL.indexOf("  room:"));

  private static final String CORAL = "wavelength_nm,reflectance\n400,0.1\n700,0.3\n";

  @TempDir private Path folder;

  private TestBench bench(String... rocks) {
    return TestBench.in(folder)
        .with("pink.csv", CORAL)
        .replacing(ROCKS, "  aquascape:\n    " + String.join("\n    ", rocks) + "\n");
  }

  private List<String> faults(String... rocks) {
    return bench(rocks).faults();
  }

  private Rock rock(String rock) {
    return bench("arch: " + rock).read().tank().aquascape().rocks().get(0);
  }

  private static String at(String fault) {
    return fault.replaceFirst("^setup.yaml:\\d+:\\d+: ", "");
  }

  @Test
  void readsBoxesAndEllipsoids() {
    Setup setup =
        bench(
                "arch: {box: {length: 30, width: 20, height: 12}, x: 45, y: 30, yaw: 90,"
                    + " reflectance: 0.4, above bottom: 5}",
                "boulder: {ellipsoid: {length: 20, width: 16, height: 10}, x: 20, y: 20,"
                    + " reflectance: pink.csv, above bottom: -2}")
            .read();
    assertThat(setup.tank().aquascape().rocks())
        .containsExactly(
            new Rock(
                "arch",
                new Box(0.45, 0.3, 0.5 - 0.05 - 0.06, 0.3, 0.2, 0.12, Math.PI / 2),
                Reflectance.gray(0.4)),
            new Rock(
                "boulder",
                new Ellipsoid(0.2, 0.2, 0.5 + 0.02 - 0.05, 0.1, 0.08, 0.05, 0),
                Reflectance.tabulated(new double[] {400, 700}, new double[] {0.1, 0.3})));
  }

  @Test
  void tellsWhatItTookAndWhatRisesOutOfTheWater() {
    Setup setup = bench("arch: {box: {length: 10, width: 10, height: 55}, x: 65, y: 15}").read();
    assertThat(setup.assumptions())
        .contains(
            "tank.aquascape.arch does not state, so taken: above bottom 0 cm, reflectance 0.15",
            "tank.aquascape.arch rises 5 cm out of the water: what is above the water casts no"
                + " shadow");
  }

  @ParameterizedTest
  @ValueSource(strings = {"block.obj", "block.stl", "text.stl", "block.glb", "block.gltf"})
  void readsMeshes(String file) {
    boolean gltf = file.contains("gl");
    TestBench bench =
        bench(
            "block: {mesh: "
                + file
                + (gltf ? "" : ", unit: cm, up: z")
                + ", x: 45, y: 30, yaw: 90, above bottom: 10}");
    bench.with("block.obj", Blocks.obj()).with("block.stl", Blocks.binaryStl());
    bench.with("text.stl", Blocks.textStl()).with("block.glb", Blocks.glb());
    bench.with("block.gltf", Blocks.gltf());
    Mesh mesh = (Mesh) bench.read().tank().aquascape().rocks().get(0).shape();
    assertThat(mesh.triangles()).isEqualTo(12);
    assertThat(mesh.volume()).isCloseTo(0.006, within(1e-9));
    // Turned by 90 degrees its length lies front to back; it is 10 cm high.
    Bounds bounds = mesh.bounds();
    assertThat(bounds.fromX()).isCloseTo(0.35, within(1e-7));
    assertThat(bounds.toX()).isCloseTo(0.55, within(1e-7));
    assertThat(bounds.fromY()).isCloseTo(0.15, within(1e-7));
    assertThat(bounds.toY()).isCloseTo(0.45, within(1e-7));
    assertThat(bounds.fromDepth()).isCloseTo(0.3, within(1e-7));
    assertThat(bounds.toDepth()).isCloseTo(0.4, within(1e-7));
  }

  @Test
  void aMeshWithYUpStandsUpright() {
    TestBench bench = bench("block: {mesh: block.obj, unit: cm, x: 45, y: 30}");
    bench.with("block.obj", Blocks.obj());
    Setup setup = bench.read();
    Bounds bounds = setup.tank().aquascape().rocks().get(0).shape().bounds();
    assertThat(bounds.sizeX()).isCloseTo(0.3, within(1e-12));
    assertThat(bounds.sizeY()).isCloseTo(0.1, within(1e-12));
    assertThat(bounds.sizeZ()).isCloseTo(0.2, within(1e-12));
    assertThat(setup.assumptions())
        .contains(
            "tank.aquascape.block does not state, so taken: above bottom 0 cm, reflectance 0.15,"
                + " up y");
  }

  @Test
  void aSlipOfTheUnitIsToldWithTheSizeAndTheLikelyUnit() {
    TestBench bench = bench("block: {mesh: block.stl, unit: m, x: 45, y: 30}");
    bench.with("block.stl", Blocks.binaryStl());
    assertThat(bench.faults())
        .singleElement()
        .extracting(AquascapeSectionTest::at)
        .isEqualTo(
            "tank.aquascape.block.mesh: got a rock of 30 m, taking the file to be in m, allowed"
                + " from 5 mm to 1.19 m, the tank's diagonal; unit: mm makes it 3 cm, unit: cm"
                + " makes it 30 cm, unit: in makes it 76.2 cm");
    String[] millimetre = Blocks.textStl().split("(?<=vertex )");
    String tiny =
        String.join("", millimetre).replaceAll("e\\+01", "e-04").replaceAll("e\\+00", "e-05");
    bench = bench("block: {mesh: block.stl, unit: m, x: 45, y: 30}").with("block.stl", tiny);
    assertThat(bench.faults())
        .singleElement()
        .asString()
        .contains("got a rock of 0.3 mm, taking the file to be in m, allowed from 5 mm to 1.19 m")
        .endsWith("; no unit fits: scale the mesh in the program that made it");
    bench = bench("block: {mesh: block.stl, x: 45, y: 30}").with("block.stl", Blocks.binaryStl());
    assertThat(bench.faults())
        .singleElement()
        .extracting(AquascapeSectionTest::at)
        .isEqualTo(
            "tank.aquascape.block.unit: got nothing; the file does not say its unit, and its"
                + " longest side is 30: unit: mm makes it 3 cm, unit: cm makes it 30 cm, unit: in"
                + " makes it 76.2 cm");
  }

  @Test
  void refusesWhatIsNoRock() {
    assertThat(faults("arch: {x: 45, y: 30}"))
        .singleElement()
        .extracting(AquascapeSectionTest::at)
        .isEqualTo(
            "tank.aquascape.arch: got no shape, allowed one of box, ellipsoid, mesh; write {box:"
                + " {length: 30, width: 20, height: 15}, x: 45, y: 30}, or ellipsoid or mesh in"
                + " place of box");
    assertThat(
            faults(
                "arch: {box: {length: 3, width: 2, height: 1}, ellipsoid: {}, x: 45, y: 30, up: z}"))
        .singleElement()
        .asString()
        .contains("got box and ellipsoid, allowed one of box, ellipsoid, mesh");
    assertThat(faults("arch: {box: {length: 3, width: 2, height: 1}, unit: mm, x: 45, y: 30}"))
        .singleElement()
        .asString()
        .contains("arch.unit: got a unit for box, allowed a unit for a mesh only; delete it");
    assertThat(
            faults(
                "arch: {box: {length: 0, width: 2}, x: 45, y: 30, reflectance: 1}",
                "pillar: {box: {length: 3, width: 2, height: 1}, y: 30}"))
        .extracting(AquascapeSectionTest::at)
        .containsExactly(
            "tank.aquascape.arch.reflectance: got 1, allowed 0 to below 1; state the share of light"
                + " that it throws back: overgrown rock about 0.15, white rock about 0.5",
            "tank.aquascape.pillar.x: got nothing; state the middle of the rock, along x");
    assertThat(faults("arch: {box: {length: 0, width: 2}, x: 45, y: 30}"))
        .extracting(AquascapeSectionTest::at)
        .containsExactly(
            "tank.aquascape.arch.box.length: got 0, allowed above 0 to 2000 cm; state the whole"
                + " length of it",
            "tank.aquascape.arch.box.height: got nothing; state the whole height of it");
    assertThat(faults("arch: {mesh: arch.ply, unit: mm, x: 45, y: 30}"))
        .singleElement()
        .asString()
        .contains(
            "got arch.ply, allowed a file that ends in .obj, .stl, .glb or .gltf; export the mesh"
                + " as one of these");
    assertThat(faults("arch: {mesh: none.stl, unit: mm, x: 45, y: 30}"))
        .singleElement()
        .asString()
        .contains("arch.mesh: got none.stl, no such file, allowed a file that exists");
  }

  @Test
  void refusesARockOutsideTheWater() {
    assertThat(faults("arch: {box: {length: 30, width: 20, height: 12}, x: 120, y: 30}"))
        .singleElement()
        .extracting(AquascapeSectionTest::at)
        .isEqualTo(
            "tank.aquascape.arch: got x 105 to 135, y 20 to 40, 0 to 12 above the bottom, allowed"
                + " some of it within x 0 to 90, y 0 to 60, 0 to 50 cm above the bottom; move it"
                + " into the water, or delete it");
    assertThat(
            faults(
                "arch: {box: {length: 30, width: 20, height: 12}, x: 45, y: 30, above bottom:"
                    + " -12}"))
        .singleElement()
        .asString()
        .contains("-12 to 0 above the bottom");
  }

  @Test
  void aTankThatIsWrongStillHasItsRocksLookedAt() {
    assertThat(
            bench("arch: {box: {length: 30, width: 20, height: 12}, x: 45, y: 30}")
                .with(
                    "setup.yaml",
                    TestBench.FULL
                        .replace("water: 50", "water: -1")
                        .replace(ROCKS, "  aquascape: {arch: {box: 3, x: 45, y: 30}}\n"))
                .faults())
        .hasSize(2)
        .anyMatch(fault -> fault.contains("tank.water: got -1"))
        .anyMatch(fault -> fault.contains("tank.aquascape.arch.box: got 3, allowed a map"));
  }

  @Test
  void refusesBadReflectances() {
    TestBench bench =
        bench(
            "arch: {box: {length: 3, width: 2, height: 1}, x: 45, y: 30,"
                + " reflectance: pink.csv}");
    assertThat(bench.with("pink.csv", "wavelength_nm,reflectance\n400,35\n").faults())
        .containsExactly(
            "pink.csv:2: reflectance: got 35, allowed 0 to below 1; write a share: 20 % as 0.20");
    assertThat(bench.with("pink.csv", "wavelength_nm,reflectance\n").faults())
        .containsExactly(
            "pink.csv: number of samples: got 0, allowed 1 or more; give wavelengths and"
                + " reflectances");
    assertThat(bench.with("pink.csv", "nm,colour\n400,0.1\n").faults())
        .containsExactly(
            "pink.csv:1: head of the reflectance: got nm, colour, allowed wavelength_nm and"
                + " reflectance; write the first line as wavelength_nm,reflectance");
    assertThat(
            bench
                .with("pink.csv", "wavelength_nm,reflectance\n500,0.1\n500,0.1\nx,0.1\n9,0.1\n")
                .faults())
        .containsExactly(
            "pink.csv:3: wavelength: got 500 after 500, allowed ascending wavelengths; sort the"
                + " lines, each wavelength once",
            "pink.csv:4: wavelength: got x, allowed a number; write a number",
            "pink.csv:5: wavelength: got 9, allowed 100 to 4000 nm; give wavelengths in nm");
  }

  private List<String> meshFaults(String file, byte[] bytes) {
    return bench("block: {mesh: " + file + ", unit: cm, up: z, x: 45, y: 30}")
        .with(file, bytes)
        .faults();
  }

  private List<String> meshFaults(String file, String text) {
    return meshFaults(file, text.getBytes(StandardCharsets.UTF_8));
  }

  @Test
  void refusesEmptyFilesAndFilesWithoutASurface() {
    for (String file : List.of("block.obj", "block.stl", "block.glb")) {
      assertThat(meshFaults(file, ""))
          .containsExactly(file + ": the file is empty: export the mesh once more");
    }
    assertThat(meshFaults("block.obj", "v 0 0 0\nv 1 0 0\nl 1 2\n"))
        .containsExactly(
            "block.obj: number of triangles: got 0, allowed 1 or more; export the surface of the"
                + " rock, not its outline or its points");
    assertThat(meshFaults("block.stl", "solid\nendsolid\n"))
        .singleElement()
        .asString()
        .contains("number of triangles: got 0");
    assertThat(meshFaults("block.stl", "rubbish"))
        .containsExactly(
            "block.stl: the file is no STL: got 7 bytes, allowed text that begins with solid, or 84"
                + " bytes and more; export the mesh once more");
    assertThat(meshFaults("block.glb", "rubbish"))
        .singleElement()
        .asString()
        .startsWith("block.glb: the file is no glTF 2.0 that can be read: got Unrecognized token")
        .endsWith("; export it as GLB, all in one file, without compression");
  }

  @Test
  void refusesFilesThatWereCutShort() {
    byte[] binary = Blocks.binaryStl();
    assertThat(meshFaults("block.stl", Arrays.copyOf(binary, 500)))
        .singleElement()
        .asString()
        // Begins as text, and is not as long as a binary one should be.
        .startsWith("block.stl:1: ");
    byte[] plain = binary.clone();
    plain[0] = 'x';
    assertThat(meshFaults("block.stl", Arrays.copyOf(plain, 500)))
        .containsExactly(
            "block.stl: length of the file: got 500 bytes where it states 12 triangles, allowed 684"
                + " bytes; it was cut short: copy or export it once more");
    String text = Blocks.textStl();
    assertThat(meshFaults("block.stl", text.substring(0, text.lastIndexOf("  facet"))))
        .singleElement()
        .asString()
        .contains("end of the file: got no endsolid, allowed endsolid in the last line");
    byte[] glb = Blocks.glb();
    assertThat(meshFaults("block.glb", Arrays.copyOf(glb, 700)))
        .containsExactly(
            "block.glb: length of the file: got 700 bytes, allowed "
                + glb.length
                + " bytes, as it states; it was cut short: copy or export it once more");
    assertThat(meshFaults("block.obj", Blocks.obj().replaceFirst("v 0.0 0.0 0.0\\R", "")))
        .last()
        .asString()
        .contains("allowed one of the 7 vertices before it; the file may be cut short");
  }

  @Test
  void refusesNumbersThatAreNone() {
    assertThat(meshFaults("block.obj", Blocks.obj().replace("v 30.0 0.0 0.0", "v 30.0 nan 0.0")))
        .containsExactly(
            "block.obj:4: vertex: got nan, allowed a finite number; export the mesh once more");
    assertThat(meshFaults("block.obj", Blocks.obj().replace("v 30.0 0.0 0.0", "v 30.0 0.0")))
        .containsExactly(
            "block.obj:4: vertex: got 2 numbers, allowed x, y and z; export the mesh once more");
    assertThat(
            meshFaults("block.obj", Blocks.obj() + "f 1 2\nf 1 2 x\nf 1 2 99\nf 1 2 -9\nf 1 2 0\n"))
        .extracting(fault -> fault.replaceFirst(";.*", ""))
        .containsExactly(
            "block.obj:25: face: got 2 corners, allowed 3 or more",
            "block.obj:26: corner of a face: got x, allowed a vertex number",
            "block.obj:27: corner of a face: got 99, allowed one of the 8 vertices before it",
            "block.obj:28: corner of a face: got -9, allowed one of the 8 vertices before it",
            "block.obj:29: corner of a face: got 0, allowed one of the 8 vertices before it");
    assertThat(
            meshFaults(
                "block.stl", Blocks.textStl().replaceFirst("vertex 0.0*e\\+00", "vertex inf")))
        .containsExactly(
            "block.stl:4: vertex: got inf, allowed a finite number; export the mesh once more");
    assertThat(meshFaults("block.stl", Blocks.textStl().replaceFirst("facet", "face")))
        .containsExactly(
            "block.stl:2: line of an STL: got face, allowed solid, facet, outer, vertex, endloop,"
                + " endfacet, endsolid; export the mesh once more");
    byte[] binary = Blocks.binaryStl();
    ByteBuffer.wrap(binary).order(ByteOrder.LITTLE_ENDIAN).putFloat(84 + 50 + 12 + 4, Float.NaN);
    assertThat(meshFaults("block.stl", binary))
        .containsExactly(
            "block.stl: triangle 2, corner 1: got 0.0, NaN, 0.0, allowed finite numbers; mend the"
                + " mesh in the program that made it, and export it once more");
  }

  @Test
  void refusesGltfThatItCannotRead() {
    String json = Blocks.gltfJson("");
    assertThat(meshFaults("block.gltf", Blocks.gltfJson("\"uri\": \"block.bin\", ")))
        .containsExactly(
            "block.gltf: geometry in another file: got block.bin, allowed geometry in the file"
                + " itself; export it as GLB, all in one file, without compression");
    assertThat(
            meshFaults(
                "block.glb",
                Blocks.glb(
                    json.replace(
                        "\"scene\": 0",
                        "\"extensionsRequired\": [\"KHR_draco_mesh_compression\"]"))))
        .singleElement()
        .asString()
        .contains("extension that the file needs: got KHR_draco_mesh_compression, allowed none");
    assertThat(
            meshFaults(
                "block.glb", Blocks.glb(json.replace("\"count\": 8", "\"count\": 2000000000"))))
        .singleElement()
        .asString()
        .contains("count of an accessor: got 2000000000, allowed 0 to 6000000");
    assertThat(
            meshFaults(
                "block.glb",
                Blocks.glb(json.replace("{\"mesh\": 0}", "{\"mesh\": 0, \"children\": [0]}"))))
        .singleElement()
        .asString()
        .contains("nesting of nodes: got more, allowed at most 100 levels, no circle");
    assertThat(meshFaults("block.glb", Blocks.glb(json.replace("\"count\": 8", "\"count\": 5"))))
        .singleElement()
        .asString()
        .contains("corner of triangle 3: got 5, allowed a vertex, 0 to 4");
    assertThat(
            meshFaults(
                "block.glb",
                Blocks.glb(json.replace("\"indices\": 1", "\"indices\": 1, \"mode\": 5"))))
        .singleElement()
        .asString()
        .contains(
            "part of the mesh: got strips, fans or packed positions, allowed plain triangles");
  }

  @Test
  void refusesASurfaceThatEnclosesNothing() {
    assertThat(meshFaults("flat.obj", "v 0 0 0\nv 9 0 0\nv 9 9 0\nv 0 9 0\nf 1 2 3 4\n"))
        .singleElement()
        .extracting(AquascapeSectionTest::at)
        .isEqualTo(
            "tank.aquascape.block.mesh: got flat.obj: its 2 triangles enclose no volume (0.00 m³"
                + " within 0.0162 m² of surface), allowed a surface that encloses a body; mend the"
                + " mesh in the program that made it");
  }

  @Test
  void tellsWhatItRepaired() {
    // The foot is open, one side faces inward, one triangle is none.
    String text =
        Blocks.obj()
            .replaceFirst("f 1/1/1 3//1 4\\R", "f 1 1 2\n")
            .replaceFirst("f 1/1/1 4//1 2\\R", "");
    String turned = text.replaceFirst("f 5/1/1 6//1 8\\R", "f 5 8 6\n");
    TestBench bench = bench("block: {mesh: block.obj, unit: cm, up: z, x: 45, y: 30}");
    Setup setup = bench.with("block.obj", turned).read();
    assertThat(setup.assumptions())
        .contains(
            "block.obj was repaired: 1 triangle without an area or written twice left out; 1"
                + " triangle turned to face outward; 1 hole closed, the widest 30 cm across");
    assertThat(setup.tank().aquascape().rocks().get(0).shape().volume())
        .isCloseTo(0.006, within(1e-12));
  }

  @Test
  void aMillionTrianglesAreThinnedAndMoreThanTwoRefused() {
    TestBench bench = bench("block: {mesh: many.stl, unit: mm, x: 45, y: 30}");
    Setup setup =
        bench("block: {mesh: many.stl, unit: mm, x: 45, y: 30, above bottom: 1}")
            .with("many.stl", sphere(502))
            .read();
    assertThat(setup.assumptions())
        .anyMatch(
            note ->
                note.matches(
                    "many.stl was repaired: thinned from 1006008 to 1?\\d{5} triangles, no point"
                        + " moved by more than [0-9.]+ mm"));
    Mesh mesh = (Mesh) setup.tank().aquascape().rocks().get(0).shape();
    assertThat(mesh.volume())
        .isCloseTo(4 * Math.PI / 3 * 0.001, within(0.01 * 4 * Math.PI / 3 * 0.001));
    ByteBuffer head = ByteBuffer.allocate(84).order(ByteOrder.LITTLE_ENDIAN).putInt(80, 3_000_000);
    assertThat(bench.with("many.stl", head.array()).faults())
        .containsExactly(
            "many.stl: number of triangles: got more, allowed at most 2000000; thin the mesh in the"
                + " program that made it; 100000 are plenty for a rock");
  }

  /** A sphere of radius 100, in twice so many steps round and so many from pole to pole. */
  private static byte[] sphere(int steps) {
    int around = 2 * steps;
    int count = 2 * around * (steps - 1);
    ByteBuffer out = ByteBuffer.allocate(84 + 50 * count).order(ByteOrder.LITTLE_ENDIAN);
    out.putInt(80, count).position(84);
    for (int i = 0; i < steps; i++) {
      for (int j = 0; j < around; j++) {
        if (i > 0) {
          facet(out, steps, new int[] {i, j, i + 1, j, i, j + 1});
        }
        if (i < steps - 1) {
          facet(out, steps, new int[] {i, j + 1, i + 1, j, i + 1, j + 1});
        }
      }
    }
    return out.array();
  }

  private static void facet(ByteBuffer out, int steps, int[] nodes) {
    out.putFloat(0).putFloat(0).putFloat(0);
    for (int k = 0; k < 6; k += 2) {
      double polar = Math.PI * nodes[k] / steps;
      double azimuth = Math.PI * (nodes[k + 1] % (2 * steps)) / steps;
      double sine = nodes[k] % steps == 0 ? 0 : Math.sin(polar);
      out.putFloat((float) (100 * sine * Math.cos(azimuth)));
      out.putFloat((float) (100 * sine * Math.sin(azimuth)));
      out.putFloat((float) (100 * Math.cos(polar)));
    }
    out.putShort((short) 0);
  }

  @Test
  void aReadingInsideARockIsRefused() {
    // Readings stand at a depth of 15 cm.
    assertThat(faults("pillar: {box: {length: 6, width: 6, height: 40}, x: 45, y: 30}"))
        .containsExactly(
            "low.csv:3: place: got x 45, y 30, depth 15 cm, inside rock pillar, allowed a place in"
                + " the water; correct the place, or make the rock smaller where it is not so big");
  }

  @Test
  void aMeshNamedTwiceIsReadOnce() {
    TestBench bench =
        bench(
            "one: {mesh: block.stl, unit: cm, x: 20, y: 30}",
            "two: {mesh: block.stl, unit: cm, x: 60, y: 30, yaw: 45}");
    assertThat(bench.with("block.stl", Blocks.binaryStl()).read().tank().aquascape().rocks())
        .extracting(Rock::name)
        .containsExactly("one", "two");
    assertThat(rock("{mesh: block.stl, unit: cm, up: z, x: 20, y: 30}").shape().volume())
        .isCloseTo(0.006, within(1e-9));
  }
}
