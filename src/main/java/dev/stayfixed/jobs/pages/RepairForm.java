package dev.stayfixed.jobs.pages;

import dev.stayfixed.jobs.Job;
import dev.stayfixed.jobs.Repair;
import dev.stayfixed.jobs.entry.RepairEntry;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.verification.bench.BenchCheck;
import dev.stayfixed.verification.bench.BenchPreset;
import dev.stayfixed.web.pages.Form;
import dev.stayfixed.web.pages.FormReader;
import dev.stayfixed.web.pages.Show;
import dev.stayfixed.web.pages.TickedScan;
import jakarta.servlet.http.HttpServletResponse;
import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import org.springframework.stereotype.Component;
import org.springframework.ui.Model;

/** The form of a repair, whether it is recorded or put right. */
@Component
class RepairForm {

    /** The fields of the scans, and the prefixes of what is ticked below them. */
    private static final Map<String, String> SCANS = Map.of("scanBefore", "before", "scanAfter", "after");

    /** What a button for the rows of a kind of fault sends in front of its name. */
    private static final String PRESET = "preset:";

    private static final int LONGEST_QUOTE = 40;

    private final FormReader reader;

    RepairForm(FormReader reader) {
        this.reader = reader;
    }

    /** What was typed, with what was ticked below the scans. */
    Optional<RepairEntry> read(Form form, Job job, Show show) {
        Form sent = MeasurementRows.withWords(form);
        SCANS.forEach((scan, prefix) -> ticks(prefix, job)
                .below(Optional.of(form.value(scan).strip()), form, reader)
                .ifPresent(text -> sent.put(scan, text)));
        Optional<RepairEntry> entry = reader.read(sent, RepairEntry.class, show);
        sent.errors().forEach(form::wrong);
        return entry;
    }

    Optional<Repair.Details> details(Form form, RepairEntry entry, Show show) {
        return reader.made(form, RepairEntry.class, () -> entry.details(show.now()));
    }

    void refuse(Form form, Refused refused) {
        reader.refuse(form, RepairEntry.class, refused);
    }

    /** The interface takes no fault for all of them; on a page somebody may just have taken out every tick. */
    void refuseWithoutFault(Form form) {
        if (form.isBlank("faultIds")) {
            reader.wrong(form, "faultIds", "jobs.entry.repair.faultIds.none");
        }
    }

    /** What was recorded had a time. */
    void refuseWithoutTime(Form form) {
        if (form.isBlank("performedAt")) {
            reader.wrong(form, "performedAt", "jobs.entry.repair.performedAt.none");
        }
    }

    /** What a button of the measurements asks for: one more row, or those for a kind of fault. */
    void arrange(Form form, Show show, HttpServletResponse response) {
        String asked = form.value("do");
        Optional<BenchPreset> preset = Arrays.stream(BenchPreset.values())
                .filter(kind -> asked.equals(PRESET + kind.name()))
                .findFirst();
        if (preset.isPresent()) {
            MeasurementRows.fill(form, preset.get(), show::words);
        } else if (asked.equals("row")) {
            MeasurementRows.addRow(form);
        } else {
            String found = asked.substring(0, Math.min(asked.length(), LONGEST_QUOTE));
            reader.wrong(form, "form", "jobs.repair-new.no-such-rows", found);
            form.notTaken(response);
        }
    }

    void show(Form form, Job job, Show show, Model model) {
        model.addAttribute("form", form);
        model.addAttribute("ticksBefore", ticks("before", job));
        model.addAttribute("ticksAfter", ticks("after", job));
        model.addAttribute("checks", BenchCheck.values());
        model.addAttribute("presets", BenchPreset.values());
        model.addAttribute("rows", MeasurementRows.numbers(form));
        model.addAttribute("typical", MeasurementRows.typical(form, show::words));
    }

    private static TickedScan ticks(String prefix, Job job) {
        return TickedScan.of(prefix, job.faults());
    }
}
