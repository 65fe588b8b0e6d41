package dev.stayfixed.web.pages;

import dev.stayfixed.jobs.ShopSettings;
import dev.stayfixed.jobs.Shops;
import dev.stayfixed.people.access.Asker;
import dev.stayfixed.platform.Texts;
import dev.stayfixed.platform.problem.FullDisk;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import jakarta.servlet.http.HttpServletResponse;
import java.time.Clock;
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
    private final Texts texts;

    PageErrors(Shops shops, Clock clock, Texts texts) {
        this.texts = texts;
        this.shops = shops;
        this.clock = clock;
    }

    @ExceptionHandler
    ModelAndView refused(Refused refused, HttpServletResponse response) {
        ProblemType type = refused.type();
        type.retryAfter().ifPresent(seconds -> response.setHeader("Retry-After", Integer.toString(seconds)));
        if (type == ProblemType.NOT_FOUND) {
            return notFound();
        }
        String remedy = type.retryAfter().isPresent() ? texts.of("web.errors.later") : type.remedy();
        return page(type.status(), type.title(), String.valueOf(refused.getMessage()), remedy);
    }

    @ExceptionHandler
    ModelAndView notOurForm(FormToken.NotOurForm e) {
        return page(
                403,
                texts.of("web.errors.not-accepted-form"),
                texts.of("web.errors.not-our-form"),
                texts.of("web.errors.reload"));
    }

    @ExceptionHandler
    ModelAndView noSuchId(MethodArgumentTypeMismatchException e) {
        return notFound();
    }

    ModelAndView notFound() {
        return page(
                404, texts.of("web.errors.not-found"), texts.of("web.errors.no-address"), texts.of("web.errors.start"));
    }

    ModelAndView unreadable() {
        return page(
                400,
                texts.of("web.errors.not-readable"),
                texts.of("web.errors.not-arrived"),
                texts.of("web.errors.reload"));
    }

    ModelAndView tooLarge() {
        return page(
                413,
                texts.of("web.errors.too-much"),
                texts.of("web.errors.too-large"),
                texts.of("web.errors.send-less"));
    }

    @ExceptionHandler
    ModelAndView unexpected(Exception e, HttpServletResponse response) {
        if (FullDisk.isBehind(e)) {
            LOG.error("a disk is full", e);
            return refused(FullDisk.refusal(e), response);
        }
        if (e instanceof ErrorResponse known && known.getStatusCode().is4xxClientError()) {
            return notTaken(known.getStatusCode().value());
        }
        LOG.error("unexpected failure of a page", e);
        return page(
                500,
                texts.of("web.errors.our-mistake"),
                texts.of("web.errors.in-log"),
                texts.of("web.errors.try-again", clock.instant()));
    }

    /** What was sent does not fit what is at the address: another method, a content that no form sends, a value that is none. */
    ModelAndView notTaken(int status) {
        return status == 404
                ? notFound()
                : page(
                        status,
                        texts.of("web.errors.not-accepted"),
                        texts.of("web.errors.not-answered"),
                        texts.of("web.errors.check"));
    }

    ModelAndView page(int status, String title, String found, String remedy) {
        ModelAndView page = new ModelAndView("error-page");
        page.setStatus(HttpStatus.valueOf(status));
        page.addObject("show", new Show(settings(), clock.instant()));
        page.addObject("asker", Asker.now().orElse(null));
        page.addObject("title", title);
        page.addObject("found", found);
        page.addObject("remedy", remedy);
        return page;
    }

    /** This page is shown even where the database is away. */
    private ShopSettings settings() {
        if (Asker.now().isEmpty()) {
            return Show.OF_NO_SHOP;
        }
        try {
            return shops.settings();
        } catch (Refused databaseAway) {
            LOG.debug("an error page without the settings of the shop", databaseAway);
            return Show.OF_NO_SHOP;
        }
    }
}
