package dev.stayfixed.platform;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.springframework.core.io.Resource;
import org.springframework.core.io.support.PathMatchingResourcePatternResolver;
import org.springframework.stereotype.Component;

/**
 * The languages of which there are texts: English, and one for each file in {@code languages}. A file holds what drivers and customers
 * read, and may hold the rest; a text that it lacks is English.
 */
@Component
public final class Languages {

    static final String FOLDER = "languages/";

    private static final String END = ".properties";

    private final List<Locale> all;
    private final Locale own;

    Languages(TextSettings settings) {
        this.all = found();
        Locale stated = Locale.forLanguageTag(settings.language().strip().replace('_', '-'));
        if (like(stated).isEmpty()) {
            throw new UnknownLanguage(settings.language());
        }
        this.own = stated;
    }

    private static List<Locale> found() {
        try {
            Resource[] files =
                    new PathMatchingResourcePatternResolver().getResources("classpath*:" + FOLDER + "*" + END);
            Stream<Locale> others = Arrays.stream(files)
                    .map(file -> String.valueOf(file.getFilename()).replace(END, ""))
                    .sorted()
                    .map(Locale::forLanguageTag);
            return Stream.concat(Stream.of(Locale.ENGLISH), others).distinct().toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** That of the service, where nobody chose another. */
    public Locale own() {
        return own;
    }

    /** English first. */
    public List<Locale> all() {
        return all;
    }

    /** The one that a tag names, "de" or "de-AT". */
    public Optional<Locale> named(String tag) {
        return like(Locale.forLanguageTag(tag.strip()));
    }

    /** The first that somebody wants and there is; that of the service, where there is none of them. */
    public Locale closest(List<Locale> wanted) {
        return wanted.stream()
                .flatMap(locale -> like(locale).stream())
                .findFirst()
                .orElse(own);
    }

    private Optional<Locale> like(Locale wanted) {
        return all.stream()
                .filter(locale -> locale.getLanguage().equals(wanted.getLanguage()))
                .findFirst();
    }

    /** Each with its name in itself. */
    public List<Choice> choices() {
        return all.stream()
                .map(locale -> new Choice(locale.getLanguage(), name(locale)))
                .toList();
    }

    private static String name(Locale locale) {
        String name = locale.getDisplayLanguage(locale);
        return name.substring(0, 1).toUpperCase(locale) + name.substring(1);
    }

    /**
     * One that can be chosen.
     *
     * @param tag "de"
     * @param name "Deutsch"
     */
    public record Choice(String tag, String name) {}
}
