package dev.stayfixed.web;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.Locale;
import java.util.zip.GZIPOutputStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/** Logs of a made-up drive, one row a second: idle, warm-up, steady speed, idle. */
final class RecordedDrive {

    static final String CSV = "text/csv";
    static final String GZIP = "application/gzip";
    static final String ZIP = "application/zip";
    private static final String HEADER = "Time,01-0C,01-0D,01-05,01-46";

    private RecordedDrive() {}

    /**
     * A drive of 25 minutes that starts at a time.
     *
     * @param steady s at 80 km/h without a break
     * @param warmRate K a second until 90 °C
     */
    static String log(String start, int steady, double warmRate) {
        StringBuilder log = new StringBuilder(HEADER).append('\n');
        Instant first = Instant.parse(start);
        for (int s = 0; s < 1500; s++) {
            int speed = s < 60 ? 0 : s < 600 ? 50 : s < 600 + steady ? 80 : s < 1400 ? 50 : 0;
            log.append(String.format(
                    Locale.ROOT,
                    "%s,%d,%d,%.0f,15%n",
                    first.plus(Duration.ofSeconds(s)),
                    speed == 0 ? 750 : 1900,
                    speed,
                    Math.min(90, 20 + s * warmRate)));
        }
        return log.toString();
    }

    static String log(String start, int steady) {
        return log(start, steady, 0.15);
    }

    static byte[] bytes(String log) {
        return log.getBytes(StandardCharsets.UTF_8);
    }

    static byte[] gzip(byte[] plain) {
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (GZIPOutputStream gzip = new GZIPOutputStream(packed)) {
            gzip.write(plain);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return packed.toByteArray();
    }

    /** A zip file with the same content under each of these names. */
    static byte[] zip(byte[] plain, String... names) {
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(packed)) {
            for (String name : names) {
                zip.putNextEntry(new ZipEntry(name));
                zip.write(plain);
                zip.closeEntry();
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return packed.toByteArray();
    }

    static final String BOUNDARY = "part-of-a-drive";
    static final String FORM = "multipart/form-data; boundary=" + BOUNDARY;

    /** A form with the log and what is said beside it. */
    static byte[] form(byte[] log, String said) {
        ByteArrayOutputStream form = new ByteArrayOutputStream();
        form.writeBytes(bytes(
                "--" + BOUNDARY + "\r\nContent-Disposition: form-data; name=\"file\"; filename=\"../../x.csv\"\r\n"
                        + "Content-Type: application/octet-stream\r\n\r\n"));
        form.writeBytes(log);
        form.writeBytes(bytes("\r\n--" + BOUNDARY + "\r\nContent-Disposition: form-data; name=\"drive\"\r\n"
                + "Content-Type: application/json\r\n\r\n" + said + "\r\n--" + BOUNDARY + "--\r\n"));
        return form.toByteArray();
    }
}
