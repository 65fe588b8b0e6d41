package dev.stayfixed.web.pages;

import dev.stayfixed.platform.OwnCookie;
import dev.stayfixed.platform.Secret;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.web.servlet.support.RequestDataValueProcessor;

/**
 * Forms are taken from our own pages only: a cookie that other sites never get sent must repeat in a hidden field (the double-submit
 * pattern), also where a browser does not say whose page it shows. No session is kept.
 */
final class FormToken {

    static final String FIELD = "formToken";
    /** Names one filling-in of a form, so that sending it twice does nothing twice. */
    static final String ONCE = "once";

    private static final OwnCookie COOKIE = new OwnCookie("stayfixed-form", "Strict");
    private static final String ATTRIBUTE = FormToken.class.getName();

    private FormToken() {}

    /**
     * Sees to it that the browser has a token, and that a form repeats it.
     *
     * @throws NotOurForm when a form does not
     */
    static void check(HttpServletRequest request, HttpServletResponse response) {
        Optional<String> known = cookie(request);
        String token = known.orElseGet(FormToken::fresh);
        request.setAttribute(ATTRIBUTE, token);
        if (known.isEmpty()) {
            response.addHeader("Set-Cookie", COOKIE.header(request, token, Optional.empty()));
        }
        if ("POST".equals(request.getMethod())
                && known.filter(t -> repeats(request, t)).isEmpty()) {
            throw new NotOurForm();
        }
    }

    private static Optional<String> cookie(HttpServletRequest request) {
        return COOKIE.of(request).filter(value -> value.matches("[0-9a-f]{32}"));
    }

    private static String fresh() {
        return HexFormat.of().formatHex(Secret.bytes(16));
    }

    private static boolean repeats(HttpServletRequest request, String token) {
        String given = request.getParameter(FIELD);
        return given != null
                && MessageDigest.isEqual(
                        given.getBytes(StandardCharsets.UTF_8), token.getBytes(StandardCharsets.UTF_8));
    }

    /** A form that this browser did not get from us, or a browser that keeps no cookies. */
    static final class NotOurForm extends RuntimeException {}

    /** Writes the hidden fields. */
    static final class IntoForms implements RequestDataValueProcessor {

        @Override
        public String processAction(HttpServletRequest request, String action, String httpMethod) {
            return action;
        }

        @Override
        public String processFormFieldValue(
                HttpServletRequest request, @Nullable String name, String value, String type) {
            return value;
        }

        @Override
        public @Nullable Map<String, String> getExtraHiddenFields(HttpServletRequest request) {
            Object token = request.getAttribute(ATTRIBUTE);
            return token == null ? null : Map.of(FIELD, token.toString(), ONCE, fresh());
        }

        @Override
        public String processUrl(HttpServletRequest request, String url) {
            return url;
        }
    }
}
