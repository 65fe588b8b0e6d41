package dev.stayfixed.platform;

import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.springframework.boot.context.properties.ConfigurationProperties;

/**
 * What this service speaks.
 *
 * @param language of pages, mails, reports and of what the rules say: "en", or one of which there are bundles beside the English ones; a
 *     text that it lacks is English
 * @param bundles of texts, one a room
 */
@ConfigurationProperties("stayfixed")
record TextSettings(String language, List<String> bundles) {

    TextSettings {
        bundles = List.copyOf(bundles);
    }

    /** @throws UnknownLanguage where nothing is there in that language */
    Locale locale() {
        Locale locale = Locale.forLanguageTag(language.strip().replace('_', '-'));
        boolean there = locale.getLanguage().equals("en")
                || (!locale.getLanguage().isEmpty()
                        && Stream.concat(Stream.of("reasons"), bundles.stream())
                                .anyMatch(bundle -> isThere(bundle + "_" + locale.getLanguage())));
        if (!there) {
            throw new UnknownLanguage(language);
        }
        return locale;
    }

    private static boolean isThere(String bundle) {
        return TextSettings.class.getResource("/" + bundle + ".properties") != null;
    }
}
