package dev.stayfixed.platform.http;

import dev.stayfixed.platform.PlainText;
import dev.stayfixed.platform.problem.ProblemAnswer;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.net.URLDecoder;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.springframework.http.InvalidMediaTypeException;
import org.springframework.http.MediaType;
import org.springframework.web.filter.OncePerRequestFilter;

/** Reads the body once, up to the limit, and takes it only as plain UTF-8; looks through the query for what no text contains. */
final class WholeBody extends OncePerRequestFilter {

    /** What a decoder puts in the place of what it cannot read. */
    private static final char REPLACEMENT = '\uFFFD';

    private static final List<MediaType> TEXTS = List.of(MediaType.APPLICATION_JSON, MediaType.TEXT_PLAIN);

    private final long limit;
    private final LongBody longBody;

    /**
     * Takes bodies.
     *
     * @param limit bytes
     * @param longBody for logs, which go to the disk
     */
    WholeBody(long limit, LongBody longBody) {
        this.limit = limit;
        this.longBody = longBody;
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        try {
            checkQuery(request);
            taken(request, chain, response);
        } catch (Refused refused) {
            ProblemAnswer.write(refused, request, response);
        }
    }

    private void taken(HttpServletRequest request, FilterChain chain, HttpServletResponse response)
            throws ServletException, IOException {
        String type = request.getContentType();
        checkType(type);
        if (LongBody.isFile(type)) {
            checkEncoding(request);
            longBody.inFile(request, checked -> chain.doFilter(checked, response));
        } else if (isPageForm(request)) {
            chain.doFilter(request, response);
        } else if (LongBody.isForm(type)) {
            checkEncoding(request);
            chain.doFilter(longBody.inParts(request), response);
        } else {
            chain.doFilter(new RequestWithBody(request, body(request)), response);
        }
    }

    /** Forms are read, limited and decoded by the servlet container; the pages look at each field. */
    private static boolean isPageForm(HttpServletRequest request) {
        String type = request.getContentType();
        return type != null
                && !request.getRequestURI().startsWith("/api/")
                && (type.startsWith("application/x-www-form-urlencoded") || type.startsWith("multipart/form-data"));
    }

    private byte[] body(HttpServletRequest request) throws IOException {
        if (request.getContentLengthLong() > limit) {
            throw tooLarge();
        }
        byte[] body = request.getInputStream().readNBytes((int) Math.min(Integer.MAX_VALUE - 8, limit + 1));
        if (body.length > limit) {
            throw tooLarge();
        }
        if (body.length > 0) {
            checkEncoding(request, body);
        }
        return body;
    }

    private Refused tooLarge() {
        return new Refused(
                ProblemType.CONTENT_TOO_LARGE,
                "the body: found more than " + limit + " bytes, expected at most that; send less at once, or raise"
                        + " stayfixed.body-limit");
    }

    private static void checkEncoding(HttpServletRequest request) {
        String encoding = request.getHeader("Content-Encoding");
        if (encoding != null && !encoding.equalsIgnoreCase("identity")) {
            throw new Refused(
                    ProblemType.UNSUPPORTED_MEDIA_TYPE, "Content-Encoding: found " + encoding + ", expected none");
        }
    }

    private static void checkEncoding(HttpServletRequest request, byte[] body) {
        checkEncoding(request);
        checkText(request.getContentType());
        for (byte one : body) {
            if (one == 0) {
                throw new Refused(
                        ProblemType.NOT_UTF_8,
                        "the body: found the byte 00, expected text in UTF-8; UTF-16 and binary data are not taken");
            }
        }
        try {
            StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(body));
        } catch (CharacterCodingException e) {
            throw new Refused(
                    ProblemType.NOT_UTF_8, "the body: found bytes that are not UTF-8, expected text in UTF-8");
        }
    }

    /** A media type says what a body is; one with an asterisk in it is a wish, and belongs into Accept. */
    private static void checkType(@Nullable String contentType) {
        if (contentType != null) {
            MediaType type = parsed(contentType);
            if (type.isWildcardType() || type.isWildcardSubtype()) {
                throw unsupported(contentType);
            }
        }
    }

    /** Whatever else a library may make a converter for, a short body is JSON or plain text. */
    private static void checkText(@Nullable String contentType) {
        if (contentType == null) {
            throw unsupported("none");
        }
        MediaType type = parsed(contentType);
        if (TEXTS.stream().noneMatch(type::equalsTypeAndSubtype)) {
            throw unsupported(contentType);
        }
        String charset = type.getParameter("charset");
        if (charset != null
                && !charset.replace("\"", "").toLowerCase(Locale.ROOT).matches("utf-?8")) {
            throw new Refused(ProblemType.UNSUPPORTED_MEDIA_TYPE, "charset: found " + charset + ", expected utf-8");
        }
    }

    private static MediaType parsed(String contentType) {
        try {
            return MediaType.parseMediaType(contentType);
        } catch (InvalidMediaTypeException e) {
            throw unsupported(contentType);
        }
    }

    private static Refused unsupported(String contentType) {
        return new Refused(
                ProblemType.UNSUPPORTED_MEDIA_TYPE,
                "Content-Type: found " + contentType
                        + ", expected what is sent, such as application/json or text/plain");
    }

    private static void checkQuery(HttpServletRequest request) {
        String query = request.getQueryString();
        if (query == null) {
            return;
        }
        try {
            String decoded = URLDecoder.decode(query, StandardCharsets.UTF_8);
            if (decoded.indexOf(REPLACEMENT) >= 0) {
                throw new Refused(
                        ProblemType.INVALID_PARAMETER,
                        "the query: found bytes that are not UTF-8, expected text in UTF-8");
            }
            PlainText.flaw(decoded).ifPresent(flaw -> {
                throw new Refused(
                        ProblemType.INVALID_PARAMETER,
                        "the query: found " + flaw + ", expected text without control characters");
            });
        } catch (IllegalArgumentException e) {
            throw new Refused(
                    ProblemType.MALFORMED_REQUEST,
                    "the query: found a broken percent-encoding, expected two hexadecimal digits after each percent sign");
        }
    }
}
