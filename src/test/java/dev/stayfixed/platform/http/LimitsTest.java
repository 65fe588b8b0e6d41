package dev.stayfixed.platform.http;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.boot.test.context.runner.ApplicationContextRunner;

class LimitsTest {

    @EnableConfigurationProperties({Limits.class, PublicUrl.class})
    static class Settings {}

    private final ApplicationContextRunner start = new ApplicationContextRunner()
            .withUserConfiguration(Settings.class)
            .withPropertyValues(
                    "stayfixed.body-limit=2MB",
                    "stayfixed.log-limit=256MB",
                    "stayfixed.keep-free=100MB",
                    "stayfixed.writes-at-once=64");

    @ParameterizedTest
    @CsvSource({"stayfixed.writes-at-once, 0, writesAtOnce", "stayfixed.log-limit, much, stayfixed.log-limit"})
    void aWrongSettingEndsTheStartAndIsNamed(String setting, String value, String named) {
        start.withPropertyValues(setting + "=" + value)
                .run(context -> assertThat(context)
                        .getFailure()
                        .rootCause()
                        .satisfiesAnyOf(
                                cause -> assertThat(cause).hasMessageContaining(named),
                                cause -> assertThat(context.getStartupFailure()).hasStackTraceContaining(named)));
    }

    @Test
    void anAddressIsStatedWithoutTheSlashAtItsEnd() {
        start.withPropertyValues("stayfixed.public-url= https://cars.example/ ")
                .run(context ->
                        assertThat(context.getBean(PublicUrl.class).stated()).hasValue("https://cars.example"));
        assertThat(new PublicUrl(" ").stated()).isEmpty();
    }
}
