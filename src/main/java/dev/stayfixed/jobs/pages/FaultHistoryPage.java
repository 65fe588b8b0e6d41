package dev.stayfixed.jobs.pages;

import dev.stayfixed.jobs.FaultHistories;
import dev.stayfixed.jobs.FaultHistory;
import dev.stayfixed.verification.confidence.AllClear;
import dev.stayfixed.verification.confidence.Intermittence;
import dev.stayfixed.web.pages.Form;
import dev.stayfixed.web.pages.Show;
import dev.stayfixed.web.pages.TechnicianPage;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.http.HttpServletResponse;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;
import org.springframework.http.HttpStatus;
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

    private static final int MOST_TRIPS = 10_000;

    private final FaultHistories histories;
    private final JobView view;

    FaultHistoryPage(FaultHistories histories, JobView view) {
        this.histories = histories;
        this.view = view;
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
        Optional<FaultHistory> history = history(faultId, form);
        if (history.isPresent() && !form.isWrong()) {
            histories.state(jobId, faultId, history.get());
            return "redirect:/jobs/" + jobId + "?said=history-stated#sure-" + faultId;
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return view.page(jobId, form, show, model);
    }

    private static Optional<FaultHistory> history(UUID faultId, Form form) {
        Optional<Integer> monitored =
                form.whole("monitored-" + faultId, "Trips in which the monitor ran", 0, MOST_TRIPS);
        Optional<Integer> failed =
                form.whole("failed-" + faultId, "Trips that failed", 0, monitored.orElse(MOST_TRIPS));
        String percent = "confidence-" + faultId;
        OptionalDouble wanted = form.number(percent, "Confidence");
        if (wanted.isPresent() && (wanted.getAsDouble() < 50 || wanted.getAsDouble() > 99.9)) {
            form.wrong(percent, "Confidence: found " + form.value(percent) + ", 50 to 99.9 % is wanted");
        }
        if (failed.isEmpty() || monitored.isEmpty()) {
            form.wrong(
                    (failed.isEmpty() ? "failed-" : "monitored-") + faultId,
                    (failed.isEmpty() ? "Trips that failed" : "Trips in which the monitor ran")
                            + ": give a whole number; 0 of 0 where nobody knows");
            return Optional.empty();
        }
        return form.isWrong()
                ? Optional.empty()
                : Optional.of(
                        new FaultHistory(new Intermittence(failed.get(), monitored.get()), wanted.orElse(95) / 100));
    }

    /** What was stated before, into the fields. */
    static void show(UUID faultId, AllClear allClear, Form form, Show show) {
        boolean isKnown = allClear.before().monitored() > 0;
        form.putIfMissing(
                "failed-" + faultId, isKnown ? String.valueOf(allClear.before().failed()) : "");
        form.putIfMissing(
                "monitored-" + faultId,
                isKnown ? String.valueOf(allClear.before().monitored()) : "");
        form.putIfMissing("confidence-" + faultId, show.number(allClear.wanted() * 100, 1));
    }
}
