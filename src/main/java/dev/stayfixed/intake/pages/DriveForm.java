package dev.stayfixed.intake.pages;

import dev.stayfixed.archive.DriveSubmission;
import dev.stayfixed.drive.DriveQuantity;
import dev.stayfixed.drive.DriveRecord;
import dev.stayfixed.web.pages.Form;
import dev.stayfixed.web.pages.FormReader;
import dev.stayfixed.web.pages.Show;
import dev.stayfixed.web.pages.TickedScan;
import java.time.Instant;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** From the fields of the form, in the shop's units and zone, to a drive as it is sent in. */
final class DriveForm {

    private final Form form;
    private final Show show;
    private final FormReader reader;
    private final TickedScan ticks;

    DriveForm(Form form, FormReader reader, Show show, TickedScan ticks) {
        this.reader = reader;
        this.form = form;
        this.show = show;
        this.ticks = ticks;
    }

    /** The field of a quantity: START_COOLANT is "startCoolant". */
    static String field(DriveQuantity quantity) {
        String[] words = quantity.name().toLowerCase(Locale.ROOT).split("_", -1);
        StringBuilder field = new StringBuilder(words[0]);
        for (int i = 1; i < words.length; i++) {
            field.append(Character.toUpperCase(words[i].charAt(0))).append(words[i].substring(1));
        }
        return field.toString();
    }

    /** A field for a quantity, with the unit in which the shop types it. */
    record Input(String field, String label, String unit) {}

    static List<Input> inputs(Show show) {
        return Stream.of(DriveQuantity.values())
                .map(q -> new Input(field(q), Show.capital(q.words()), show.unit(q)))
                .toList();
    }

    /** Notes in the form what cannot be read. */
    DriveSubmission submission() {
        Optional<Instant> start = form.past("start", "Engine start", show.zone(), show.now());
        Optional<Instant> end = form.past("end", "Engine off", show.zone(), show.now());
        if (start.isPresent() && end.isPresent() && end.get().isBefore(start.get())) {
            form.wrong("end", "Engine off: found a time before the engine start; a later one is wanted");
        }
        DriveSubmission.Summary summary = summary();
        boolean isRecorded = LogStep.isHeld(form);
        if (!isRecorded && start.isEmpty() && form.isBlank("scan") && summary != null && summary.runTime() == null) {
            form.wrong("start", "Engine start: give the time; only a scan, or a run time, can do without it");
        }
        Optional<String> scan = ticks.below(form.text("scan", "Scan", 1_000_000), form, reader);
        DriveRecord.Moment moment = form.has("moment", "BEFORE") ? DriveRecord.Moment.BEFORE : DriveRecord.Moment.AFTER;
        return new DriveSubmission(
                start.orElse(null),
                end.orElse(null),
                null,
                summary,
                form.has("cleared", "yes") ? true : null,
                scan.map(text -> List.of(new DriveSubmission.PastedScan(moment, text)))
                        .orElse(null),
                form.has("sameVehicle", "yes") ? true : null,
                isRecorded ? LogStep.confirmed(form) : null,
                isRecorded ? show.zone().getId() : null,
                isRecorded ? form.text("date", "Date of the log", 20).orElse(null) : null);
    }

    private DriveSubmission.@Nullable Summary summary() {
        Map<DriveQuantity, Double> values = new EnumMap<>(DriveQuantity.class);
        for (DriveQuantity quantity : DriveQuantity.values()) {
            value(quantity).ifPresent(value -> values.put(quantity, value));
        }
        Boolean mil = form.has("mil", "on") ? Boolean.TRUE : form.has("mil", "off") ? Boolean.FALSE : null;
        if (values.isEmpty() && mil == null) {
            return null;
        }
        return new DriveSubmission.Summary(
                values.get(DriveQuantity.START_COOLANT),
                values.get(DriveQuantity.PEAK_COOLANT),
                values.get(DriveQuantity.RUN_TIME),
                values.get(DriveQuantity.FAST_TIME),
                values.get(DriveQuantity.LONGEST_IDLE),
                values.get(DriveQuantity.AMBIENT),
                values.get(DriveQuantity.BAROMETER),
                values.get(DriveQuantity.FUEL_LEVEL),
                values.get(DriveQuantity.SOAK),
                values.get(DriveQuantity.DISTANCE),
                mil,
                null);
    }

    private Optional<Double> value(DriveQuantity quantity) {
        String label = Show.capital(quantity.words());
        OptionalDouble typed = form.number(field(quantity), label);
        if (typed.isEmpty()) {
            return Optional.empty();
        }
        double kept = show.scale(quantity).kept(typed.getAsDouble());
        if (!quantity.isPlausible(kept)) {
            form.wrong(
                    field(quantity),
                    "%s: found %s %s, %s to %s is wanted"
                            .formatted(
                                    label,
                                    form.value(field(quantity)).strip(),
                                    show.unit(quantity),
                                    show.quantity(quantity, quantity.lowest()),
                                    show.quantity(quantity, quantity.highest())));
        }
        return Optional.of(kept);
    }
}
