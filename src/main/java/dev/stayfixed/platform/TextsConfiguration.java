package dev.stayfixed.platform;

import java.text.FieldPosition;
import java.text.Format;
import java.text.MessageFormat;
import java.text.ParsePosition;
import java.util.Locale;
import java.util.ResourceBundle;
import org.jspecify.annotations.Nullable;
import org.springframework.context.MessageSource;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.i18n.LocaleContextHolder;
import org.springframework.context.support.ResourceBundleMessageSource;
import org.springframework.web.servlet.config.annotation.InterceptorRegistry;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;

/**
 * The bundles of English texts, and the file of each further language, which may hold all of them. Each text is a {@link MessageFormat},
 * with places or without, so an apostrophe stands there twice, always.
 */
@Configuration(proxyBeanMethods = false)
class TextsConfiguration {

    @Bean
    MessageSource messageSource(TextSettings settings, Languages languages) {
        // Work that no request began speaks it too.
        LocaleContextHolder.setDefaultLocale(languages.own());
        return of(settings.bundles().toArray(String[]::new));
    }

    @Bean
    ReaderLanguage localeResolver(Languages languages) {
        return new ReaderLanguage(languages);
    }

    @Bean
    WebMvcConfigurer readerLanguage(ReaderLanguage language) {
        return new WebMvcConfigurer() {
            @Override
            public void addInterceptors(InterceptorRegistry registry) {
                registry.addInterceptor(language);
            }
        };
    }

    static MessageSource of(String... bundles) {
        ResourceBundleMessageSource messages = new OneFileALanguage();
        messages.setBasenames(bundles);
        messages.setDefaultEncoding("UTF-8");
        messages.setFallbackToSystemLocale(false);
        messages.setAlwaysUseMessageFormat(true);
        return messages;
    }

    /**
     * What the file of a language does not say is English. What stands in a place without a format is put there as it is: 2012 is a year
     * and no "2,012".
     */
    private static final class OneFileALanguage extends ResourceBundleMessageSource {

        @Override
        protected @Nullable MessageFormat resolveCode(String code, Locale language) {
            if (!language.getLanguage().equals(Locale.ENGLISH.getLanguage())) {
                ResourceBundle texts = getResourceBundle(Languages.FOLDER + language.getLanguage(), Locale.ROOT);
                if (texts != null && texts.containsKey(code)) {
                    return getMessageFormat(texts, code, language);
                }
            }
            return super.resolveCode(code, Locale.ROOT);
        }

        @Override
        protected MessageFormat createMessageFormat(String text, @Nullable Locale language) {
            MessageFormat format = super.createMessageFormat(text, language);
            Format[] formats = format.getFormats();
            for (int place = 0; place < formats.length; place++) {
                if (formats[place] == null) {
                    format.setFormat(place, AS_IT_IS);
                }
            }
            return format;
        }
    }

    private static final Format AS_IT_IS = new Format() {
        private static final long serialVersionUID = 1L;

        @Override
        public StringBuffer format(Object value, StringBuffer into, FieldPosition position) {
            return into.append(value);
        }

        @Override
        public @Nullable Object parseObject(String source, ParsePosition position) {
            throw new UnsupportedOperationException("texts are only written");
        }
    };
}
