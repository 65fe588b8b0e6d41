package dev.stayfixed.web;

import java.io.IOException;
import java.io.Reader;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Properties;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** A language that is English in wide letters: what a page shows in plain letters is not from a bundle. */
final class WideLanguage {

    /** Which no country speaks. */
    static final String CODE = "qz";

    private static final Path ENGLISH = Path.of("src", "main", "resources");

    /** Patterns of dates, which are no texts. */
    private static final Set<String> PATTERNS = Set.of("Day", "Minute");

    /** A place of a text, with the choices that stand in it, which may have a place of their own. */
    private static final Pattern PLACE = Pattern.compile("\\{(?:[^{}]|\\{[^{}]*})*}");

    private static final Pattern CHOSEN = Pattern.compile("(?<=[#<])(?:[^|{}]|\\{[^{}]*})*");

    private WideLanguage() {}

    /** Writes its file, with all texts that there are. */
    static void write(Path folder) throws IOException {
        Properties texts = new Properties();
        read(ENGLISH.resolve("reasons.properties"), texts);
        try (Stream<Path> rooms = Files.list(ENGLISH.resolve("messages"))) {
            for (Path room : rooms.toList()) {
                read(room, texts);
            }
        }
        texts.replaceAll((key, text) -> PATTERNS.contains(key) ? text : wide((String) text));
        Path languages = Files.createDirectories(folder.resolve("languages"));
        try (Writer out = Files.newBufferedWriter(languages.resolve(CODE + ".properties"))) {
            texts.store(out, null);
        }
    }

    private static void read(Path bundle, Properties into) throws IOException {
        try (Reader in = Files.newBufferedReader(bundle)) {
            into.load(in);
        }
    }

    static String wide(String text) {
        StringBuilder wide = new StringBuilder();
        Matcher place = PLACE.matcher(text);
        int from = 0;
        while (place.find()) {
            wide.append(letters(text.substring(from, place.start())));
            wide.append(
                    place.group().contains(",choice,")
                            ? CHOSEN.matcher(place.group()).replaceAll(chosen -> letters(chosen.group()))
                            : place.group());
            from = place.end();
        }
        return wide.append(letters(text.substring(from))).toString();
    }

    private static String letters(String text) {
        StringBuilder wide = new StringBuilder();
        text.chars().forEach(c -> wide.appendCodePoint(isLetter(c) ? c + '\uFF21' - 'A' : c));
        return wide.toString();
    }

    private static boolean isLetter(int c) {
        return (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z');
    }

    private static final Pattern UNREAD = Pattern.compile("(?s)<!--.*?-->|<(script|style|code)\\b.*?</\\1>");
    private static final Pattern READ_OF_TAG =
            Pattern.compile("\\s(?:aria-label|title|alt|placeholder)=(?:\"([^\"]*)\"|'([^']*)')");
    private static final Pattern TAG = Pattern.compile("(?s)<[^>]*>");
    private static final Pattern WORD = Pattern.compile("(?<![\\p{L}\\d])[A-Za-z]{2,}(?![\\p{L}\\d])");

    /** Words in plain letters on a page, in what is read between tags and of them. */
    static List<String> plainWords(String page) {
        String read = UNREAD.matcher(page).replaceAll(" ");
        StringBuilder text = new StringBuilder();
        Matcher attribute = READ_OF_TAG.matcher(read);
        while (attribute.find()) {
            text.append(attribute.group(1) != null ? attribute.group(1) : attribute.group(2))
                    .append('\n');
        }
        text.append(TAG.matcher(read).replaceAll("\n"));
        String plain = org.springframework.web.util.HtmlUtils.htmlUnescape(text.toString());
        return WORD.matcher(plain)
                .results()
                .map(word -> around(plain, word.start(), word.end()))
                .distinct()
                .toList();
    }

    /** The word alone, or with the line around it where it is none of those that stand in every language. */
    private static String around(String text, int from, int to) {
        return text.substring(from, to) + " in \""
                + text.substring(text.lastIndexOf('\n', from) + 1, end(text, to))
                        .strip() + "\"";
    }

    private static int end(String text, int to) {
        int end = text.indexOf('\n', to);
        return end < 0 ? text.length() : end;
    }
}
