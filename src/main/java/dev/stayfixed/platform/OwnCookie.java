package dev.stayfixed.platform;

import jakarta.servlet.http.HttpServletRequest;
import java.time.Duration;
import java.util.Optional;
import org.springframework.http.ResponseCookie;
import org.springframework.web.util.WebUtils;

/**
 * A cookie of this service, for all its pages and no script. Over https its name begins with __Host- (RFC 6265bis section 4.1.3.2), so
 * that neither a neighbouring host nor anybody on the way can have set it.
 *
 * @param name without that beginning
 * @param sameSite Strict or Lax
 */
public record OwnCookie(String name, String sameSite) {

    /** What the browser has kept under it. */
    public Optional<String> of(HttpServletRequest request) {
        return Optional.ofNullable(WebUtils.getCookie(request, nameIn(request)))
                .map(jakarta.servlet.http.Cookie::getValue);
    }

    /** The header that has the browser keep a value, until it is closed where no time is given. */
    public String header(HttpServletRequest request, String value, Optional<Duration> kept) {
        ResponseCookie.ResponseCookieBuilder cookie = ResponseCookie.from(nameIn(request), value)
                .path("/")
                .httpOnly(true)
                .secure(request.isSecure())
                .sameSite(sameSite);
        kept.ifPresent(cookie::maxAge);
        return cookie.build().toString();
    }

    private String nameIn(HttpServletRequest request) {
        return request.isSecure() ? "__Host-" + name : name;
    }
}
