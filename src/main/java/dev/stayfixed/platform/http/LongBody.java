package dev.stayfixed.platform.http;

import dev.stayfixed.platform.problem.FullDisk;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.platform.storage.InstanceFolder;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Bodies that may be long: logs, plain, compressed, or in a form. They are read to the disk, never whole into memory.
 *
 * @param limit bytes
 * @param space is looked at again while a body comes in, which may not say how long it is
 * @param folder where they lie
 */
record LongBody(long limit, EnoughSpace space, InstanceFolder folder) {

    private static final long LOOK_AGAIN = 8 << 20;

    private static final Set<String> FILES = Set.of(
            "text/csv", "application/gzip", "application/x-gzip", "application/zip", "application/x-zip-compressed");

    /** What an address may do with a body that was taken in. */
    interface Use {
        void with(HttpServletRequest request) throws IOException, ServletException;
    }

    static boolean isFile(@Nullable String contentType) {
        return FILES.contains(mediaType(contentType));
    }

    static boolean isForm(@Nullable String contentType) {
        return mediaType(contentType).equals("multipart/form-data");
    }

    private static String mediaType(@Nullable String contentType) {
        return contentType == null ? "" : contentType.split(";", 2)[0].strip().toLowerCase(Locale.ROOT);
    }

    /** Reads the body to a file, which is there until the use of it has ended. */
    void inFile(HttpServletRequest request, Use use) throws IOException, ServletException {
        Path file = folder.file();
        try {
            copy(request, file);
            use.with(new RequestWithFile(request, file));
        } finally {
            Files.deleteIfExists(file);
        }
    }

    private void copy(HttpServletRequest request, Path file) throws IOException {
        if (request.getContentLengthLong() > limit) {
            throw tooLarge();
        }
        byte[] buffer = new byte[1 << 16];
        long count = 0;
        long looked = 0;
        InputStream in = request.getInputStream();
        try (OutputStream out = Files.newOutputStream(file)) {
            for (int n = in.read(buffer); n >= 0; n = in.read(buffer)) {
                count += n;
                if (count > limit) {
                    throw tooLarge();
                }
                if (count - looked > LOOK_AGAIN) {
                    looked = count;
                    space.check(0);
                }
                out.write(buffer, 0, n);
            }
        } catch (IOException e) {
            if (FullDisk.isBehind(e)) {
                throw FullDisk.refusal(e);
            }
            throw e;
        }
    }

    /**
     * Lets the container take the parts of a form apart.
     *
     * @throws Refused when they are too long, or no parts
     */
    HttpServletRequest inParts(HttpServletRequest request) {
        if (request.getContentLengthLong() > limit) {
            throw tooLarge();
        }
        try {
            request.getParts();
            return new RequestWithParts(request);
        } catch (IllegalStateException | IOException | ServletException e) {
            for (Throwable cause = e; cause != null; cause = cause.getCause()) {
                if (cause.getClass().getSimpleName().contains("Size")) {
                    throw tooLarge();
                }
            }
            if (FullDisk.isBehind(e)) {
                throw FullDisk.refusal(e);
            }
            throw new Refused(
                    ProblemType.MALFORMED_REQUEST,
                    "the body: found a form that cannot be taken apart, expected multipart/form-data with its boundary in the"
                            + " Content-Type and every part ended by it; let the client make both");
        }
    }

    private Refused tooLarge() {
        return new Refused(
                ProblemType.CONTENT_TOO_LARGE,
                "the body: found more than " + limit
                        + " bytes, expected at most that; send each drive by itself, compressed, or"
                        + " raise stayfixed.log-limit");
    }
}
