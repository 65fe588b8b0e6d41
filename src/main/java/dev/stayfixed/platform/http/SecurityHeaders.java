package dev.stayfixed.platform.http;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.springframework.web.filter.OncePerRequestFilter;

/** Tells browsers to run nothing that an answer contains; only the pages that show the API description load their own script. */
final class SecurityHeaders extends OncePerRequestFilter {

    private static final String NOTHING =
            "default-src 'none'; frame-ancestors 'none'; base-uri 'none'; form-action 'none'";
    private static final String DOCUMENTATION =
            "default-src 'none'; script-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' data:; connect-src 'self';"
                    + " font-src 'self'; frame-ancestors 'none'; base-uri 'none'; form-action 'none'";

    /** What none of our pages asks a browser for; what they do ask for, to share and to copy a link, is not named. */
    private static final String UNUSED = Stream.of(
                    "accelerometer",
                    "camera",
                    "clipboard-read",
                    "display-capture",
                    "geolocation",
                    "gyroscope",
                    "hid",
                    "idle-detection",
                    "magnetometer",
                    "microphone",
                    "midi",
                    "payment",
                    "publickey-credentials-get",
                    "screen-wake-lock",
                    "serial",
                    "usb",
                    "xr-spatial-tracking")
            .map(feature -> feature + "=()")
            .collect(Collectors.joining(", "));

    /** A year; of this host only, because others under its name are not ours. */
    private static final String HTTPS_ONLY = "max-age=31536000";

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        response.setHeader("X-Content-Type-Options", "nosniff");
        response.setHeader("X-Frame-Options", "DENY");
        // With no-referrer, browsers would hide the origin of our own forms too.
        response.setHeader("Referrer-Policy", "same-origin");
        response.setHeader("Cross-Origin-Resource-Policy", "same-origin");
        response.setHeader("Cross-Origin-Opener-Policy", "same-origin");
        response.setHeader("Permissions-Policy", UNUSED);
        if (request.isSecure()) {
            response.setHeader("Strict-Transport-Security", HTTPS_ONLY);
        }
        response.setHeader("Cache-Control", "no-cache");
        response.setHeader("Content-Security-Policy", isDocumentation(request) ? DOCUMENTATION : NOTHING);
        chain.doFilter(request, response);
    }

    private static boolean isDocumentation(HttpServletRequest request) {
        String path = request.getRequestURI();
        return path.startsWith("/api/docs") || path.startsWith("/api/swagger-ui/");
    }
}
