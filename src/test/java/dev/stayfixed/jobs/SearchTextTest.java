package dev.stayfixed.jobs;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Any part of a text begins one of its ends, and lies in the stretch of what was typed. */
class SearchTextTest {

    @Test
    void theEndsOfATextBeginAnywhere() {
        assertThat(SearchText.parts(" B AB ")).containsExactlyInAnyOrder("b ab", "ab", "b");
        assertThat(SearchText.parts("\uD83D\uDE97x")).containsExactlyInAnyOrder("\uD83D\uDE97x", "x");
        assertThat(SearchText.parts("a".repeat(50))).contains("a".repeat(40)).hasSize(40);
        assertThat(SearchText.words("Lamp\non  since"))
                .containsExactlyInAnyOrder("lamp\non  since", "on  since", "since");
    }

    @ParameterizedTest
    @CsvSource({"B-AB 123, ab 1", "P0420, 0420", "Größe, GRÖ", "100% !_x, 0% !_", "\uD83D\uDE97 coach, \uD83D\uDE97"})
    void aPartLiesInItsStretch(String text, String typed) {
        SearchText.Stretch stretch = SearchText.stretch(typed);
        assertThat(SearchText.parts(text)).anyMatch(part -> lies(part, stretch));
        assertThat(SearchText.parts("Quite another text")).noneMatch(part -> lies(part, stretch));
    }

    @ParameterizedTest
    @ValueSource(strings = {"\u0000", "x\uD83D", "x\uDBFF\uDFFF"})
    void whatNoTextContainsLiesNowhere(String typed) {
        assertThat(SearchText.stretch(typed)).isEqualTo(new SearchText.Stretch("", ""));
    }

    private static boolean lies(String part, SearchText.Stretch stretch) {
        return part.compareTo(stretch.from()) >= 0 && part.compareTo(stretch.until()) < 0;
    }
}
