package parfield.plot;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.ErrorHandler;
import org.xml.sax.SAXException;
import org.xml.sax.SAXParseException;

/** A picture as an XML parser sees it. */
final class Parsed {
  private final Element root;

  private Parsed(Element root) {
    this.root = root;
  }

  /** Parses a document; fails if it is not well-formed. */
  static Parsed of(String svg) {
    try {
      var builder = DocumentBuilderFactory.newInstance().newDocumentBuilder();
      builder.setErrorHandler(new Strict());
      return new Parsed(
          builder
              .parse(new ByteArrayInputStream(svg.getBytes(StandardCharsets.UTF_8)))
              .getDocumentElement());
    } catch (ParserConfigurationException | SAXException | IOException e) {
      throw new AssertionError("not well-formed: " + e.getMessage(), e);
    }
  }

  Element root() {
    return root;
  }

  List<Element> all(String name) {
    NodeList nodes = root.getElementsByTagName(name);
    List<Element> elements = new ArrayList<>();
    for (int i = 0; i < nodes.getLength(); i++) {
      elements.add((Element) nodes.item(i));
    }
    return elements;
  }

  /** The words a reader sees, halos left out. */
  List<String> texts() {
    return all("text").stream()
        .filter(text -> !text.getAttribute("aria-hidden").equals("true"))
        .map(Element::getTextContent)
        .toList();
  }

  /** The first embedded image. */
  BufferedImage image() {
    String data = all("image").get(0).getAttribute("xlink:href");
    byte[] png = Base64.getDecoder().decode(data.substring("data:image/png;base64,".length()));
    try {
      return ImageIO.read(new ByteArrayInputStream(png));
    } catch (IOException e) {
      throw new AssertionError("the embedded image cannot be read", e);
    }
  }

  private static final class Strict implements ErrorHandler {
    @Override
    public void warning(SAXParseException e) throws SAXException {
      throw e;
    }

    @Override
    public void error(SAXParseException e) throws SAXException {
      throw e;
    }

    @Override
    public void fatalError(SAXParseException e) throws SAXException {
      throw e;
    }
  }
}
