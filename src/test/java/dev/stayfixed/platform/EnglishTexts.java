package dev.stayfixed.platform;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;

/** The texts of all bundles, for tests without a running service. */
public final class EnglishTexts {

    private EnglishTexts() {}

    public static Texts all() {
        try (Stream<Path> files = Files.list(Path.of("src", "main", "resources", "messages"))) {
            return new Texts(
                    TextsConfiguration.of(files.map(file -> file.getFileName().toString())
                            .filter(name -> !name.contains("_"))
                            .map(name -> "messages/" + name.replace(".properties", ""))
                            .toArray(String[]::new)));
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }
}
