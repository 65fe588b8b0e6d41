package dev.stayfixed.platform;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What a template says in words of its own: between its tags, in what is read of its attributes, and in what it computes. */
final class TextsOfTemplate {

    private static final Pattern TAG = Pattern.compile("<(/?)([\\w:!-]+)((?:\"[^\"]*\"|[^\">])*)>");
    private static final Pattern ATTRIBUTE = Pattern.compile("([\\w:-]+)=\"([^\"]*)\"");
    private static final Pattern WORD = Pattern.compile("\\p{L}{2,}");
    private static final Pattern COMPUTED = Pattern.compile("\\[\\[.*?]]|[$#@*~]\\{(?:[^{}]|\\{[^{}]*})*}");
    private static final Pattern PARAMETER = Pattern.compile("['|]([^'|]*)['|]");
    private static final Pattern LITERAL = Pattern.compile("'([^']*)'");

    /** What a person reads of a tag. */
    private static final String READ = "aria-label|alt|title|placeholder|label";

    /** What stands in quotes and is a name: a key, an entry, a constant that is compared, a field of a form. */
    private static final String NAMES =
            "#messages\\.msg\\('[^']*'|\\['[^']*']|[=!]=\\s*'[^']*'|\\.(?:has|value|error|orElse)\\('[^']*'";

    private TextsOfTemplate() {}

    static List<String> in(String template) {
        List<String> found = new ArrayList<>();
        Matcher tag = TAG.matcher(template);
        int after = 0;
        boolean replaced = false;
        while (tag.find()) {
            if (!replaced) {
                addWords(
                        COMPUTED.matcher(template.substring(after, tag.start())).replaceAll(""), found);
            }
            addAttributes(tag.group(3), found);
            // What stands in a tag whose text is computed is a sample, which nobody reads.
            replaced = (tag.group(1).isEmpty() && tag.group(3).matches("(?s).*\\bth:(?:u?text|replace)=.*"))
                    || tag.group(2).equals("style");
            after = tag.end();
        }
        addWords(template.substring(after), found);
        return found;
    }

    private static void addAttributes(String attributes, List<String> found) {
        Matcher attribute = ATTRIBUTE.matcher(attributes);
        while (attribute.find()) {
            String name = attribute.group(1);
            String value = attribute.group(2);
            if (name.matches(READ)) {
                addWords(value, found);
            } else if (name.equals("th:replace")) {
                addParameters(value, found);
            } else if (name.matches("th:(?:u?text|" + READ + ")")) {
                Matcher literal = LITERAL.matcher(value.replaceAll(NAMES, ""));
                while (literal.find()) {
                    addWords(literal.group(1), found);
                }
                addWords(
                        COMPUTED.matcher(value)
                                .replaceAll("")
                                .replaceAll("'[^']*'|\\b(?:and|or|not|null|true|false)\\b", ""),
                        found);
            }
        }
    }

    /** A fragment takes names of fields too; what is read has a blank, or begins with a capital. */
    private static void addParameters(String replace, List<String> found) {
        String fragment = COMPUTED.matcher(replace.replaceFirst("^~\\{", "")).replaceAll("");
        Matcher literal = PARAMETER.matcher(fragment);
        while (literal.find()) {
            if (literal.group(1).matches("\\p{Lu}.*|.*\\p{L}.* .*")) {
                addWords(literal.group(1), found);
            }
        }
    }

    private static void addWords(String text, List<String> found) {
        String plain = text.replaceAll("&\\w+;|&#\\d+;", " ");
        if (WORD.matcher(plain).find()) {
            found.add(plain.strip());
        }
    }
}
