package dev.stayfixed.platform;

import java.text.FieldPosition;
import java.text.Format;
import java.text.MessageFormat;
import java.text.ParsePosition;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.springframework.context.MessageSource;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.i18n.LocaleContextHolder;
import org.springframework.context.support.ResourceBundleMessageSource;
import org.springframework.web.servlet.LocaleResolver;
import org.springframework.web.servlet.i18n.FixedLocaleResolver;

/**
 * The bundles of texts. Each text is a {@link MessageFormat}, with places or without, so an apostrophe stands there twice, always; a
 * language whose bundle is missing speaks that of the file without a suffix.
 */
@Configuration(proxyBeanMethods = false)
class TextsConfiguration {

    @Bean
    MessageSource messageSource(TextSettings settings) {
        // Work that no request began speaks it too.
        LocaleContextHolder.setDefaultLocale(settings.locale());
        return of(settings.bundles().toArray(String[]::new));
    }

    /** For every request, whatever a browser asks for. */
    @Bean
    LocaleResolver localeResolver(TextSettings settings) {
        return new FixedLocaleResolver(settings.locale());
    }

    static MessageSource of(String... bundles) {
        ResourceBundleMessageSource messages = new PlainPlaces();
        messages.setBasenames(bundles);
        messages.setDefaultEncoding("UTF-8");
        messages.setFallbackToSystemLocale(false);
        messages.setAlwaysUseMessageFormat(true);
        return messages;
    }

    /** What stands in a place without a format is put there as it is: 2012 is a year and no "2,012". */
    private static final class PlainPlaces extends ResourceBundleMessageSource {

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
