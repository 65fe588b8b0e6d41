package dev.stayfixed.platform;

import java.util.Locale;
import java.util.Optional;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.MessageSource;
import org.springframework.context.i18n.LocaleContextHolder;
import org.springframework.context.support.MessageSourceAccessor;
import org.springframework.stereotype.Component;

/** The texts of pages and mails by their keys, in the language of who asks for a page, else in that of this service. */
@Component
public class Texts {

    private final MessageSource source;
    private final MessageSourceAccessor messages;

    @Autowired
    Texts(MessageSource messages) {
        this(messages, new MessageSourceAccessor(messages));
    }

    private Texts(MessageSource source, MessageSourceAccessor messages) {
        this.source = source;
        this.messages = messages;
    }

    /** The same in another language, whoever asks. */
    public Texts in(Locale language) {
        return new Texts(source, new MessageSourceAccessor(source, language));
    }

    /**
     * The text, with what stands in its places {0}, {1}.
     *
     * @throws org.springframework.context.NoSuchMessageException if no bundle has the key
     */
    public String of(String key, Object... places) {
        return messages.getMessage(key, places);
    }

    /** The text, where a bundle has it. */
    public Optional<String> find(String key, Object... places) {
        return Optional.of(messages.getMessage(key, places, "")).filter(text -> !text.isEmpty());
    }

    /** Of the texts, as a page names it: "en". */
    public String language() {
        return LocaleContextHolder.getLocale().getLanguage();
    }

    /** One of the texts of a choice: the key is {@code choice} and the constant behind a dot. */
    public String choice(String choice, Enum<?> constant) {
        return of(choice + "." + constant.name());
    }
}
