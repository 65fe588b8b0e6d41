package dev.stayfixed.archive;

import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.recording.LogFormatException;
import dev.stayfixed.wording.Wording;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import org.springframework.core.io.InputStreamSource;

/**
 * A log that can be read as often as needed, without ever being whole in memory.
 *
 * @param bytes as they were sent
 */
public record UploadedLog(InputStreamSource bytes) {

    static final String CSV = "text/csv";
    static final String GZIP = "application/gzip";
    static final String ZIP = "application/zip";

    /** Something that is done with the bytes. */
    public interface Reading<T> {
        T of(InputStream in) throws IOException;
    }

    /**
     * Whether a file is a recorded log rather than the text of a scan: packed, or with separators in its first line.
     *
     * @param name of the file
     */
    public boolean isLikely(String name) {
        byte[] start = read(in -> in.readNBytes(512));
        String first = new String(start, StandardCharsets.ISO_8859_1)
                .lines()
                .findFirst()
                .orElse("");
        return !mediaType().equals(CSV)
                || name.toLowerCase(Locale.ROOT).endsWith(".csv")
                || first.matches(".*\\S[,;\\t].*\\S.*");
    }

    /** What the bytes are, whatever they were called. */
    public String mediaType() {
        byte[] magic = read(in -> in.readNBytes(4));
        if (magic.length >= 2 && (magic[0] & 0xFF) == 0x1F && (magic[1] & 0xFF) == 0x8B) {
            return GZIP;
        }
        return magic.length == 4 && magic[0] == 'P' && magic[1] == 'K' && magic[2] == 3 && magic[3] == 4 ? ZIP : CSV;
    }

    /**
     * Reads it.
     *
     * @throws Refused where it is no log that can be read
     */
    public <T> T read(Reading<T> reading) {
        try (InputStream in = bytes.getInputStream()) {
            return reading.of(in);
        } catch (LogFormatException e) {
            throw refused(e);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    public static Refused refused(LogFormatException e) {
        return new Refused(
                e.isTooLarge() ? ProblemType.CONTENT_TOO_LARGE : ProblemType.LOG_NOT_UNDERSTOOD,
                "the log: " + Wording.METRIC.words(e.reason()));
    }
}
