package dev.stayfixed.recording;

import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import java.io.BufferedInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.zip.GZIPInputStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipInputStream;
import org.jspecify.annotations.Nullable;

/** The bytes of a log, unpacked within limits, and a look at its head that consumes nothing. */
final class LogSource {

    private static final int HEAD = 1 << 16;

    private final BufferedInputStream stream;
    private final byte[] head;
    private final InputStream unpacked;
    private final @Nullable ZipInputStream zip;
    private final String name;

    private LogSource(InputStream unpacked, @Nullable ZipInputStream zip, String name) throws IOException {
        this.unpacked = unpacked;
        this.name = name;
        this.stream = new BufferedInputStream(unpacked, HEAD);
        this.zip = zip;
        stream.mark(HEAD + 1);
        head = stream.readNBytes(HEAD);
        stream.reset();
    }

    static LogSource open(InputStream in, LogLimits limits) throws IOException {
        BufferedInputStream sniffed = new BufferedInputStream(in);
        sniffed.mark(4);
        byte[] magic = sniffed.readNBytes(4);
        sniffed.reset();
        LimitedStream.Counted packed = new LimitedStream.Counted(sniffed);
        LogSource source = startsWith(magic, 0x1F, 0x8B)
                ? new LogSource(new LimitedStream(gzip(packed), packed, limits), null, "")
                : startsWith(magic, 'P', 'K', 3, 4)
                        ? ofZip(packed, limits)
                        : new LogSource(new LimitedStream(packed, packed, limits), null, "");
        source.refuseOtherEncodings();
        return source;
    }

    private static InputStream gzip(InputStream packed) throws IOException {
        try {
            return new GZIPInputStream(packed, 1 << 13);
        } catch (ZipException | EOFException damaged) {
            throw LogFormatException.ofFile(LogFound.DAMAGED_GZIP, LogExpected.WHOLE_GZIP);
        }
    }

    private static LogSource ofZip(LimitedStream.Counted packed, LogLimits limits) throws IOException {
        ZipInputStream zip = new ZipInputStream(packed);
        LimitedStream limited = new LimitedStream(zip, packed, limits);
        List<String> passed = new ArrayList<>();
        for (ZipEntry entry = next(zip); entry != null; entry = next(zip)) {
            if (isLog(entry)) {
                return new LogSource(limited, zip, entry.getName());
            }
            passed.add(entry.getName());
            if (passed.size() > limits.zipEntries()) {
                break;
            }
            limited.transferTo(OutputStream.nullOutputStream());
        }
        throw LogFormatException.ofFile(
                passed.isEmpty()
                        ? LogFound.ZIP_WITHOUT_LOG
                        : Reason.of(LogFound.ZIP_WITHOUT_LOG_BUT, Part.verbatim(passed.get(0))),
                LogExpected.ONE_FILE);
    }

    private static @Nullable ZipEntry next(ZipInputStream zip) throws IOException {
        try {
            return zip.getNextEntry();
        } catch (ZipException | EOFException | IllegalArgumentException damaged) {
            throw LogFormatException.ofFile(
                    Reason.of(LogFound.DAMAGED_ZIP, Part.verbatim(String.valueOf(damaged.getMessage()))),
                    LogExpected.WHOLE_ZIP);
        }
    }

    private static boolean isLog(ZipEntry entry) {
        String name = entry.getName().toLowerCase(Locale.ROOT);
        String file = name.substring(name.lastIndexOf('/') + 1);
        boolean text = file.endsWith(".csv") || file.endsWith(".txt") || file.endsWith(".tsv");
        return text && !file.startsWith(".") && !name.startsWith("__macosx/");
    }

    /** The first bytes, as text; the rest of a cut character is dropped. */
    String head() {
        return new String(head, StandardCharsets.UTF_8);
    }

    /** Whether {@link #head} is the whole log. */
    boolean isHeadWhole() {
        return head.length < HEAD;
    }

    InputStream stream() {
        return stream;
    }

    /** The next log of the same zip file; to be called once this one was read to its end. */
    Optional<LogSource> next() throws IOException {
        if (zip == null) {
            return Optional.empty();
        }
        for (ZipEntry entry = next(zip); entry != null; entry = next(zip)) {
            if (isLog(entry)) {
                LogSource source = new LogSource(unpacked, zip, entry.getName());
                source.refuseOtherEncodings();
                return Optional.of(source);
            }
            unpacked.transferTo(OutputStream.nullOutputStream());
        }
        return Optional.empty();
    }

    /** Of the file in the zip file; empty where there is none. */
    String name() {
        return name;
    }

    private void refuseOtherEncodings() {
        if (head.length == 0) {
            throw LogFormatException.ofFile(LogFound.EMPTY_FILE, LogExpected.CSV_WITH_HEADER);
        }
        boolean mark = startsWith(head, 0xFE, 0xFF) || startsWith(head, 0xFF, 0xFE);
        int zeros = 0;
        for (byte b : head) {
            zeros += b == 0 ? 1 : 0;
        }
        if (mark || zeros > head.length / 4) {
            throw LogFormatException.ofFile(LogFound.UTF_16, LogExpected.CSV_SAVED_AGAIN);
        }
        if (zeros > 0) {
            throw LogFormatException.ofFile(LogFound.BINARY, LogExpected.CSV);
        }
    }

    private static boolean startsWith(byte[] bytes, int... start) {
        if (bytes.length < start.length) {
            return false;
        }
        for (int i = 0; i < start.length; i++) {
            if ((bytes[i] & 0xFF) != start[i]) {
                return false;
            }
        }
        return true;
    }
}
