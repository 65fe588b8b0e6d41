package dev.stayfixed.jobs.pages;

import dev.stayfixed.jobs.FaultHistories;
import dev.stayfixed.jobs.FaultHistory;
import dev.stayfixed.judging.entry.ConfidenceEntry;
import dev.stayfixed.verification.confidence.AllClear;
import dev.stayfixed.web.pages.Form;
import dev.stayfixed.web.pages.FormReader;
import dev.stayfixed.web.pages.Show;
import dev.stayfixed.web.pages.TechnicianPage;
import dev.stayfixed.wording.Scale;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.ui.Model;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;

/** Stating how often a fault failed before its repair, on the page of its job. */
@Hidden
@TechnicianPage
class FaultHistoryPage {

    /** Confidence is typed in per cent. */
    private static final Scale PERCENT = new Scale("%", 100, 0);

    private static final List<String> FIELDS = List.of("failed", "monitored", "wantedConfidence");

    private final FaultHistories histories;
    private final JobView view;
    private final FormReader reader;

    FaultHistoryPage(FaultHistories histories, JobView view, FormReader reader) {
        this.histories = histories;
        this.view = view;
        this.reader = reader;
    }

    @PostMapping("/jobs/{jobId}/faults/{faultId}/history")
    String state(
            @PathVariable UUID jobId,
            @PathVariable UUID faultId,
            @RequestParam MultiValueMap<String, String> typed,
            @ModelAttribute("show") Show show,
            Model model,
            HttpServletResponse response) {
        Form form = new Form(typed);
        Optional<FaultHistory> history = history(faultId, form, show);
        return form.answer(
                response,
                () -> {
                    histories.state(jobId, faultId, history.orElseThrow());
                    return "redirect:/jobs/" + jobId + "?said=history-stated#sure-" + faultId;
                },
                refused -> {
                    throw refused;
                },
                () -> view.page(jobId, form, show, model));
    }

    /** The page has such a form for each fault, so their names end with it. */
    private static String field(String name, UUID faultId) {
        return name + "-" + faultId;
    }

    private Optional<FaultHistory> history(UUID faultId, Form form, Show show) {
        Form sent = Form.empty();
        FIELDS.forEach(name -> sent.put(name, form.value(field(name, faultId))));
        Optional<FaultHistory> history = reader.read(
                        sent,
                        ConfidenceEntry.class,
                        show,
                        path -> path.equals("wantedConfidence") ? Optional.of(PERCENT) : Optional.empty())
                .flatMap(entry -> reader.made(sent, ConfidenceEntry.class, entry::history));
        sent.errors().forEach((name, text) -> form.wrong(field(name, faultId), text));
        return history;
    }

    /** What was stated before, into the fields. */
    static void show(UUID faultId, AllClear allClear, Form form, Show show) {
        boolean isKnown = allClear.before().monitored() > 0;
        form.putIfMissing(
                field("failed", faultId),
                isKnown ? String.valueOf(allClear.before().failed()) : "");
        form.putIfMissing(
                field("monitored", faultId),
                isKnown ? String.valueOf(allClear.before().monitored()) : "");
        form.putIfMissing(field("wantedConfidence", faultId), show.number(allClear.wanted() * 100, 1));
    }
}
