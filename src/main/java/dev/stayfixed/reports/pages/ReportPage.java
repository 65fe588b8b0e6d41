package dev.stayfixed.reports.pages;

import dev.stayfixed.customer.LinkAddress;
import dev.stayfixed.platform.ForReaders;
import dev.stayfixed.platform.Languages;
import dev.stayfixed.platform.Texts;
import dev.stayfixed.reports.Fingerprint;
import dev.stayfixed.reports.PdfCheck;
import dev.stayfixed.reports.ReportLinks;
import dev.stayfixed.reports.Reports;
import dev.stayfixed.reports.Times;
import dev.stayfixed.web.pages.Form;
import dev.stayfixed.web.pages.FormReader;
import dev.stayfixed.web.pages.Show;
import dev.stayfixed.web.pages.TechnicianPage;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.multipart.MultipartFile;
import org.springframework.web.servlet.support.ServletUriComponentsBuilder;

/** The close-out report as a page, and the page on which a paper is held against what was issued. */
@ForReaders(by = ForReaders.By.LINK)
@Hidden
@TechnicianPage
class ReportPage {

    private final Reports reports;
    private final Texts texts;
    private final FormReader reader;
    private final Languages languages;
    private final ReportLinks links;
    private final LinkAddress address;

    ReportPage(
            Reports reports,
            Texts texts,
            FormReader reader,
            Languages languages,
            ReportLinks links,
            LinkAddress address) {
        this.links = links;
        this.address = address;
        this.reader = reader;
        this.languages = languages;
        this.reports = reports;
        this.texts = texts;
    }

    @GetMapping("/jobs/{id}/report")
    String show(
            @PathVariable UUID id,
            @RequestParam(required = false) @Nullable String link,
            @ModelAttribute("show") Show show,
            Model model) {
        model.addAttribute("jobId", id);
        model.addAttribute("facts", reports.preview(id));
        model.addAttribute("times", new Times(show.zone()));
        model.addAttribute("issued", reports.latest(id).orElse(null));
        model.addAttribute("languages", languages.choices());
        model.addAttribute("linksOut", links.working(id));
        model.addAttribute("photosAt", "/jobs/" + id + "/photos");
        model.addAttribute("shared", link == null ? null : address(link));
        return "report/report-page";
    }

    @PostMapping("/jobs/{id}/report")
    String issue(@PathVariable UUID id, @RequestParam(defaultValue = "") String language) {
        reports.issue(id);
        return "redirect:/jobs/" + id + "/report"
                + languages
                        .named(language)
                        .map(chosen -> "?language=" + chosen.getLanguage())
                        .orElse("") + "#issued";
    }

    private String address(String token) {
        return address.to(
                "/r/" + token,
                ServletUriComponentsBuilder.fromCurrentContextPath().build().toUriString());
    }

    /** The address is shown on the page that follows, where it was made just now. */
    @PostMapping("/jobs/{id}/report/link")
    String share(@PathVariable UUID id) {
        return "redirect:/jobs/" + id + "/report?link=" + links.issue(id).token() + "#share";
    }

    @PostMapping("/jobs/{id}/report/link/end")
    String endLinks(@PathVariable UUID id) {
        links.revoke(id);
        return "redirect:/jobs/" + id + "/report#share";
    }

    @GetMapping("/reports/check")
    String check(
            @RequestParam(required = false) @Nullable String fingerprint,
            @ModelAttribute("show") Show show,
            Model model,
            HttpServletResponse response) {
        Form form = Form.empty().put("fingerprint", fingerprint == null ? "" : fingerprint);
        if (fingerprint != null) {
            reader.madeAt(
                            form,
                            "fingerprint",
                            texts.of("reports.check-page.fingerprint"),
                            () -> new Fingerprint(Fingerprint.bare(fingerprint)))
                    .map(reports::issued)
                    .ifPresent(found -> {
                        model.addAttribute("report", found.orElse(null));
                        model.addAttribute(
                                "answer",
                                found.isPresent()
                                        ? texts.of("reports.check.issued")
                                        : texts.of("reports.check.not-issued"));
                    });
        }
        if (form.isWrong()) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        }
        return checkPage(form, show, model);
    }

    @PostMapping("/reports/check")
    String checkFile(
            @RequestParam(required = false) @Nullable MultipartFile file,
            @ModelAttribute("show") Show show,
            Model model,
            HttpServletResponse response)
            throws IOException {
        Form form = Form.empty();
        if (file == null || file.isEmpty()) {
            form.wrong("file", texts.of("reports.check.file-wanted"));
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            return checkPage(form, show, model);
        }
        if (file.getSize() > Reports.LARGEST_PDF) {
            form.wrong("file", texts.of("reports.check.file-too-large"));
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            return checkPage(form, show, model);
        }
        PdfCheck check = reports.check(file.getBytes());
        model.addAttribute("answer", show.words(check.said()));
        model.addAttribute("report", check.issued().orElse(null));
        return checkPage(form, show, model);
    }

    private static String checkPage(Form form, Show show, Model model) {
        model.addAttribute("form", form);
        model.addAttribute("times", new Times(show.zone()));
        return "report/check-page";
    }
}
