package dev.stayfixed.platform.problem;

import static org.assertj.core.api.Assertions.assertThat;

import jakarta.validation.ConstraintViolation;
import jakarta.validation.Validator;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;
import java.util.Locale;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.springframework.boot.autoconfigure.AutoConfigurations;
import org.springframework.boot.test.context.runner.ApplicationContextRunner;
import org.springframework.boot.validation.autoconfigure.ValidationAutoConfiguration;
import org.springframework.context.i18n.LocaleContextHolder;

class EnglishConstraintsTest {

    private final ApplicationContextRunner service =
            new ApplicationContextRunner().withConfiguration(AutoConfigurations.of(ValidationAutoConfiguration.class));

    record Written(
            @NotBlank String name,

            @Size(max = 3, message = "at most {max} characters")
            String note) {}

    @AfterEach
    void speakAsBefore() {
        LocaleContextHolder.resetLocaleContext();
    }

    @Test
    void theInterfaceStaysEnglish() {
        LocaleContextHolder.setLocale(Locale.GERMAN);
        service.withUserConfiguration(EnglishConstraints.class)
                .run(context -> assertThat(messages(context.getBean(Validator.class)))
                        .containsExactlyInAnyOrder("must not be blank", "at most 3 characters"));
        service.run(context -> assertThat(messages(context.getBean(Validator.class)))
                .as("without it the language of the service shows")
                .contains("darf nicht leer sein"));
    }

    private static Iterable<String> messages(Validator validator) {
        return validator.validate(new Written(" ", "four")).stream()
                .map(ConstraintViolation::getMessage)
                .toList();
    }
}
