package dev.stayfixed.platform.http;

import jakarta.servlet.http.HttpServletRequest;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Where a page is from (RFC 6454 section 4).
 *
 * @param scheme http or https
 * @param port named or not
 */
record Origin(String scheme, String host, int port) {

    private static final Pattern ADDRESS = Pattern.compile("(?i)(https?)://([^/?#]+)(.*)");

    /** Of an address, with whatever path. Empty where it is no address of a page. */
    static Optional<Origin> ofAddress(String url) {
        Matcher parts = ADDRESS.matcher(url);
        return parts.matches()
                ? Authority.of(parts.group(2)).map(at -> of(parts.group(1).toLowerCase(Locale.ROOT), at))
                : Optional.empty();
    }

    /** Of a request that came by a name of ours. */
    static Optional<Origin> of(HttpServletRequest request) {
        return Optional.ofNullable(request.getHeader("Host"))
                .flatMap(Authority::of)
                .map(at -> of(request.getScheme(), at));
    }

    private static Origin of(String scheme, Authority at) {
        return new Origin(scheme, at.host(), at.port().orElse(scheme.equals("https") ? 443 : 80));
    }
}
