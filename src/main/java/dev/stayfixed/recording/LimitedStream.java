package dev.stayfixed.recording;

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
                    "damaged compressed data (" + damaged.getMessage() + ")",
                    "a whole gzip or zip file; send it again");
        } catch (EOFException cutOff) {
            throw LogFormatException.ofFile(
                    "compressed data that end in the middle", "a whole gzip or zip file; send it again");
        }
        delivered += Math.max(0, n);
        check();
        return n;
    }

    private void check() {
        if (delivered > limits.bytes()) {
            throw LogFormatException.tooLarge(
                    "more than " + limits.bytes() + " bytes when unpacked",
                    "at most " + limits.bytes() + " bytes; split the log into drives");
        }
        if (delivered > FREE && delivered > packed.count * limits.ratio()) {
            throw LogFormatException.tooLarge(
                    "compressed data that unpack to more than " + limits.ratio() + " times their size",
                    "a log of a drive, which packs less; send it unpacked");
        }
    }

    @Override
    public boolean markSupported() {
        return false;
    }
}
