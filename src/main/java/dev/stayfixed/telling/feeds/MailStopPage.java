package dev.stayfixed.telling.feeds;

import dev.stayfixed.telling.mail.MailStop;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.http.HttpServletResponse;
import org.springframework.http.MediaType;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;

/**
 * Stops the mails to a driver. Looking changes nothing, because mail servers follow links by themselves; one POST does it, from the
 * page's button or from the mail program's (RFC 8058).
 */
@Hidden
@RestController
@RequestMapping(path = "/mail-stop/{token}", produces = MediaType.TEXT_HTML_VALUE)
class MailStopPage {

    private final MailStop mails;

    MailStopPage(MailStop mails) {
        this.mails = mails;
    }

    @GetMapping
    String look(@PathVariable String token, HttpServletResponse response) {
        return mails.isStopped(token)
                ? page(
                        response,
                        "These mails are stopped",
                        "You get no more mails about the repair of your car at this address.",
                        "./" + token + "/again",
                        "Send them again")
                : page(
                        response,
                        "Stop these mails?",
                        "You will get no more mails about the repair of your car at this address. The shop can still call you.",
                        "./" + token,
                        "Stop the mails");
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
                "The mails go on",
                "You will hear from your shop again at this address.",
                "../" + token,
                "Stop the mails");
    }

    /** The token is known by now, so it holds nothing but letters, digits, "-" and "_". */
    private static String page(HttpServletResponse response, String title, String words, String action, String button) {
        response.setHeader(
                "Content-Security-Policy",
                "default-src 'none'; frame-ancestors 'none'; base-uri 'none'; form-action 'self'");
        return """
                <!DOCTYPE html>
                <html lang="en">
                <head><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>%1$s</title></head>
                <body>
                <main>
                <h1>%1$s</h1>
                <p>%2$s</p>
                <form method="post" action="%3$s"><button type="submit">%4$s</button></form>
                </main>
                </body>
                </html>
                """.formatted(title, words, action, button);
    }
}
