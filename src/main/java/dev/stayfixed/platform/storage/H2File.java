package dev.stayfixed.platform.storage;

import dev.stayfixed.platform.PrivateFiles;
import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The file of an H2 database, as its address names it. */
record H2File(Path path, String url) {

    static final String ENDING = ".mv.db";

    /** A word before the path names another file system of H2, which is not ours to look after. */
    private static final Pattern ADDRESS = Pattern.compile("jdbc:h2:(?:file:)?(?![A-Za-z]{2,}:)([^;]+).*");

    /** @param url as in spring.datasource.url */
    static Optional<H2File> of(String url) {
        Matcher address = ADDRESS.matcher(url);
        if (!address.matches()) {
            return Optional.empty();
        }
        String path = address.group(1);
        String database = path.startsWith("~") ? System.getProperty("user.home") + path.substring(1) : path;
        return Optional.of(new H2File(Path.of(database + ENDING), url));
    }

    /**
     * Sees to it, before H2 opens the file, that only this account can: H2 itself makes files that everybody may read. To H2 an empty
     * file is a new database.
     */
    void makePrivate() throws IOException {
        if (url.toUpperCase(Locale.ROOT).contains("IFEXISTS")) {
            return;
        }
        PrivateFiles.folderOf(path);
        if (!Files.exists(path)) {
            try {
                PrivateFiles.file(path);
            } catch (FileAlreadyExistsException anotherStart) {
                PrivateFiles.narrow(path);
            }
        }
        PrivateFiles.narrow(path);
    }
}
