package dev.stayfixed.reports.pages;

import dev.stayfixed.jobs.Photos;
import dev.stayfixed.jobs.Shops;
import dev.stayfixed.platform.ForReaders;
import dev.stayfixed.platform.Languages;
import dev.stayfixed.platform.Texts;
import dev.stayfixed.platform.http.Turnstile;
import dev.stayfixed.reports.ReportLinks;
import dev.stayfixed.reports.Reports;
import dev.stayfixed.reports.Times;
import dev.stayfixed.web.pages.PageHeaders;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.time.Duration;
import java.util.Optional;
import java.util.UUID;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.View;

/** The report on a job for somebody outside the shop: to read, and nothing else. The token in the address is all the right there is. */
@ForReaders
@Hidden
@Controller
@RequestMapping("/r/{token}")
class SharedReportPage {

    private final ReportLinks links;
    private final Reports reports;
    private final Photos photos;
    private final Turnstile turnstile;
    private final Shops shops;
    private final Languages languages;
    private final Texts texts;

    SharedReportPage(
            ReportLinks links,
            Reports reports,
            Photos photos,
            Turnstile turnstile,
            Shops shops,
            Languages languages,
            Texts texts) {
        this.links = links;
        this.reports = reports;
        this.photos = photos;
        this.turnstile = turnstile;
        this.shops = shops;
        this.languages = languages;
        this.texts = texts;
    }

    @GetMapping
    ModelAndView read(@PathVariable String token, HttpServletRequest request, HttpServletResponse response) {
        PageHeaders.hide(response);
        ReportLinks.Visit visit = links.visit(token);
        Optional<ModelAndView> closed = closed(visit, token, request, response);
        return closed.orElseGet(() -> page((ReportLinks.Welcome) visit, token));
    }

    private ModelAndView page(ReportLinks.Welcome welcome, String token) {
        ModelAndView page = new ModelAndView("report/shared-page");
        page.addObject("facts", reports.preview(welcome.jobId()));
        page.addObject("issued", reports.latest(welcome.jobId()).orElse(null));
        page.addObject("times", new Times(shops.settings().zone()));
        page.addObject("languages", languages.choices());
        page.addObject("until", welcome.expiresAt());
        page.addObject("shared", token);
        page.addObject("photosAt", "/r/" + token + "/photos");
        return page;
    }

    /** The report that was issued last, as it was issued. */
    @GetMapping(path = "/report.pdf")
    ModelAndView pdf(@PathVariable String token, HttpServletRequest request, HttpServletResponse response) {
        PageHeaders.hide(response);
        ReportLinks.Visit visit = links.visit(token);
        Optional<ModelAndView> closed = closed(visit, token, request, response);
        if (closed.isPresent()) {
            return closed.get();
        }
        return reports.latest(((ReportLinks.Welcome) visit).jobId())
                .map(issued -> new ModelAndView(file(MediaType.APPLICATION_PDF_VALUE, issued.pdf())))
                .orElseGet(() -> sorry(
                        HttpStatus.NOT_FOUND, texts.of("reports.shared.none"), texts.of("reports.shared.none-words")));
    }

    @GetMapping(path = "/photos/{photo}.jpg")
    ModelAndView photo(
            @PathVariable String token,
            @PathVariable UUID photo,
            HttpServletRequest request,
            HttpServletResponse response) {
        PageHeaders.hide(response);
        ReportLinks.Visit visit = links.visit(token);
        // A report has many of them, and they come with it: only who guesses is counted.
        Optional<ModelAndView> closed =
                visit instanceof ReportLinks.Welcome ? Optional.empty() : closed(visit, token, request, response);
        return closed.orElseGet(() -> new ModelAndView(
                file(MediaType.IMAGE_JPEG_VALUE, photos.jpeg(((ReportLinks.Welcome) visit).jobId(), photo))));
    }

    private static View file(String type, byte[] bytes) {
        return (model, request, response) -> {
            response.setContentType(type);
            response.setHeader("Content-Disposition", "inline");
            response.getOutputStream().write(bytes);
        };
    }

    /** What is seen instead, where the link does not open; it tells nothing about any job. */
    private Optional<ModelAndView> closed(
            ReportLinks.Visit visit, String token, HttpServletRequest request, HttpServletResponse response) {
        boolean unknown = visit instanceof ReportLinks.Unknown;
        Duration wait = turnstile.enter(unknown ? "address " + request.getRemoteAddr() : "report " + token);
        if (!wait.isZero()) {
            response.setHeader("Retry-After", Long.toString(wait.toSeconds()));
            return Optional.of(sorry(
                    HttpStatus.TOO_MANY_REQUESTS,
                    texts.of("customer.wait"),
                    texts.of("customer.wait-words", wait.toSeconds())));
        }
        if (visit instanceof ReportLinks.Ended) {
            return Optional.of(
                    sorry(HttpStatus.GONE, texts.of("customer.link-ended"), texts.of("reports.shared.ended-words")));
        }
        return unknown
                ? Optional.of(sorry(
                        HttpStatus.NOT_FOUND, texts.of("customer.no-page"), texts.of("reports.shared.no-page-words")))
                : Optional.empty();
    }

    private static ModelAndView sorry(HttpStatus status, String title, String words) {
        ModelAndView page = new ModelAndView("driver/ended");
        page.setStatus(status);
        page.addObject("title", title);
        page.addObject("words", words);
        return page;
    }
}
