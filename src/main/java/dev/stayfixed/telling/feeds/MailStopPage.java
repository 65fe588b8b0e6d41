package dev.stayfixed.telling.feeds;

import dev.stayfixed.platform.ForReaders;
import dev.stayfixed.platform.Texts;
import dev.stayfixed.telling.mail.MailStop;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.http.HttpServletResponse;
import org.springframework.http.MediaType;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.util.HtmlUtils;

/**
 * Stops the mails to a driver. Looking changes nothing, because mail servers follow links by themselves; one POST does it, from the
 * page's button or from the mail program's (RFC 8058).
 */
@ForReaders
@Hidden
@RestController
@RequestMapping(path = "/mail-stop/{token}", produces = MediaType.TEXT_HTML_VALUE)
class MailStopPage {

    private final MailStop mails;
    private final Texts texts;

    MailStopPage(MailStop mails, Texts texts) {
        this.mails = mails;
        this.texts = texts;
    }

    @GetMapping
    String look(@PathVariable String token, HttpServletResponse response) {
        return mails.isStopped(token)
                ? page(
                        response,
                        texts.of("telling.stop.stopped"),
                        texts.of("telling.stop.stopped-words"),
                        "./" + token + "/again",
                        texts.of("telling.stop.again"))
                : page(
                        response,
                        texts.of("telling.stop.question"),
                        texts.of("telling.stop.question-words"),
                        "./" + token,
                        texts.of("telling.stop.stop"));
    }

    @PostMapping
    String stop(@PathVariable String token, HttpServletResponse response) {
        mails.stop(token);
        return look(token, response);
    }

    @PostMapping("/again")
    String again(@PathVariable String token, HttpServletResponse response) {
        mails.goOn(token);
        return page(
                response,
                texts.of("telling.stop.go-on"),
                texts.of("telling.stop.go-on-words"),
                "../" + token,
                texts.of("telling.stop.stop"));
    }

    /** The token is known by now, so it holds nothing but letters, digits, "-" and "_". */
    private String page(HttpServletResponse response, String title, String words, String action, String button) {
        response.setHeader(
                "Content-Security-Policy",
                "default-src 'none'; frame-ancestors 'none'; base-uri 'none'; form-action 'self'");
        return """
                <!DOCTYPE html>
                <html lang="%5$s">
                <head><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>%1$s</title></head>
                <body>
                <main>
                <h1>%1$s</h1>
                <p>%2$s</p>
                <form method="post" action="%3$s"><button type="submit">%4$s</button></form>
                </main>
                </body>
                </html>
                """.formatted(
                        HtmlUtils.htmlEscape(title),
                        HtmlUtils.htmlEscape(words),
                        action,
                        HtmlUtils.htmlEscape(button),
                        texts.language());
    }
}
