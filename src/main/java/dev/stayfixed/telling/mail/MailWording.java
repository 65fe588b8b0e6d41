package dev.stayfixed.telling.mail;

import dev.stayfixed.jobs.ShopSettings;
import dev.stayfixed.platform.Texts;
import dev.stayfixed.telling.EventKind;
import dev.stayfixed.telling.Story;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** What a mail says. A technician reads the code and the reason; a driver reads what it means and what to do next. */
@Component
class MailWording {

    private final Texts texts;

    MailWording(Texts texts) {
        this.texts = texts;
    }

    /** A mail without its closing lines. */
    record Words(String subject, String body) {}

    /**
     * For the shop.
     *
     * @param about what happened, in words
     */
    Words forTechnician(String about, Story story) {
        StringBuilder body = new StringBuilder();
        line(body, "telling.mail.vehicle", story.vehicle());
        line(body, "telling.mail.job", story.reference());
        line(body, "telling.mail.code", story.code());
        line(body, "telling.mail.monitor", story.monitor());
        line(body, "telling.mail.stood-at", story.before());
        line(body, "telling.mail.stands-at", story.now());
        line(body, "telling.mail.why", story.reason());
        line(body, "telling.mail.next", story.nextStep());
        return new Words(
                oneLine(texts.of("telling.mail.subject", ShopSettings.Units.METRIC.words(story.about()), about)),
                body.toString());
    }

    private void line(StringBuilder body, String key, @Nullable String value) {
        if (value != null) {
            body.append(texts.of(key, value)).append('\n');
        }
    }

    /** For the driver; {@link EventKind#forDriver} is all that a driver is told. */
    Words forDriver(EventKind kind, Story story) {
        String headline = texts.choice("telling.driver.headline", kind);
        String next = texts.choice("telling.driver.next", kind);
        return new Words(
                oneLine(texts.of("telling.driver.subject", story.vehicle(), headline)),
                texts.choice("telling.driver.meaning", kind) + "\n\n" + texts.of("telling.driver.what-next", next)
                        + "\n");
    }

    /** The last lines of a driver's mail. */
    String driversClosing(Optional<String> signature, String stopLink) {
        return "\n" + signature.map(s -> s + "\n\n").orElse("") + texts.of("telling.driver.closing") + "\n" + stopLink
                + "\n";
    }

    private static String oneLine(String text) {
        String line = text.replaceAll("[\\r\\n\\t]+", " ").strip();
        return line.length() <= 200 ? line : line.substring(0, 199) + "…";
    }
}
