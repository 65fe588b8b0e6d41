package dev.stayfixed.learning;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The dangerous beginnings named by the OWASP page "CSV Injection". */
class SafeCsvTest {

    @ParameterizedTest
    @ValueSource(strings = {"=1+1", "+1", "-1", "@SUM(A1)", "\t=1", "\r=1", " =1", "\uFF1D1", "=\"x\",\"y\""})
    void textThatBeginsLikeAFormulaIsMadeHarmless(String text) {
        assertThat(SafeCsv.line(text, 1)).isEqualTo("\"'" + text.replace("\"", "\"\"") + "\",1\r\n");
    }

    @ParameterizedTest
    @ValueSource(strings = {"catalyst replaced", "P0420", "a=b", "1-2"})
    void otherTextStaysAsItIs(String text) {
        assertThat(SafeCsv.line(text, -1.5)).isEqualTo("\"" + text + "\",-1.5\r\n");
    }
}
