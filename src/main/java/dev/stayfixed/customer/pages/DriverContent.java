package dev.stayfixed.customer.pages;

import dev.stayfixed.archive.DriveSubmission;
import dev.stayfixed.archive.Original;
import dev.stayfixed.customer.Visit;
import dev.stayfixed.platform.StrictJson;
import dev.stayfixed.platform.Texts;
import dev.stayfixed.platform.problem.Mistake;
import dev.stayfixed.platform.problem.Refused;
import jakarta.servlet.http.HttpServletResponse;
import java.nio.charset.StandardCharsets;
import java.util.Objects;
import org.springframework.http.HttpStatus;
import org.springframework.web.servlet.ModelAndView;

/** What the addresses under a link have in common. */
final class DriverContent {

    /** Our own files only, nothing inline; the worker and the manifest make the page installable. */
    private static final String ONLY_OURS =
            "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self'; worker-src 'self';"
                    + " manifest-src 'self'; form-action 'self'; frame-ancestors 'none'; base-uri 'none'";

    private DriverContent() {}

    /** A page that others may neither frame, nor keep, nor find. */
    static void rules(HttpServletResponse response) {
        response.setHeader("Content-Security-Policy", ONLY_OURS);
        response.setHeader("Cache-Control", "no-store");
        response.setHeader("X-Robots-Tag", "noindex, nofollow");
    }

    /** What is seen instead of the page. It tells nothing about any job. */
    static ModelAndView closed(DriverDoor.Entry entry, HttpServletResponse response, Texts texts) {
        if (entry instanceof DriverDoor.Wait wait) {
            response.setHeader("Retry-After", Long.toString(wait.duration().toSeconds()));
            return sorry(
                    HttpStatus.TOO_MANY_REQUESTS,
                    texts.of("customer.wait"),
                    texts.of("customer.wait-words", wait.duration().toSeconds()));
        }
        return entry instanceof DriverDoor.Opened opened && opened.visit() instanceof Visit.Ended ended
                ? sorry(
                        HttpStatus.GONE,
                        texts.of("customer.link-ended"),
                        texts.choice("customer.ended", ended.reason()))
                : sorry(HttpStatus.NOT_FOUND, texts.of("customer.no-page"), texts.of("customer.no-page-words"));
    }

    private static ModelAndView sorry(HttpStatus status, String title, String words) {
        ModelAndView page = new ModelAndView("driver/ended");
        page.setStatus(status);
        page.addObject("title", title);
        page.addObject("words", words);
        return page;
    }

    /**
     * JSON of a device is taken as it is; everything else becomes a submission of ours.
     *
     * @throws Refused where the JSON answers for the vehicle, which only the workshop can
     */
    static Original original(LoggedForm form, LoggedForm.Read read, StrictJson json) {
        String text = form.record() == null ? "" : form.record().strip();
        if (text.startsWith("{")) {
            if (json.read(text.getBytes(StandardCharsets.UTF_8), DriveSubmission.class)
                    .isSameVehicleConfirmed()) {
                throw Refused.content(new Mistake("record", "sameVehicleConfirmed", "nothing of the kind"));
            }
            return new Original(Original.JSON, text);
        }
        return new Original(
                Original.JSON,
                new String(json.canonical(Objects.requireNonNull(read.submission())), StandardCharsets.UTF_8));
    }
}
