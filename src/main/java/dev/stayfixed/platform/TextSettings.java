package dev.stayfixed.platform;

import java.util.List;
import java.util.Locale;
import org.springframework.boot.context.properties.ConfigurationProperties;

/**
 * What this service speaks.
 *
 * @param language of pages, mails, reports and of what the rules say; a text that a language lacks is English
 * @param bundles of texts, one a room
 */
@ConfigurationProperties("stayfixed")
record TextSettings(Locale language, List<String> bundles) {

    TextSettings {
        bundles = List.copyOf(bundles);
    }
}
