package dev.stayfixed.recording;

import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import java.io.EOFException;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.zip.ZipException;

/** Hands on unpacked bytes until a limit is passed, and turns a damaged archive into the one failure of this package. */
final class LimitedStream extends FilterInputStream {

    /** A small file may pack better than any ratio: the first bytes are free. */
    private static final long FREE = 1 << 20;

    private final LogLimits limits;
    private final Counted packed;
    private long delivered;

    /** Counts the bytes of the file as it was sent. */
    static final class Counted extends FilterInputStream {
        private long count;

        Counted(InputStream in) {
            super(in);
        }

        @Override
        public int read() throws IOException {
            int b = super.read();
            count += b < 0 ? 0 : 1;
            return b;
        }

        @Override
        public int read(byte[] buffer, int offset, int length) throws IOException {
            int n = super.read(buffer, offset, length);
            count += Math.max(0, n);
            return n;
        }

        @Override
        public boolean markSupported() {
            return false;
        }
    }

    LimitedStream(InputStream unpacked, Counted packed, LogLimits limits) {
        super(unpacked);
        this.packed = packed;
        this.limits = limits;
    }

    @Override
    public int read() throws IOException {
        byte[] one = new byte[1];
        return read(one, 0, 1) < 0 ? -1 : one[0] & 0xFF;
    }

    @Override
    public int read(byte[] buffer, int offset, int length) throws IOException {
        int n;
        try {
            n = super.read(buffer, offset, length);
        } catch (ZipException damaged) {
            throw LogFormatException.ofFile(
                    Reason.of(LogFound.DAMAGED_DATA, Part.verbatim(String.valueOf(damaged.getMessage()))),
                    LogExpected.WHOLE_FILE);
        } catch (EOFException cutOff) {
            throw LogFormatException.ofFile(LogFound.DATA_END_EARLY, LogExpected.WHOLE_FILE);
        }
        delivered += Math.max(0, n);
        check();
        return n;
    }

    private void check() {
        if (delivered > limits.bytes()) {
            throw LogFormatException.tooLarge(
                    Reason.of(LogFound.LARGE_WHEN_UNPACKED, Part.count(limits.bytes())),
                    Reason.of(LogExpected.FEWER_BYTES, Part.count(limits.bytes())));
        }
        if (delivered > FREE && delivered > packed.count * limits.ratio()) {
            throw LogFormatException.tooLarge(
                    Reason.of(LogFound.PACKED_TOO_WELL, Part.count(limits.ratio())), LogExpected.UNPACKED);
        }
    }

    @Override
    public boolean markSupported() {
        return false;
    }
}
