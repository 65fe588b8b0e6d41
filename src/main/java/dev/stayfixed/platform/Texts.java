package dev.stayfixed.platform;

import java.util.Optional;
import org.springframework.context.MessageSource;
import org.springframework.context.i18n.LocaleContextHolder;
import org.springframework.context.support.MessageSourceAccessor;
import org.springframework.stereotype.Component;

/** The texts of pages and mails by their keys, in the language of this service. */
@Component
public class Texts {

    private final MessageSourceAccessor messages;

    Texts(MessageSource messages) {
        this.messages = new MessageSourceAccessor(messages);
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
