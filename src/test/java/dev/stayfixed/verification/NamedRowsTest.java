package dev.stayfixed.verification;

import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.ReferenceRows;
import dev.stayfixed.ReferenceRows.Row;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Check rows that take a story to show are told as tests of their own; each must exist under the name given here. */
class NamedRowsTest {

    static Stream<Row> rows() {
        return ReferenceRows.in(NamedRowsTest.class, "rows-in-named-tests.csv").stream();
    }

    @ParameterizedTest
    @MethodSource("rows")
    void isATest(Row row) throws ReflectiveOperationException {
        String[] name = row.kind().split("#", 2);
        Class<?> owner = Class.forName(NamedRowsTest.class.getPackageName() + "." + name[0]);
        assertThat(owner.getDeclaredMethod(name[1]).isAnnotationPresent(Test.class))
                .isTrue();
    }
}
