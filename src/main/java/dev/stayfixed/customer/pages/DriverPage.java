package dev.stayfixed.customer.pages;

import dev.stayfixed.customer.DriverLinks;
import dev.stayfixed.customer.DriverPages;
import dev.stayfixed.customer.DriverView;
import dev.stayfixed.customer.Visit;
import dev.stayfixed.intake.Received;
import dev.stayfixed.jobs.Shops;
import dev.stayfixed.platform.ForReaders;
import dev.stayfixed.platform.Languages;
import dev.stayfixed.platform.StrictJson;
import dev.stayfixed.platform.Texts;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.reports.Times;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.multipart.MultipartFile;
import org.springframework.web.servlet.ModelAndView;

/** What a driver sees, and the form in which a drive is logged. The token in the address is all the right there is. */
@ForReaders
@Hidden
@Controller
@RequestMapping("/d/{token}")
class DriverPage {

    private static final long LARGEST_RECORD = 2 << 20;

    /** Minutes, rounded: offered only where the length of the drive counts for nothing. */
    private static final List<String> LENGTHS = List.of("20", "40", "60");

    private final DriverDoor door;
    private final DriverLinks links;
    private final DriverPages pages;
    private final RecordedDrives recorded;
    private final StrictJson json;
    private final Shops shops;
    private final Texts texts;
    private final Languages languages;
    private final Clock clock;

    DriverPage(
            DriverDoor door,
            DriverLinks links,
            DriverPages pages,
            RecordedDrives recorded,
            StrictJson json,
            Shops shops,
            Texts texts,
            Languages languages,
            Clock clock) {
        this.door = door;
        this.links = links;
        this.pages = pages;
        this.recorded = recorded;
        this.json = json;
        this.shops = shops;
        this.texts = texts;
        this.languages = languages;
        this.clock = clock;
    }

    @GetMapping
    ModelAndView see(
            @PathVariable String token,
            @RequestParam(required = false) @Nullable String logged,
            @RequestParam(defaultValue = "") String drive,
            HttpServletRequest request,
            HttpServletResponse response) {
        DriverContent.rules(response);
        DriverDoor.Entry entry = door.enter(token, request);
        if (entry instanceof DriverDoor.Opened opened && opened.visit() instanceof Visit.Welcome welcome) {
            links.opened(welcome);
            DriverView view = pages.of(welcome.jobId());
            return page(view, welcome, token, LoggedForm.EMPTY, Map.of(), 200)
                    .addObject("logged", logged)
                    .addObject("answer", view.drive(drive).orElse(null));
        }
        return DriverContent.closed(entry, response, texts);
    }

    @PostMapping(
            path = "/drives",
            consumes = {MediaType.APPLICATION_FORM_URLENCODED_VALUE, MediaType.MULTIPART_FORM_DATA_VALUE})
    ModelAndView log(
            @PathVariable String token,
            @ModelAttribute LoggedForm typed,
            @RequestParam(required = false) @Nullable MultipartFile file,
            HttpServletRequest request,
            HttpServletResponse response)
            throws IOException {
        DriverContent.rules(response);
        DriverDoor.Entry entry = door.enter(token, request);
        if (!(entry instanceof DriverDoor.Opened opened && opened.visit() instanceof Visit.Welcome welcome)) {
            return DriverContent.closed(entry, response, texts);
        }
        if (file != null && !file.isEmpty() && RecordedDrives.isLog(file)) {
            return log(welcome, token, typed, file);
        }
        if (file != null && file.getSize() > LARGEST_RECORD) {
            return page(welcome, token, typed, Map.of("record", texts.of("customer.file.too-long-text")), 413);
        }
        LoggedForm form = file == null || file.isEmpty()
                ? typed
                : typed.withRecord(new String(file.getBytes(), StandardCharsets.UTF_8));
        LoggedForm.Read read = form.read(zone(), clock.instant(), texts);
        if (read.submission() == null) {
            return page(welcome, token, form, read.errors(), 422);
        }
        return taken(welcome, token, form, () -> pages.log(welcome, DriverContent.original(form, read, json)));
    }

    private ModelAndView log(Visit.Welcome welcome, String token, LoggedForm form, MultipartFile file) {
        return taken(welcome, token, form, () -> recorded.take(welcome, form, file));
    }

    private ModelAndView taken(Visit.Welcome welcome, String token, LoggedForm form, Supplier<Received> taking) {
        Received received;
        try {
            received = taking.get();
        } catch (Refused refused) {
            return page(
                    welcome,
                    token,
                    form,
                    PlainRefusal.of(refused, texts),
                    refused.type().status());
        }
        return new ModelAndView("redirect:/d/" + token + "?logged=" + form.ofCard() + "&drive="
                + received.drive().id() + "#" + form.ofCard() + "-answer");
    }

    private ZoneId zone() {
        return shops.settings().zone();
    }

    private ModelAndView page(
            Visit.Welcome welcome, String token, LoggedForm form, Map<String, String> errors, int status) {
        return page(pages.of(welcome.jobId()), welcome, token, form, errors, status);
    }

    private ModelAndView page(
            DriverView view,
            Visit.Welcome welcome,
            String token,
            LoggedForm form,
            Map<String, String> errors,
            int status) {
        ModelAndView page = new ModelAndView("driver/page");
        page.setStatus(HttpStatus.valueOf(status));
        page.addObject("view", view);
        page.addObject("token", token);
        page.addObject("closed", welcome.closed());
        page.addObject("reading", form.ofCard() == LoggedForm.Card.reading ? form : LoggedForm.EMPTY);
        page.addObject("driven", form.ofCard() == LoggedForm.Card.driven ? form : LoggedForm.EMPTY);
        page.addObject("lamp", form.ofCard() == LoggedForm.Card.lamp ? form : LoggedForm.EMPTY);
        page.addObject("lengths", LENGTHS);
        page.addObject(
                "errors",
                errors.entrySet().stream()
                        .collect(Collectors.toMap(
                                error -> form.place(error.getKey()),
                                Map.Entry::getValue,
                                (one, other) -> one,
                                LinkedHashMap::new)));
        page.addObject("times", new Times(zone()));
        page.addObject("until", welcome.expiresAt());
        page.addObject("languages", languages.choices());
        page.addObject("logged", null);
        page.addObject("answer", null);
        return page;
    }
}
