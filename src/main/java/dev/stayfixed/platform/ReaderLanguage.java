package dev.stayfixed.platform;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.time.Duration;
import java.util.Collections;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpHeaders;
import org.springframework.web.method.HandlerMethod;
import org.springframework.web.servlet.HandlerInterceptor;
import org.springframework.web.servlet.HandlerMapping;
import org.springframework.web.servlet.i18n.AcceptHeaderLocaleResolver;
import org.springframework.web.servlet.support.ServletUriComponentsBuilder;

/** In which language a request is answered: in that of the service, but what is {@link ForReaders} in one of theirs. */
final class ReaderLanguage extends AcceptHeaderLocaleResolver implements HandlerInterceptor {

    /** In the address, and the cookie that remembers it. */
    private static final String NAME = "language";

    private static final OwnCookie COOKIE = new OwnCookie(NAME, "Lax");

    private static final Duration REMEMBERED = Duration.ofDays(365);

    private final Languages languages;

    ReaderLanguage(Languages languages) {
        this.languages = languages;
    }

    @Override
    public Locale resolveLocale(HttpServletRequest request) {
        return by(request.getAttribute(HandlerMapping.BEST_MATCHING_HANDLER_ATTRIBUTE))
                .map(by -> {
                    Optional<Locale> stated = stated(request);
                    return by == ForReaders.By.LINK
                            ? stated.orElse(languages.own())
                            : stated.or(() -> remembered(request)).orElseGet(() -> asked(request));
                })
                .orElse(languages.own());
    }

    private static Optional<ForReaders.By> by(@Nullable Object handler) {
        return handler instanceof HandlerMethod method
                ? Optional.ofNullable(method.getBeanType().getAnnotation(ForReaders.class))
                        .map(ForReaders::by)
                : Optional.empty();
    }

    private Optional<Locale> stated(HttpServletRequest request) {
        return Optional.ofNullable(ServletUriComponentsBuilder.fromRequest(request)
                        .build()
                        .getQueryParams()
                        .getFirst(NAME))
                .flatMap(languages::named);
    }

    private Optional<Locale> remembered(HttpServletRequest request) {
        return COOKIE.of(request).flatMap(languages::named);
    }

    private Locale asked(HttpServletRequest request) {
        // Without the header the servlet would tell the locale of this machine.
        return request.getHeader(HttpHeaders.ACCEPT_LANGUAGE) == null
                ? languages.own()
                : languages.closest(Collections.list(request.getLocales()));
    }

    /** Remembers what an address says, so that the forms and the pages behind it speak it too. */
    @Override
    public boolean preHandle(HttpServletRequest request, HttpServletResponse response, Object handler) {
        if (by(handler).filter(by -> by == ForReaders.By.LINK_OR_BROWSER).isPresent()) {
            stated(request)
                    .ifPresent(language -> response.addHeader(
                            HttpHeaders.SET_COOKIE,
                            COOKIE.header(request, language.getLanguage(), Optional.of(REMEMBERED))));
        }
        return true;
    }
}
