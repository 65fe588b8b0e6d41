package dev.stayfixed.intake.pages;

import dev.stayfixed.archive.LogMappingForm;
import dev.stayfixed.archive.UploadedLog;
import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.intake.LogMappings;
import dev.stayfixed.intake.LogProposal;
import dev.stayfixed.intake.SavedMapping;
import dev.stayfixed.intake.entry.LogMappingEntry;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.recording.DecimalMark;
import dev.stayfixed.recording.SourceUnit;
import dev.stayfixed.recording.TimeFormat;
import dev.stayfixed.web.pages.Form;
import dev.stayfixed.web.pages.FormReader;
import dev.stayfixed.web.pages.Show;
import dev.stayfixed.wording.Wording;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.core.io.FileSystemResource;
import org.springframework.stereotype.Component;
import org.springframework.ui.Model;
import org.springframework.web.multipart.MultipartFile;

/** A recorded log in the form of a drive: it is held, shown as it would be read, and its columns are confirmed once. */
@Component
class LogStep {

    private static final String HELD = "held";

    /** The field with the mapping that was confirmed for the held log. */
    static final String MAPPING = "mappingId";

    private final HeldLogs held;
    private final LogMappings mappings;
    private final FormReader reader;

    LogStep(HeldLogs held, LogMappings mappings, FormReader reader) {
        this.reader = reader;
        this.held = held;
        this.mappings = mappings;
    }

    static boolean isHeld(Form form) {
        return !form.isBlank(HELD);
    }

    void hold(Form form, MultipartFile file) throws IOException {
        held.forget(form.value(HELD));
        form.put(HELD, held.hold(file));
        form.put(MAPPING, "");
        String name = String.valueOf(file.getOriginalFilename());
        form.put("heldName", name.length() > 100 ? name.substring(0, 100) : name);
    }

    void forget(Form form) {
        held.forget(form.value(HELD));
    }

    /** Empty, with a word to the person, where it is no longer held. */
    Optional<UploadedLog> log(Form form) {
        Optional<UploadedLog> log =
                held.find(form.value(HELD)).map(file -> new UploadedLog(new FileSystemResource(file)));
        if (log.isEmpty()) {
            form.put(HELD, "");
            reader.wrong(form, "file", "intake.file.gone");
        }
        return log;
    }

    /** What differs by the head of the log, and what the whole of it showed beside that, as the refusal said it. */
    private static List<Part> against(List<Reason> known, List<String> doubts) {
        List<String> said = known.stream().map(Wording.METRIC::words).toList();
        return Stream.concat(
                        known.stream(),
                        doubts.stream().filter(doubt -> !said.contains(doubt)).map(Part::verbatim))
                .toList();
    }

    /** A column, what seems to be in it, and what was confirmed before. */
    record Column(int number, LogProposal.Column proposed, Optional<LogMappingForm.Column> saved) {

        static Column of(int number, LogProposal.Column proposed, Optional<SavedMapping> saved) {
            return new Column(
                    number,
                    proposed,
                    saved.stream()
                            .flatMap(m -> m.mapping().columns().stream())
                            .filter(c -> c.header().equals(proposed.header()))
                            .findFirst());
        }

        public @Nullable Signal savedSignal() {
            return saved.map(LogMappingForm.Column::signal).orElse(null);
        }

        public String savedUnit() {
            return saved.map(c -> c.unit().spelling()).orElse("");
        }

        String savedSignalName() {
            return saved.map(c -> c.signal().name()).orElse("");
        }

        String savedUnitName() {
            return saved.map(c -> c.unit().name()).orElse("");
        }
    }

    /** The mapping that was confirmed for this very log; null where there is none. */
    static @Nullable UUID confirmed(Form form) {
        try {
            return form.isBlank(MAPPING) ? null : UUID.fromString(form.value(MAPPING));
        } catch (IllegalArgumentException notAnId) {
            return null;
        }
    }

    /**
     * Puts what would be made of the log into the model; false where it cannot be read at all, which the form says then.
     *
     * @param doubts what was found against it when the whole log was read
     */
    boolean show(UploadedLog log, UUID vehicleId, List<String> doubts, Form form, Model model) {
        try {
            LogProposal proposal = mappings.propose(log);
            Optional<LogMappings.Known> known = mappings.known(log, vehicleId);
            Optional<SavedMapping> saved = known.map(LogMappings.Known::saved);
            List<Part> against = against(known.map(LogMappings.Known::doubts).orElse(List.of()), doubts);
            List<Column> columns = new ArrayList<>();
            for (int i = 0; i < proposal.columns().size(); i++) {
                LogProposal.Column column = proposal.columns().get(i);
                Column shown = Column.of(i, column, saved);
                columns.add(shown);
                form.putIfMissing(
                        "signal" + i,
                        column.signal() == null
                                ? shown.savedSignalName()
                                : column.signal().name());
                form.putIfMissing(
                        "unit" + i,
                        column.unit() == null
                                ? shown.savedUnitName()
                                : column.unit().name());
            }
            form.putIfMissing("mapping.timeColumn", proposal.mapping().timeColumn());
            form.putIfMissing(
                    "mapping.dateColumn",
                    Objects.requireNonNullElse(proposal.mapping().dateColumn(), ""));
            form.putIfMissing(
                    "mapping.timeFormat", proposal.mapping().timeFormat().name());
            form.putIfMissing(
                    "mapping.decimalMark", proposal.mapping().decimalMark().name());
            model.addAttribute("proposal", proposal);
            model.addAttribute("columns", columns);
            model.addAttribute("saved", saved.orElse(null));
            model.addAttribute("doubts", against);
            model.addAttribute("ask", saved.isEmpty() || !against.isEmpty());
            model.addAttribute("signals", Signal.values());
            model.addAttribute("units", SourceUnit.values());
            model.addAttribute("timeFormats", TimeFormat.values());
            model.addAttribute("decimalMarks", DecimalMark.values());
            return true;
        } catch (Refused refused) {
            form.note(refused);
            reader.wrong(form, "file", "intake.file.refused", String.valueOf(refused.getMessage()));
            return false;
        }
    }

    /** Keeps what the person confirmed, and names it in the form: this log is read by it whatever its values say. */
    void confirm(UploadedLog log, UUID vehicleId, Form form, Show show) {
        LogProposal proposal = mappings.propose(log);
        List<LogMappingForm.Column> columns = new ArrayList<>();
        for (int i = 0; i < proposal.columns().size(); i++) {
            LogProposal.Column column = proposal.columns().get(i);
            Optional<Signal> signal = chosen(Signal.values(), form.value("signal" + i));
            Optional<SourceUnit> unit = chosen(SourceUnit.values(), form.value("unit" + i));
            if (signal.isPresent() && unit.isEmpty()) {
                reader.wrong(
                        form,
                        "unit" + i,
                        "intake.drive-log.unit-missing",
                        column.header(),
                        signal.get().words());
            } else if (signal.isPresent()
                    && !column.header().equals(form.value("mapping.timeColumn"))
                    && !column.header().equals(form.value("mapping.dateColumn"))) {
                columns.add(new LogMappingForm.Column(column.header(), signal.get(), unit.get()));
            }
        }
        if (columns.isEmpty()) {
            reader.wrong(form, "signal0", "intake.drive-log.no-column");
        }
        if (!form.isWrong()) {
            save(proposal, vehicleId, columns, form, show);
        }
    }

    private void save(LogProposal proposal, UUID vehicleId, List<LogMappingForm.Column> columns, Form form, Show show) {
        Form sent = new Form(form.all());
        sent.putIfBlank("name", reader.text("intake.drive-log.log-such-as", form.value("heldName")));
        Optional<LogMappingEntry> entry = reader.read(sent, LogMappingEntry.class, show, "headers", "mapping.columns");
        sent.errors().forEach(form::wrong);
        if (entry.isEmpty()) {
            return;
        }
        LogMappingForm typed = entry.get().mapping();
        try {
            SavedMapping saved = mappings.confirm(
                    vehicleId,
                    entry.get().name(),
                    proposal.headers(),
                    new LogMappingForm(
                            typed.timeColumn(),
                            typed.timeFormat(),
                            typed.decimalMark(),
                            columns,
                            typed.dateColumn(),
                            proposal.mapping().separator(),
                            vehicleId));
            form.put(MAPPING, saved.id().toString());
        } catch (Refused refused) {
            reader.refuse(form, LogMappingEntry.class, refused);
        }
    }

    private static <E extends Enum<E>> Optional<E> chosen(E[] values, String name) {
        return Stream.of(values).filter(v -> v.name().equals(name)).findFirst();
    }
}
