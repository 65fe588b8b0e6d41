package dev.stayfixed.reports.pages;

import dev.stayfixed.customer.DriverLinks;
import dev.stayfixed.customer.DriverPages;
import dev.stayfixed.customer.LinkAddress;
import dev.stayfixed.customer.QrCode;
import dev.stayfixed.customer.Visit;
import dev.stayfixed.jobs.Job;
import dev.stayfixed.jobs.Jobs;
import dev.stayfixed.jobs.Vehicles;
import dev.stayfixed.platform.ForReaders;
import dev.stayfixed.platform.Languages;
import dev.stayfixed.reports.PdfPages;
import dev.stayfixed.reports.Times;
import dev.stayfixed.telling.Notices;
import dev.stayfixed.web.pages.Show;
import dev.stayfixed.web.pages.TechnicianPage;
import io.swagger.v3.oas.annotations.Hidden;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.support.ServletUriComponentsBuilder;

/**
 * The sheet that goes with the car: what to drive, the cautions, and the code of the driver's page. Only a digest of a link is kept, so
 * a sheet shows the code of the link that its own address carries, and a new sheet needs a new link.
 */
@ForReaders(by = ForReaders.By.LINK)
@Hidden
@TechnicianPage
@RequestMapping("/jobs/{id}")
class SheetPage {

    private final Jobs jobs;
    private final Vehicles vehicles;
    private final DriverPages driverPages;
    private final DriverLinks links;
    private final LinkAddress address;
    private final PdfPages pdf;
    private final Notices notices;
    private final Languages languages;

    SheetPage(
            Jobs jobs,
            Vehicles vehicles,
            DriverPages driverPages,
            DriverLinks links,
            LinkAddress address,
            PdfPages pdf,
            Notices notices,
            Languages languages) {
        this.jobs = jobs;
        this.vehicles = vehicles;
        this.driverPages = driverPages;
        this.links = links;
        this.address = address;
        this.pdf = pdf;
        this.notices = notices;
        this.languages = languages;
    }

    @GetMapping("/sheet")
    String show(
            @PathVariable UUID id,
            @RequestParam(required = false) @Nullable String link,
            @RequestParam(defaultValue = "") String language,
            @ModelAttribute("show") Show show,
            Model model) {
        model.addAllAttributes(content(id, link, languages.named(language).map(Locale::getLanguage), show));
        model.addAttribute("languages", languages.choices());
        model.addAttribute("driverLanguage", notices.ofJob(id).driverLanguage().orElse(""));
        return "report/sheet-page";
    }

    /** @param driverLanguage that the driver reads; empty for that of the shop */
    @PostMapping("/sheet")
    String withNewLink(@PathVariable UUID id, @RequestParam(defaultValue = "") String driverLanguage) {
        Optional<String> language = languages.named(driverLanguage).map(Locale::getLanguage);
        notices.driverReads(id, language);
        return "redirect:/jobs/" + id + "/sheet?link=" + links.issue(id).token()
                + language.map(tag -> "&language=" + tag).orElse("");
    }

    @PostMapping("/sheet/renew")
    String renewLinks(@PathVariable UUID id) {
        links.renew(id);
        return "redirect:/jobs/" + id + "?said=links-renewed#handed";
    }

    @PostMapping("/sheet/end")
    String endLinks(@PathVariable UUID id) {
        links.revoke(id);
        return "redirect:/jobs/" + id + "?said=links-ended#handed";
    }

    @GetMapping(path = "/sheet.pdf", produces = MediaType.APPLICATION_PDF_VALUE)
    ResponseEntity<byte[]> print(
            @PathVariable UUID id,
            @RequestParam(required = false) @Nullable String link,
            @RequestParam(defaultValue = "") String language,
            @ModelAttribute("show") Show show) {
        Map<String, Object> content =
                content(id, link, languages.named(language).map(Locale::getLanguage), show);
        byte[] bytes = pdf.render("report/sheet-pdf", content, Map.of(), show.now());
        return ResponseEntity.ok()
                .contentType(MediaType.APPLICATION_PDF)
                .header("Content-Disposition", "inline; filename=\"sheet.pdf\"")
                .body(bytes);
    }

    private Map<String, Object> content(UUID id, @Nullable String token, Optional<String> language, Show show) {
        Job job = jobs.get(id);
        Map<String, Object> content = new HashMap<>();
        content.put("job", job);
        content.put("isOpen", job.state() == Job.State.OPEN);
        content.put("vehicle", vehicles.get(job.vehicleId()).details());
        content.put("view", driverPages.of(id));
        content.put("workshop", show.settings().name());
        content.put("times", new Times(show.zone()));
        content.put("today", show.now());
        content.put("language", language.orElse(null));
        if (token != null
                && links.visit(token) instanceof Visit.Welcome welcome
                && welcome.jobId().equals(id)) {
            String url = address.of(
                            token,
                            ServletUriComponentsBuilder.fromCurrentContextPath()
                                    .build()
                                    .toUriString())
                    + language.map(tag -> "?language=" + tag).orElse("");
            content.put("token", token);
            content.put("url", url);
            content.put("qr", QrCode.of(url));
            content.put("until", welcome.expiresAt());
            content.put("warning", address.warning(url).map(show::words).orElse(""));
        }
        return content;
    }
}
