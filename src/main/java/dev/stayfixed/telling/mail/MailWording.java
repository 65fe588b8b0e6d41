package dev.stayfixed.telling.mail;

import dev.stayfixed.jobs.ShopSettings;
import dev.stayfixed.platform.Texts;
import dev.stayfixed.telling.EventKind;
import dev.stayfixed.telling.Story;
import java.util.Locale;
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

    /** A mail. */
    record Words(String subject, String body) {}

    /**
     * For the shop: what to do comes first.
     *
     * @param about what happened, in words
     * @param link to the page of the job
     */
    Words forTechnician(EventKind kind, String about, Story story, String link) {
        StringBuilder body = new StringBuilder();
        line(body, todo(kind, story));
        body.append('\n');
        line(
                body,
                story.code() == null
                        ? texts.of("telling.mail.about", story.vehicle())
                        : texts.of("telling.mail.about-code", story.code(), story.vehicle()));
        line(body, "telling.mail.monitor", story.monitor());
        line(body, "telling.mail.job", story.reference());
        if (story.before() == null) {
            line(body, "telling.mail.stands-at", story.now());
            line(body, "telling.mail.why", story.reason());
        } else {
            // It says where the fault stood, where it stands, and why.
            line(body, story.reason());
        }
        line(body, "telling.mail.next", story.nextStep());
        body.append('\n');
        line(body, "telling.mail.link", link);
        return new Words(
                oneLine(texts.of("telling.mail.subject", ShopSettings.Units.METRIC.words(story.about()), about)),
                body.toString());
    }

    private String todo(EventKind kind, Story story) {
        return kind == EventKind.CAME_BACK && !story.jobClosed()
                ? texts.of("telling.mail.proof-fell")
                : texts.choice("telling.mail.todo", kind);
    }

    private void line(StringBuilder body, String key, @Nullable String value) {
        if (value != null) {
            line(body, texts.of(key, value));
        }
    }

    private static void line(StringBuilder body, String text) {
        body.append(text).append('\n');
    }

    /**
     * For the driver, what to do first; {@link EventKind#forDriver} is all that a driver is told. The link that ends these mails follows it.
     *
     * @param signature of the shop
     */
    Words forDriver(Locale language, EventKind kind, Story story, Optional<String> signature) {
        Texts theirs = texts.in(language);
        return new Words(
                oneLine(theirs.of(
                        "telling.driver.subject", story.vehicle(), theirs.choice("telling.driver.headline", kind))),
                theirs.choice("telling.driver.next", kind) + "\n\n" + theirs.choice("telling.driver.meaning", kind)
                        + "\n\n" + signature.map(s -> s + "\n\n").orElse("") + theirs.of("telling.driver.closing")
                        + "\n");
    }

    private static String oneLine(String text) {
        String line = text.replaceAll("[\\r\\n\\t]+", " ").strip();
        return line.length() <= 200 ? line : line.substring(0, 199) + "…";
    }
}
