package dev.stayfixed.web.pages;

import jakarta.servlet.http.HttpServletResponse;

/** What a browser is told about a page. */
public final class PageHeaders {

    /** Nothing but our own files; nothing inline. The data: images are the marks inside the check boxes and lists of the style sheet. */
    private static final String ONLY_OURS =
            "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; font-src 'self'; connect-src 'self';"
                    + " form-action 'self'; frame-ancestors 'none'; base-uri 'none'";

    private PageHeaders() {}

    /** Others may neither frame it nor keep it. */
    public static void protect(HttpServletResponse response) {
        response.setHeader("Content-Security-Policy", ONLY_OURS);
        response.setHeader("Cache-Control", "no-store");
    }

    /** Of a page that whoever has its address may read: nor find it. */
    public static void hide(HttpServletResponse response) {
        protect(response);
        response.setHeader("X-Robots-Tag", "noindex, nofollow");
    }
}
