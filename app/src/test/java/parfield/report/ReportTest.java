package parfield.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureNode;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import parfield.answer.Advice;
import parfield.answer.Bench;
import parfield.answer.BenchFit;
import parfield.answer.FieldPrediction;
import parfield.answer.Numbers;
import parfield.answer.RecommendationAnswer;
import parfield.answer.Table;
import parfield.care.Caution;
import parfield.demo.DemoBench;
import parfield.field.FastSolver;
import parfield.fit.LightModel;
import parfield.plan.NamedTank;
import parfield.plan.Planner;
import parfield.plan.Recommendation;
import parfield.rig.Rig;
import parfield.units.LengthUnit;

/** The report of the invented bench, as a page and on paper. */
class ReportTest {
  private static final String TITLE = "Light <b>& more</b> \"for\" an invented tank";

  private static Bench bench;
  private static LightModel model;
  private static RecommendationAnswer advice;
  private static Report report;
  private static ReportPage page;
  private static final Map<Paper, byte[]> PRINTED = new HashMap<>();

  @BeforeAll
  static void compose(@TempDir Path folder) throws IOException {
    for (Map.Entry<String, String> file : DemoBench.files(1).entrySet()) {
      Path target = folder.resolve(file.getKey());
      Files.createDirectories(target.getParent());
      Files.writeString(target, file.getValue());
    }
    bench = Bench.read(folder.resolve(DemoBench.SETUP));
    FastSolver solver = new FastSolver();
    model = BenchFit.of(bench.surveys(), solver).model();
    Recommendation recommendation =
        new Planner(solver)
            .recommend(model, bench.demands(), Advice.search(bench, bench.usualDepth()));
    advice = Advice.answer(bench, model, recommendation);
    report =
        new Reports(solver)
            .of(
                TITLE,
                "Made by a test.",
                bench,
                model,
                advice,
                NamedTank.common().subList(0, 2),
                LengthUnit.CM);
    page = ReportPage.of(report);
    for (Paper paper : Paper.values()) {
      PRINTED.put(paper, page.pdf(paper));
    }
  }

  private static Document parsed() throws Exception {
    DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
    factory.setFeature("http://apache.org/xml/features/nonvalidating/load-external-dtd", false);
    return factory
        .newDocumentBuilder()
        .parse(new ByteArrayInputStream(page.html().getBytes(StandardCharsets.UTF_8)));
  }

  private static List<Element> all(Document document, String name) {
    NodeList nodes = document.getElementsByTagName(name);
    List<Element> elements = new ArrayList<>();
    for (int i = 0; i < nodes.getLength(); i++) {
      elements.add((Element) nodes.item(i));
    }
    return elements;
  }

  @Test
  @DisplayName("the page needs no other file, and lets nothing be fetched or run")
  void alone() throws Exception {
    Document document = parsed();
    assertThat(all(document, "img"))
        .isNotEmpty()
        .allSatisfy(
            image -> {
              assertThat(image.getAttribute("src")).startsWith("data:image/svg+xml;base64,");
              assertThat(image.getAttribute("alt")).isNotBlank();
            });
    assertThat(all(document, "script")).isEmpty();
    assertThat(all(document, "link")).isEmpty();
    assertThat(page.html()).doesNotContain("url(").doesNotContain("@import");
    assertThat(page.html()).contains("default-src 'none'");
  }

  @Test
  @DisplayName("what a person typed stands there as typed, and is no markup")
  void escaped() throws Exception {
    Document document = parsed();
    assertThat(all(document, "title").get(0).getTextContent()).isEqualTo(TITLE);
    assertThat(all(document, "h1").get(0).getTextContent()).isEqualTo(TITLE);
    assertThat(all(document, "b")).isEmpty();
  }

  @Test
  @DisplayName("every table is that of the command line, cell by cell")
  void sameNumbers() throws Exception {
    List<List<String>> rows =
        all(parsed(), "tr").stream()
            .map(
                row -> {
                  List<String> cells = new ArrayList<>();
                  for (int i = 0; i < row.getChildNodes().getLength(); i++) {
                    cells.add(row.getChildNodes().item(i).getTextContent());
                  }
                  return cells;
                })
            .toList();
    Recommendation recommendation = advice.recommendation();
    Stream.of(
            advice.verdicts(LengthUnit.CM),
            advice.figures(LengthUnit.CM),
            advice.bandSettings(LengthUnit.CM).orElseThrow(),
            RecommendationAnswer.options(recommendation.options(), LengthUnit.CM),
            report.field(),
            report.model().heldOut().orElseThrow(),
            report.model().conditions().orElseThrow(),
            report.elsewhere().orElseThrow().table())
        .forEach(table -> assertThat(rows).containsAll(table.body()).contains(table.header()));
    String text = advice.text(LengthUnit.CM);
    for (Table table : List.of(advice.verdicts(LengthUnit.CM), advice.figures(LengthUnit.CM))) {
      table.body().forEach(row -> row.forEach(cell -> assertThat(text).contains(cell)));
    }
  }

  @Test
  @DisplayName("maps show the figures of a field that is predicted by itself, on one scale")
  void maps() {
    Rig rig = advice.recommendation().best().over(bench.setup().tank());
    FieldPrediction prediction = new FieldPrediction(model, new FastSolver(), rig);
    prediction.addPlane(0.15, FieldPrediction.CELL, bench.bands());
    String mean = Numbers.ppfd(prediction.answer("", List.of()).planes().get(0).mean());
    assertThat(report.light())
        .anySatisfy(
            picture ->
                assertThat(picture.alternative())
                    .startsWith("PPFD seen from above, 15 cm deep: mean " + mean));
    assertThat(Reports.depths(bench)).contains(0.15).hasSizeBetween(3, 4).isSorted();
  }

  @ParameterizedTest
  @EnumSource(Paper.class)
  @DisplayName("printed pages have the size of the paper, and are two to six")
  void sizes(Paper paper) throws IOException {
    try (PDDocument pdf = Loader.loadPDF(PRINTED.get(paper))) {
      assertThat(pdf.getNumberOfPages()).isBetween(2, 6);
      for (PDPage sheet : pdf.getPages()) {
        // ISO 216: 210 mm by 297 mm; US Letter: 8.5 in by 11 in; 72 points an inch.
        double[] points =
            paper == Paper.A4
                ? new double[] {210 / 25.4 * 72, 297 / 25.4 * 72}
                : new double[] {8.5 * 72, 11 * 72};
        assertThat((double) sheet.getMediaBox().getWidth()).isCloseTo(points[0], within(0.5));
        assertThat((double) sheet.getMediaBox().getHeight()).isCloseTo(points[1], within(0.5));
      }
    }
  }

  @ParameterizedTest
  @EnumSource(Paper.class)
  @DisplayName("printed pages are tagged, with a title, a language, and a text for every picture")
  void tagged(Paper paper) throws IOException {
    try (PDDocument pdf = Loader.loadPDF(PRINTED.get(paper))) {
      // ISO 14289-1 (PDF/UA): marked, structure, title shown, language, text in place of figures.
      assertThat(pdf.getDocumentCatalog().getMarkInfo().isMarked()).isTrue();
      assertThat(pdf.getDocumentCatalog().getLanguage()).isEqualTo("en");
      assertThat(pdf.getDocumentCatalog().getViewerPreferences().displayDocTitle()).isTrue();
      assertThat(pdf.getDocumentInformation().getTitle()).isEqualTo(TITLE);
      assertThat(pdf.getDocumentInformation().getSubject()).isNotBlank();
      List<PDStructureElement> elements = new ArrayList<>();
      collect(pdf.getDocumentCatalog().getStructureTreeRoot(), elements);
      assertThat(elements)
          .extracting(PDStructureElement::getStructureType)
          .contains("H1", "H2", "Table", "TH", "TD", "L", "P");
      List<PDStructureElement> figures =
          elements.stream().filter(e -> e.getStructureType().equals("Figure")).toList();
      assertThat(figures)
          .hasSize((int) Stream.of(page.html().split("<img ", -1)).count() - 1)
          .allSatisfy(figure -> assertThat(figure.getAlternateDescription()).isNotBlank());
    }
  }

  private static void collect(PDStructureNode node, List<PDStructureElement> found) {
    for (Object kid : node.getKids()) {
      if (kid instanceof PDStructureElement element) {
        found.add(element);
        collect(element, found);
      }
    }
  }

  @ParameterizedTest
  @EnumSource(Paper.class)
  @DisplayName("every font of the printed pages is in the file")
  void fonts(Paper paper) throws IOException {
    try (PDDocument pdf = Loader.loadPDF(PRINTED.get(paper))) {
      for (PDPage sheet : pdf.getPages()) {
        for (COSName name : sheet.getResources().getFontNames()) {
          PDFont font = sheet.getResources().getFont(name);
          assertThat(font.isEmbedded()).as(font.getName()).isTrue();
        }
      }
    }
  }

  @Test
  @DisplayName(
      "the printed text answers first, then tells what it rests on, and ends with cautions")
  void text() throws IOException {
    String text;
    try (PDDocument pdf = Loader.loadPDF(PRINTED.get(Paper.A4))) {
      text = new PDFTextStripper().getText(pdf).replaceAll("\\s+", " ");
    }
    List<String> order =
        List.of(
            "The question",
            "at least 65 % of the water volume in stony",
            "The answer",
            advice.recommendation().best().arrangement().inWords(LengthUnit.CM),
            advice.recommendation().best().dials(),
            "probability " + advice.recommendation().best().probability().inFull(),
            "The light",
            "The choice",
            "The spectrum",
            "Readings that would verify it",
            "Another tank",
            "What was measured",
            "How it was computed",
            "What it does not hold for",
            "Cautions");
    int at = 0;
    for (String part : order) {
      assertThat(text.indexOf(part, at)).as(part).isGreaterThanOrEqualTo(at);
      at = text.indexOf(part, at);
    }
    // Lines break at hyphens too: compared without blanks.
    String solid = text.replace(" ", "");
    Arrays.stream(Caution.values())
        .forEach(caution -> assertThat(solid).contains(caution.inWords().replace(" ", "")));
    assertThat(text).contains("page 1 of").contains("no guarantee");
    assertThat(text.toLowerCase(java.util.Locale.ROOT)).doesNotContain(" safe");
  }

  @Test
  @DisplayName("a stored page is printed again as it was; another text is refused")
  void stored() {
    assertThat(new ReportPage(page.text()).html()).isEqualTo(page.html());
    assertThatThrownBy(() -> new ReportPage("<html></html>"))
        .hasMessage("this is no page of a report: it has no room for a style");
  }
}
