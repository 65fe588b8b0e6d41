package dev.stayfixed.intake.pages;

import dev.stayfixed.archive.DriveSubmission;
import dev.stayfixed.drive.DriveQuantity;
import dev.stayfixed.platform.Texts;
import dev.stayfixed.web.pages.Form;
import dev.stayfixed.web.pages.FormReader;
import dev.stayfixed.web.pages.Show;
import dev.stayfixed.web.pages.TickedScan;
import dev.stayfixed.wording.Scale;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.springframework.stereotype.Component;

/** The form of a drive: the fields of a submission, with numbers in the shop's units and times in its zone. */
@Component
class DriveForm {

    static final String SCAN = "scans[0].text";
    static final String MOMENT = "scans[0].moment";

    private static final Map<String, DriveQuantity> QUANTITIES =
            Stream.of(DriveQuantity.values()).collect(Collectors.toMap(DriveForm::field, quantity -> quantity));

    private final FormReader reader;
    private final Texts texts;

    DriveForm(FormReader reader, Texts texts) {
        this.reader = reader;
        this.texts = texts;
    }

    /** The field of a quantity: START_COOLANT is "summary.startCoolant". */
    static String field(DriveQuantity quantity) {
        String[] words = quantity.name().toLowerCase(Locale.ROOT).split("_", -1);
        return "summary." + words[0]
                + Stream.of(words).skip(1).map(Show::capital).collect(Collectors.joining());
    }

    /** A field for a quantity, with the unit in which the shop types it. */
    record Input(String field, String label, String unit) {}

    List<Input> inputs(Show show) {
        return Stream.of(DriveQuantity.values())
                .map(q -> new Input(field(q), reader.label(DriveSubmission.class, field(q)), show.unit(q)))
                .toList();
    }

    /** What was typed, and ticked below the scan; where something is wrong, the form says it. */
    Optional<DriveSubmission> read(Form form, TickedScan ticks, Show show) {
        boolean isRecorded = LogStep.isHeld(form);
        Form sent = new Form(form.all());
        Optional<String> scan = ticks.below(Optional.of(form.value(SCAN).strip()), form, reader);
        sent.put(SCAN, scan.orElse(""));
        if (scan.isEmpty()) {
            sent.put(MOMENT, "");
        }
        sent.put("zone", isRecorded ? show.zone().getId() : "");
        if (!isRecorded) {
            sent.put("date", "").put(LogStep.MAPPING, "");
        }
        Function<String, Optional<Scale>> scales =
                path -> Optional.ofNullable(QUANTITIES.get(path)).map(show::scale);
        Optional<DriveSubmission> submission = reader.read(sent, DriveSubmission.class, show, scales);
        sent.errors().forEach(form::wrong);
        submission.ifPresent(said -> check(said, form, show));
        return submission.filter(said -> !form.isWrong());
    }

    /** What the archive says of a submission as a whole is told at the field here, in the shop's units. */
    private void check(DriveSubmission said, Form form, Show show) {
        Instant start = said.start();
        Instant end = said.end();
        if (start != null && end != null && end.isBefore(start)) {
            reader.wrongAt(form, DriveSubmission.class, "end", texts.of("intake.drive-new.later-than-start"));
        }
        QUANTITIES.forEach((field, quantity) -> said.value(quantity)
                .filter(value -> !quantity.isPlausible(value))
                .ifPresent(value -> reader.wrongAt(
                        form,
                        DriveSubmission.class,
                        field,
                        texts.of(
                                "intake.drive-new.from-to",
                                show.quantity(quantity, quantity.lowest()),
                                show.quantity(quantity, quantity.highest())))));
        if (said.summary() == null && said.scans() == null && !LogStep.isHeld(form)) {
            reader.wrong(form, SCAN, "intake.drive-new.nothing-given");
        }
    }
}
