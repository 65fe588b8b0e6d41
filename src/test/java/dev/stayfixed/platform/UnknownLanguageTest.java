package dev.stayfixed.platform;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class UnknownLanguageTest {

    private static Locale locale(String language) {
        return new Languages(new TextSettings(language, List.of("messages/jobs"))).own();
    }

    @ParameterizedTest
    @CsvSource({"en, en", "en_GB, en-GB", "' en-US ', en-US", "de, de", "de_AT, de-AT", "es-MX, es-MX"})
    void aLanguageIsSpokenInEachOfItsCountries(String language, String tag) {
        assertThat(locale(language)).isEqualTo(Locale.forLanguageTag(tag));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", " ", "deutsch", "tlh", "xx_DE", "../en", "e n"})
    void whatHasNoTextsIsNoLanguageOfTheService(String language) {
        assertThatThrownBy(() -> locale(language))
                .isInstanceOf(UnknownLanguage.class)
                .hasMessageContaining("\"" + language + "\"");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "deutsch"})
    void theStartSaysWhatIsWrongAndWhatToDo(String language, @TempDir Path folder) {
        assertThatThrownBy(() -> new OwnProcess(OwnProcess.url(folder), "--stayfixed.language=" + language).close())
                .hasMessageContaining("APPLICATION FAILED TO START")
                .hasMessageContaining(
                        "stayfixed.language: found \"" + language + "\", expected en, or the code of a language")
                .hasMessageContaining("Take the setting out, which is English, or correct it where it stands");
    }
}
