package dev.stayfixed.web.pages;

import dev.stayfixed.jobs.ShopSettings;
import dev.stayfixed.jobs.Shops;
import dev.stayfixed.platform.problem.FullDisk;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import jakarta.servlet.http.HttpServletResponse;
import java.time.Clock;
import java.time.ZoneOffset;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.http.HttpStatus;
import org.springframework.web.ErrorResponse;
import org.springframework.web.bind.annotation.ControllerAdvice;
import org.springframework.web.bind.annotation.ExceptionHandler;
import org.springframework.web.method.annotation.MethodArgumentTypeMismatchException;
import org.springframework.web.servlet.ModelAndView;

/** What a person sees instead of a page that cannot be shown: what happened, and where to go from here. */
@Order(Ordered.HIGHEST_PRECEDENCE)
@ControllerAdvice(annotations = TechnicianPage.class)
class PageErrors {

    private static final Logger LOG = LoggerFactory.getLogger(PageErrors.class);

    private final Shops shops;
    private final Clock clock;

    PageErrors(Shops shops, Clock clock) {
        this.shops = shops;
        this.clock = clock;
    }

    @ExceptionHandler
    ModelAndView refused(Refused refused, HttpServletResponse response) {
        ProblemType type = refused.type();
        type.retryAfter().ifPresent(seconds -> response.setHeader("Retry-After", Integer.toString(seconds)));
        return page(type.status(), type.title(), String.valueOf(refused.getMessage()), type.remedy());
    }

    @ExceptionHandler
    ModelAndView notOurForm(FormToken.NotOurForm e) {
        return page(
                403,
                "Form not accepted",
                "The form did not come from a page that this browser got from here, or the browser keeps no cookies. Nothing was"
                        + " stored.",
                "Go back, reload the page and send the form again.");
    }

    @ExceptionHandler
    ModelAndView noSuchId(MethodArgumentTypeMismatchException e) {
        return page(404, "Not found", "Nothing has this address.", "Start from the list of open jobs.");
    }

    ModelAndView unreadable() {
        return page(
                400,
                "Form not readable",
                "The form did not arrive as a browser sends it. Nothing was stored.",
                "Go back, reload the page and send the form again.");
    }

    ModelAndView tooLarge() {
        return page(
                413,
                "Too much at once",
                "What was sent is larger than this service takes. Nothing was stored.",
                "Go back and send less, for example one scan or one log at a time; a packed log (gzip, zip) is much smaller.");
    }

    @ExceptionHandler
    ModelAndView unexpected(Exception e, HttpServletResponse response) {
        if (FullDisk.isBehind(e)) {
            LOG.error("a disk is full", e);
            return refused(FullDisk.refusal(e), response);
        }
        if (e instanceof ErrorResponse known && known.getStatusCode().is4xxClientError()) {
            return page(
                    known.getStatusCode().value(),
                    "Not accepted",
                    "The request cannot be answered as it was sent.",
                    "Go back, check what you sent, and send it again.");
        }
        LOG.error("unexpected failure of a page", e);
        return page(
                500,
                "Our mistake",
                "The service made a mistake and wrote it to its log; nothing of what you sent was stored.",
                "Try again; if it fails again, report the time: " + clock.instant());
    }

    ModelAndView page(int status, String title, String found, String remedy) {
        ModelAndView page = new ModelAndView("error-page");
        page.setStatus(HttpStatus.valueOf(status));
        page.addObject("show", new Show(settings(), clock.instant()));
        page.addObject("title", title);
        page.addObject("found", found);
        page.addObject("remedy", remedy);
        return page;
    }

    /** This page is shown even where the database is away. */
    private ShopSettings settings() {
        try {
            return shops.settings();
        } catch (Refused databaseAway) {
            LOG.debug("an error page without the settings of the shop", databaseAway);
            return new ShopSettings("Stayfixed", ZoneOffset.UTC, ShopSettings.Units.METRIC, 7);
        }
    }
}
