package dev.stayfixed.customer.pages;

import dev.stayfixed.platform.ForReaders;
import dev.stayfixed.platform.Texts;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.List;
import org.springframework.core.io.ClassPathResource;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RestController;

/** What makes the page installable: its manifest (W3C Web Application Manifest), and the worker that opens it without reception. */
@ForReaders
@Hidden
@RestController
class DriverApp {

    /** The names are those of the standard. */
    record Manifest(
            String name,
            String short_name,
            String start_url,
            String scope,
            String display,
            String lang,
            String background_color,
            String theme_color,
            List<Icon> icons) {}

    /** One picture. */
    record Icon(String src, String sizes, String type) {}

    private static final List<Icon> ICONS = List.of(
            new Icon("/driver/icon-192.png", "192x192", "image/png"),
            new Icon("/driver/icon-512.png", "512x512", "image/png"),
            new Icon("/icon.svg", "any", "image/svg+xml"));

    private final Texts texts;

    DriverApp(Texts texts) {
        this.texts = texts;
    }

    /** The token is not looked up: the answer holds nothing but what was asked with. */
    @GetMapping(path = "/d/{token:[A-Za-z0-9_-]{24}}/app.webmanifest", produces = "application/manifest+json")
    Manifest manifest(@PathVariable String token, HttpServletResponse response) {
        response.setHeader("X-Robots-Tag", "noindex, nofollow");
        String page = "/d/" + token;
        return new Manifest(
                texts.of("customer.app"),
                texts.of("customer.page.my-drives"),
                page,
                page,
                "standalone",
                texts.language(),
                "#faf8f3",
                "#0b5c63",
                ICONS);
    }

    /** Served from /d/, because a worker serves the addresses beside and below its own. */
    @GetMapping(path = "/d/worker.js", produces = "text/javascript")
    ResponseEntity<byte[]> worker() throws IOException {
        return ResponseEntity.ok()
                .header("Content-Security-Policy", "default-src 'none'; connect-src 'self'")
                .body(new ClassPathResource("static/driver/worker.js").getContentAsByteArray());
    }
}
