package dev.stayfixed.platform.http;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.platform.storage.InstanceFolder;
import jakarta.servlet.ReadListener;
import jakarta.servlet.ServletInputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.springframework.mock.web.MockHttpServletRequest;

/** Bodies that do not say how long they are, onto a disk that gets full. */
class LongBodyTest {

    private static final long MB = 1 << 20;

    private final AtomicLong free = new AtomicLong(200 * MB);
    private LongBody body;

    @BeforeEach
    void aFolder(@TempDir Path folder) throws IOException {
        body = new LongBody(256 * MB, new EnoughSpace(free::get, 100 * MB), InstanceFolder.in(folder));
    }

    @Test
    void theDiskIsLookedAtWhileABodyComesIn() {
        AtomicInteger used = new AtomicInteger();
        assertThatThrownBy(() -> body.inFile(
                        request(count -> free.addAndGet(-count), 250 * MB), request -> used.incrementAndGet()))
                .isInstanceOfSatisfying(
                        Refused.class, refused -> assertThat(refused.type()).isEqualTo(ProblemType.STORAGE_FULL));
        assertThat(free.get()).as("most of it was never read").isGreaterThan(80 * MB);
        assertThat(used).hasValue(0);
    }

    @Test
    void aWriteThatFailsOnAFullDiskIsNoMistakeOfTheService() {
        assertThatThrownBy(() -> body.inFile(
                        request(
                                count -> {
                                    throw new IOException("No space left on device");
                                },
                                MB),
                        request -> {}))
                .isInstanceOfSatisfying(
                        Refused.class, refused -> assertThat(refused.type()).isEqualTo(ProblemType.STORAGE_FULL));
        assertThatThrownBy(() -> body.inFile(
                        request(
                                count -> {
                                    throw new IOException("the client left");
                                },
                                MB),
                        request -> {}))
                .isInstanceOf(IOException.class);
    }

    private interface Coming {
        void bytes(int count) throws IOException;
    }

    /** Without a length, as a chunked request is. */
    private static MockHttpServletRequest request(Coming coming, long length) {
        return new MockHttpServletRequest() {
            private long left = length;

            @Override
            public ServletInputStream getInputStream() {
                return new ServletInputStream() {
                    @Override
                    public int read() {
                        throw new UnsupportedOperationException();
                    }

                    @Override
                    public int read(byte[] target, int from, int most) throws IOException {
                        int count = (int) Math.min(most, left);
                        left -= count;
                        if (count == 0) {
                            return -1;
                        }
                        coming.bytes(count);
                        return count;
                    }

                    @Override
                    public boolean isFinished() {
                        return left == 0;
                    }

                    @Override
                    public boolean isReady() {
                        return true;
                    }

                    @Override
                    public void setReadListener(ReadListener listener) {}
                };
            }
        };
    }
}
