package dev.stayfixed.platform;

import java.util.List;
import org.springframework.boot.context.properties.ConfigurationProperties;

/**
 * What this service speaks.
 *
 * @param language of pages, mails, reports and of what the rules say, where a reader chose no other: "en", or one of {@link Languages}
 * @param bundles of English texts, one a room
 */
@ConfigurationProperties("stayfixed")
record TextSettings(String language, List<String> bundles) {

    TextSettings {
        bundles = List.copyOf(bundles);
    }
}
