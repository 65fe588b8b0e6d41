package dev.stayfixed.platform.http;

import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.stayfixed.platform.problem.Refused;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;

class EnoughSpaceTest {

    private static final long MB = 1 << 20;

    private final AtomicLong free = new AtomicLong(100 * MB);
    private final EnoughSpace enough = new EnoughSpace(free::get, 100 * MB);

    @Test
    void whatStaysFreeCounts() {
        assertThatCode(() -> enough.check(0)).doesNotThrowAnyException();
        assertThatThrownBy(() -> enough.check(1)).isInstanceOf(Refused.class).hasMessageContaining("found 100 MB free");
    }

    @Test
    void healsWhenSpaceReturns() {
        free.set(99 * MB);
        assertThatThrownBy(() -> enough.check(0)).isInstanceOf(Refused.class);
        free.set(130 * MB);
        assertThatCode(() -> enough.check(30 * MB)).doesNotThrowAnyException();
    }
}
