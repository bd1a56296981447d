package parfield.validation;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import parfield.optics.HenyeyGreenstein;
import parfield.optics.Interface;
import parfield.optics.PhaseFunction;
import parfield.optics.Rayleigh;
import parfield.optics.TabulatedPhase;
import parfield.photon.PlaneParallel;
import parfield.photon.PlaneParallel.Medium;
import parfield.photon.PlaneParallel.Sky;

/**
 * Every published case. Packets are those that bring each figure to its precision, found by trial.
 */
final class PublishedCases {
  private static final double WATER = 1.34;
  private static final double ENDLESS = Double.POSITIVE_INFINITY;
  private static final PhaseFunction ISOTROPIC = PhaseFunction.isotropic();

  private PublishedCases() {}

  static List<PublishedCase> all() {
    return Stream.of(slabs(), ocean(), bottoms(), faces(), TankCases.all())
        .flatMap(List::stream)
        .toList();
  }

  // --- turbid layers, lengths in cm ---

  private static List<PublishedCase> slabs() {
    return List.of(
        matchedSlab("matched slab", 10, .75),
        PublishedCase.layered(
            "half-space of index 1.5",
            1_000_000,
            medium(new Medium(ENDLESS, 1.5, 10, 90, ISOTROPIC), Sky.beam(1, 1)),
            List.of()),
        threeLayers(),
        PublishedCase.layered(
            "first face of index 1.37",
            6_000_000,
            medium(new Medium(ENDLESS, 1.37, 1, 0, ISOTROPIC), Sky.beam(1, 1)),
            List.of()),
        PublishedCase.layered(
            "oblique beam on an isotropic slab",
            500_000,
            medium(new Medium(1, 1, .01, .99, ISOTROPIC), Sky.beam(1, .5)),
            List.of()),
        PublishedCase.layered(
            "oblique beam on a forward scattering slab",
            500_000,
            medium(new Medium(4, 1, .01, .99, new HenyeyGreenstein(.5)), Sky.beam(1, .5)),
            List.of()));
  }

  /** Absorption and asymmetry may be wrong on purpose: a check must be able to fail. */
  static PublishedCase matchedSlab(String name, double absorption, double asymmetry) {
    return PublishedCase.layered(
        name,
        1_500_000,
        medium(new Medium(.02, 1, absorption, 90, new HenyeyGreenstein(asymmetry)), Sky.beam(1, 1)),
        List.of());
  }

  private static PublishedCase threeLayers() {
    // Layers of the MCML manual's sample input, from memory; its results confirm them.
    return PublishedCase.layered(
        "three layers",
        500_000,
        new PlaneParallel(
            List.of(
                new Medium(.1, 1.37, 1, 100, new HenyeyGreenstein(.9)),
                new Medium(.1, 1.37, 1, 10, ISOTROPIC),
                new Medium(.2, 1.37, 2, 10, new HenyeyGreenstein(.7))),
            1,
            1,
            OptionalDouble.empty(),
            Sky.beam(1, 1)),
        List.of());
  }

  // --- water under sun or sky; lengths are optical depths ---

  private static List<PublishedCase> ocean() {
    PhaseFunction particles = TabulatedPhase.averageParticle();
    Sky sun = Sky.beam(.5, .5);
    List<Double> depths = List.of(1.0, 5.0, 10.0);
    return List.of(
        PublishedCase.layered(
            "ocean problem 1 at albedo 0.2", 1_500_000, deep(.2, new Rayleigh(), sun), depths),
        PublishedCase.layered(
            "ocean problem 1 at albedo 0.9", 500_000, deep(.9, new Rayleigh(), sun), depths),
        PublishedCase.layered(
            "ocean problem 2 at albedo 0.2", 2_000_000, deep(.2, particles, sun), depths),
        PublishedCase.layered(
            "ocean problem 2 at albedo 0.9", 500_000, deep(.9, particles, sun), depths),
        PublishedCase.layered(
            "ocean problem 6 at albedo 0.2",
            15_000_000,
            over(.5, new Medium(5, WATER, .8, .2, particles), sun),
            List.of(1.0, 5.0)),
        PublishedCase.layered(
            "deep Rayleigh water at albedo 0.2",
            8_000_000,
            deep(.2, new Rayleigh(), sun),
            List.of(0.0, 1.0, 5.0, 10.0)),
        PublishedCase.layered(
            "deep Rayleigh water at albedo 0.9",
            6_000_000,
            deep(.9, new Rayleigh(), sun),
            List.of(0.0, 1.0, 5.0, 10.0)));
  }

  private static List<PublishedCase> bottoms() {
    Sky sun = Sky.beam(.5, .5);
    Sky beam = Sky.beam(1, 1);
    List<Double> depths = List.of(0.0, 1.0, 2.5, 5.0);
    return List.of(
        PublishedCase.layered(
            "Rayleigh water over a bottom at albedo 0.2",
            8_000_000,
            over(.5, new Medium(5, WATER, .8, .2, new Rayleigh()), sun),
            depths),
        PublishedCase.layered(
            "Rayleigh water over a bottom at albedo 0.9",
            3_000_000,
            over(.5, new Medium(5, WATER, .1, .9, new Rayleigh()), sun),
            depths),
        PublishedCase.layered(
            "beam into water of g .90 over a bottom",
            3_000_000,
            over(.3, new Medium(.5, WATER, .5, .5, new HenyeyGreenstein(.9)), beam),
            List.of(0.0, .25, .5)),
        PublishedCase.layered(
            "beam into water of g .75 over a bottom",
            3_000_000,
            over(.3, new Medium(1, WATER, .2, .8, new HenyeyGreenstein(.75)), beam),
            List.of(0.0, .5, 1.0)),
        PublishedCase.layered(
            "beam into clear water over a bottom",
            3_000_000,
            over(.5, new Medium(.3, WATER, 1, 0, ISOTROPIC), beam),
            List.of(0.0, .15, .3)));
  }

  private static List<PublishedCase> faces() {
    List<PublishedCase> cases = new ArrayList<>();
    Map.of(0, 6_000_000L, 60, 2_000_000L, 80, 500_000L).entrySet().stream()
        .sorted(Map.Entry.comparingByKey())
        .forEach(
            entry ->
                cases.add(
                    PublishedCase.layered(
                        "beam onto water at " + entry.getKey() + " degrees",
                        entry.getValue(),
                        dark(Sky.beam(1, Math.cos(Math.toRadians(entry.getKey())))),
                        List.of())));
    cases.add(
        PublishedCase.computed(
            "Fresnel table of 19 angles",
            (effort, watch) ->
                Map.of(
                    "greatest miss",
                    Figure.computed(FresnelTable.greatestMiss()),
                    "greatest miss of percent",
                    Figure.computed(FresnelTable.greatestMissOfPercent()))));
    cases.add(
        PublishedCase.layered("even sky onto water", 3_000_000, dark(Sky.even(1)), List.of(0.0)));
    cases.add(
        PublishedCase.layered("n-squared law", 500_000, dark(Sky.even(Math.PI)), List.of(0.0)));
    cases.add(
        PublishedCase.layered(
            "diffuse light from below",
            500_000,
            new PlaneParallel(
                List.of(new Medium(ENDLESS, 1, 1, 0, ISOTROPIC)),
                WATER,
                1,
                OptionalDouble.empty(),
                Sky.even(1)),
            List.of()));
    return cases;
  }

  private static PlaneParallel deep(double albedo, PhaseFunction phase, Sky sky) {
    return medium(new Medium(ENDLESS, WATER, 1 - albedo, albedo, phase), sky);
  }

  /** Water that takes everything and scatters nothing. */
  private static PlaneParallel dark(Sky sky) {
    return medium(new Medium(ENDLESS, WATER, 1, 0, ISOTROPIC), sky);
  }

  private static PlaneParallel medium(Medium medium, Sky sky) {
    return new PlaneParallel(List.of(medium), 1, 1, OptionalDouble.empty(), sky);
  }

  private static PlaneParallel over(double reflectance, Medium medium, Sky sky) {
    return new PlaneParallel(List.of(medium), 1, 1, OptionalDouble.of(reflectance), sky);
  }

  /** Fresnel's equations against a published table. */
  private static final class FresnelTable {
    /** Reflectance of water of index 1.34 every 5 degrees (computed by an independent program). */
    private static final double[] REFLECTANCE = {
      0.021112, 0.021112, 0.021123, 0.021168, 0.021298, 0.021597,
      0.022199, 0.023323, 0.025325, 0.028782, 0.034646, 0.044499,
      0.061005, 0.088695, 0.135361, 0.214558, 0.350200, 0.585329,
      1.000000
    };

    /** The same of index 4/3 in percent, rounded to .1 (Jerlov 1976, Marine Optics, table XVI). */
    private static final double[] JERLOV_PERCENT = {
      2, 2, 2, 2, 2.1, 2.1, 2.1, 2.3, 2.4, 2.8, 3.4, 4.4, 5.9, 8.7, 13.3, 21.2, 34.9, 58.3, 100
    };

    private static double greatestMiss() {
      return greatestMiss(REFLECTANCE, WATER, 1);
    }

    private static double greatestMissOfPercent() {
      return greatestMiss(JERLOV_PERCENT, 4.0 / 3, 100);
    }

    private static double greatestMiss(double[] table, double index, double unit) {
      double worst = 0;
      for (int i = 0; i < table.length; i++) {
        double cosine = Math.cos(Math.toRadians(5 * i));
        double reflectance = unit * Interface.reflectance(cosine, 1, index);
        worst = Math.max(worst, Math.abs(reflectance - table[i]));
      }
      return worst;
    }
  }
}
