package dev.stayfixed.intake.api;

import dev.stayfixed.archive.Original;
import dev.stayfixed.archive.UploadedLog;
import dev.stayfixed.platform.problem.Mistake;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.Part;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.springframework.http.MediaType;
import tools.jackson.databind.json.JsonMapper;

/** A log as it comes in: as the body, with what is said of it in the query, or as a form with both. */
record LogRequest(UploadedLog log, Original said) {

    static final String CSV = "text/csv";
    static final String GZIP = "application/gzip";
    static final String X_GZIP = "application/x-gzip";
    static final String ZIP = "application/zip";
    static final String X_ZIP = "application/x-zip-compressed";

    private static final String FILE = "file";
    private static final String DRIVE = "drive";
    private static final int MOST_SAID = 2 << 20;
    private static final Set<String> SAID = Set.of("start", "end", "takenAt", "zone", "date", "mappingId");
    private static final Set<String> SAID_YES_OR_NO = Set.of("codesClearedBefore", "sameVehicleConfirmed");

    /** The body is the log. */
    static LogRequest body(HttpServletRequest request) {
        Map<String, Object> said = new TreeMap<>();
        request.getParameterMap().forEach((name, values) -> {
            if (SAID.contains(name)) {
                said.put(name, values[0]);
            } else if (SAID_YES_OR_NO.contains(name)) {
                said.put(name, values[0].matches("true|false") ? Boolean.valueOf(values[0]) : values[0]);
            } else {
                throw new Refused(
                        ProblemType.INVALID_PARAMETER,
                        name + ": found a parameter of this name, expected one of " + SAID + " or " + SAID_YES_OR_NO);
            }
        });
        return new LogRequest(
                new UploadedLog(request::getInputStream),
                new Original(Original.JSON, JsonMapper.shared().writeValueAsString(said)));
    }

    /** The form has the log as "file" and, where anything is said of it, JSON as "drive". */
    static LogRequest form(HttpServletRequest request) throws IOException, ServletException {
        for (Part part : request.getParts()) {
            if (!part.getName().equals(FILE) && !part.getName().equals(DRIVE)) {
                throw Refused.content(new Mistake(
                        "", "a part named " + part.getName(), "the parts \"file\" and, where needed, \"drive\""));
            }
        }
        if (request.getParts().stream().filter(p -> p.getName().equals(FILE)).count() != 1) {
            throw Refused.content(new Mistake("file", null, "one part named \"file\" with the log"));
        }
        Part file = request.getPart(FILE);
        return new LogRequest(
                new UploadedLog(file::getInputStream), new Original(Original.JSON, said(request.getPart(DRIVE))));
    }

    private static String said(@Nullable Part part) throws IOException {
        if (part == null) {
            return "{}";
        }
        if (part.getSize() > MOST_SAID) {
            throw new Refused(
                    ProblemType.CONTENT_TOO_LARGE, "the part \"drive\": found more than 2 MB, expected at most that");
        }
        try (InputStream in = part.getInputStream()) {
            return StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(in.readAllBytes()))
                    .toString();
        } catch (CharacterCodingException e) {
            throw new Refused(ProblemType.NOT_UTF_8, "the part \"drive\": found bytes that are not UTF-8");
        }
    }

    static boolean isForm(HttpServletRequest request) {
        return MediaType.MULTIPART_FORM_DATA.includes(MediaType.parseMediaType(request.getContentType()));
    }

    static LogRequest of(HttpServletRequest request) throws IOException, ServletException {
        return isForm(request) ? form(request) : body(request);
    }
}
