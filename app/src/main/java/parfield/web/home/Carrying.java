package parfield.web.home;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.UploadedFile;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import parfield.answer.Refusal;
import parfield.web.bench.Benches;
import parfield.web.bench.Desk;
import parfield.web.bench.OpenBench;
import parfield.web.page.Display;
import parfield.web.page.Frame;
import parfield.web.page.Screen;
import parfield.web.page.Step;
import parfield.workspace.BenchFiles;
import parfield.workspace.SetupRevision;
import parfield.workspace.Taken;

/** Benches and whole workspaces, carried in and out as files. */
final class Carrying implements Screen {
  /** Files of one upload. */
  private static final int MOST_FILES = 200;

  private final Desk desk;

  Carrying(Desk desk) {
    this.desk = desk;
  }

  @Override
  public void register(RoutesConfig routes) {
    routes.post("/benches/import", this::take);
    routes.get("/bench/{id}/export", this::export);
    routes.post("/workspace/import", this::takeWorkspace);
    routes.get("/workspace/export", this::exportWorkspace);
  }

  /** A zip, or a setup file and the files it names. */
  private void take(Context context) {
    List<UploadedFile> uploads = context.uploadedFiles("files");
    if (uploads.stream().allMatch(upload -> upload.size() == 0)) {
      throw Refusal.of(
          "no file was chosen", "choose a zip, or a setup file with the files that it names");
    }
    if (uploads.size() > MOST_FILES) {
      throw Refusal.of(
          String.format(
              Locale.ROOT, "%d files were chosen; at most %d can be", uploads.size(), MOST_FILES),
          "pack them into a zip");
    }
    HomeScreen.open(context, taken(uploads, Benches.who(context)), Step.SETUP);
  }

  private SetupRevision taken(List<UploadedFile> uploads, String who) {
    UploadedFile first = uploads.get(0);
    if (uploads.size() == 1 && first.filename().toLowerCase(Locale.ROOT).endsWith(".zip")) {
      return first.contentAndClose(
          in -> desk.workspace().benchFiles().takeZip(first.filename(), in, who));
    }
    Map<String, byte[]> files = new LinkedHashMap<>();
    for (UploadedFile upload : uploads) {
      if (files.put(name(upload), bytes(upload)) != null) {
        throw Refusal.of(
            "two of the chosen files are called " + name(upload), "choose one of them, or a zip");
      }
    }
    String setup = setupAmong(files);
    return desk.workspace()
        .benchFiles()
        .take(setup.replaceAll("(?i)\\.ya?ml$", ""), false, setup, files, who);
  }

  /** The name as the browser gives it, without the folder that a person chose. */
  private static String name(UploadedFile upload) {
    String name = upload.filename().replace('\\', '/');
    return name.substring(name.indexOf('/') + 1);
  }

  private static String setupAmong(Map<String, byte[]> files) {
    List<String> candidates =
        files.keySet().stream().filter(name -> name.matches("(?i)[^/]*\\.ya?ml")).toList();
    if (candidates.contains(BenchFiles.SETUP)) {
      return BenchFiles.SETUP;
    }
    if (candidates.size() != 1) {
      throw Refusal.of(
          candidates.isEmpty()
              ? "none of the chosen files is a setup file"
              : "more than one of the chosen files could be the setup: "
                  + String.join(", ", candidates),
          "choose one file that ends in .yaml, and the files that it names");
    }
    return candidates.get(0);
  }

  private static byte[] bytes(UploadedFile upload) {
    return upload.contentAndClose(
        in -> {
          try {
            return in.readAllBytes();
          } catch (IOException e) {
            throw new UncheckedIOException(e);
          }
        });
  }

  private void takeWorkspace(Context context) {
    UploadedFile upload = context.uploadedFile("archive");
    if (upload == null || upload.size() == 0) {
      throw Refusal.of("no file was chosen", "choose the archive of a workspace");
    }
    Taken taken = upload.contentAndClose(in -> desk.workspace().importFrom(upload.filename(), in));
    desk.pages()
        .show(
            context,
            "home/taken.jte",
            Map.of(
                "frame",
                Frame.plain("A workspace brought in", Display.of(context)),
                "file",
                upload.filename(),
                "taken",
                taken));
  }

  private void exportWorkspace(Context context) throws IOException {
    Path folder = Files.createTempDirectory("parfield");
    Path archive = folder.resolve("workspace.zip");
    try {
      desk.workspace().exportTo(archive);
      download(context, "parfield-workspace.zip", Files.readAllBytes(archive));
    } finally {
      Files.deleteIfExists(archive);
      Files.deleteIfExists(folder);
    }
  }

  private void export(Context context) {
    OpenBench bench = desk.benches().of(context);
    String plain = bench.name().replaceAll("[^A-Za-z0-9]+", "-").replaceAll("^-|-$", "");
    download(
        context,
        (plain.isEmpty() ? "bench" : plain) + ".zip",
        zipped(desk.workspace().benchFiles().files(bench.id())));
  }

  private static byte[] zipped(Map<String, byte[]> files) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (ZipOutputStream zip = new ZipOutputStream(out)) {
      for (Map.Entry<String, byte[]> file : files.entrySet()) {
        zip.putNextEntry(new ZipEntry(file.getKey()));
        zip.write(file.getValue());
        zip.closeEntry();
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.toByteArray();
  }

  private static void download(Context context, String name, byte[] bytes) {
    context
        .contentType("application/zip")
        .header("Content-Disposition", "attachment; filename=\"" + name + "\"")
        .result(bytes);
  }
}
