package dev.stayfixed.platform.problem;

import jakarta.validation.MessageInterpolator;
import java.util.Locale;
import org.springframework.boot.validation.autoconfigure.ValidationConfigurationCustomizer;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** What constraints say is for the REST interface, which is English whatever the language of the service; pages have words of their own. */
@Configuration(proxyBeanMethods = false)
class EnglishConstraints {

    @Bean
    ValidationConfigurationCustomizer constraintsInEnglish() {
        return configuration ->
                configuration.messageInterpolator(new InEnglish(configuration.getDefaultMessageInterpolator()));
    }

    private record InEnglish(MessageInterpolator interpolator) implements MessageInterpolator {

        @Override
        public String interpolate(String template, Context context) {
            return interpolator.interpolate(template, context, Locale.ENGLISH);
        }

        @Override
        public String interpolate(String template, Context context, Locale language) {
            return interpolate(template, context);
        }
    }
}
