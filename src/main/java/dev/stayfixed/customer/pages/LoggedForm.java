package dev.stayfixed.customer.pages;

import dev.stayfixed.archive.DriveSubmission;
import dev.stayfixed.archive.DriveSubmission.PastedScan;
import dev.stayfixed.archive.DriveSubmission.Summary;
import dev.stayfixed.drive.DriveQuantity;
import dev.stayfixed.platform.Texts;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * What a driver typed, kept as typed: from the form, or from the phone's queue with the same names. Everything may be missing.
 *
 * @param card which form of the page it was, one of {@link Card}
 * @param start local date and time of the engine start
 * @param end local date and time of switching off; now, where a drive without a reading names neither this nor its start
 * @param zone time zone of the phone; the shop's, where the form was sent without script
 * @param minutes engine running; "other" where they stand in the next field
 * @param otherMinutes engine running, where none of the choices fits
 * @param parkedHours before the start
 * @param fastMinutes at 40 km/h (25 mph) or more
 * @param idleMinutes the longest, unbroken
 * @param lamp "on" or "off"
 * @param record text of a reader, or of a file
 * @param savedAt when the phone kept it, where it could not be sent at once
 */
record LoggedForm(
        @Nullable String card,
        @Nullable String start,
        @Nullable String end,
        @Nullable String zone,
        @Nullable String minutes,
        @Nullable String otherMinutes,
        @Nullable String parkedHours,
        @Nullable String fastMinutes,
        @Nullable String idleMinutes,
        @Nullable String lamp,
        @Nullable String record,
        @Nullable String savedAt) {

    static final LoggedForm EMPTY =
            new LoggedForm(null, null, null, null, null, null, null, null, null, null, null, null);

    /** The same form with the text of a file in place of the pasted text. */
    LoggedForm withRecord(String text) {
        return new LoggedForm(
                card,
                start,
                end,
                zone,
                minutes,
                otherMinutes,
                parkedHours,
                fastMinutes,
                idleMinutes,
                lamp,
                text,
                savedAt);
    }

    /** The forms of the page, as they call themselves there. */
    enum Card {
        /** Of the car, by a reader or a recording. */
        reading,
        /** Without a reader: how long, and what the lamp did. */
        driven,
        /** That the lamp came on, after the job was closed. */
        lamp
    }

    Card ofCard() {
        return Arrays.stream(Card.values())
                .filter(one -> one.name().equals(card))
                .findFirst()
                .orElse(Card.reading);
    }

    private boolean isReading() {
        return ofCard() == Card.reading;
    }

    /** The place on the page at which a mistake in a field is said. */
    String place(String field) {
        if (isReading()) {
            return "reading-" + field;
        }
        return switch (field) {
            case "start" -> ofCard() + "-end";
            case "record", "file" -> ofCard().name();
            default -> ofCard() + "-" + field;
        };
    }

    /** A drive as the intake takes it, or what is wrong, by field. */
    record Read(@Nullable DriveSubmission submission, Map<String, String> errors) {}

    Read read(ZoneId shopZone, Instant now, Texts texts) {
        Map<String, String> errors = new LinkedHashMap<>();
        Optional<Instant> typedStart = time("start", start, shopZone, now, errors, texts);
        Optional<Instant> typedEnd = time("end", end, shopZone, now, errors, texts);
        boolean other = blank(minutes) || "other".equals(minutes);
        String minutesField = other && !blank(otherMinutes) ? "otherMinutes" : "minutes";
        Double run = number(
                minutesField,
                other ? otherMinutes : minutes,
                texts.of("customer.label.minutes"),
                DriveQuantity.RUN_TIME,
                60,
                errors,
                texts);
        Double soak = number(
                "parkedHours",
                parkedHours,
                texts.of("customer.label.parked-hours"),
                DriveQuantity.SOAK,
                1,
                errors,
                texts);
        Double fast = number(
                "fastMinutes",
                fastMinutes,
                texts.of("customer.label.fast-minutes"),
                DriveQuantity.FAST_TIME,
                60,
                errors,
                texts);
        Double idle = number(
                "idleMinutes",
                idleMinutes,
                texts.of("customer.label.idle-minutes"),
                DriveQuantity.LONGEST_IDLE,
                60,
                errors,
                texts);
        notLonger("fastMinutes", texts.of("customer.label.fast-minutes"), fast, run, errors, texts);
        notLonger("idleMinutes", texts.of("customer.label.idle-minutes"), idle, run, errors, texts);
        Boolean mil = "on".equals(lamp) ? Boolean.TRUE : "off".equals(lamp) ? Boolean.FALSE : null;
        boolean recorded = !blank(record);
        if (isReading() && !recorded && typedStart.isEmpty() && errors.isEmpty()) {
            errors.put("record", texts.of("customer.record.wanted"));
        } else if (run == null && !errors.containsKey(minutesField) && !recorded && ofCard() != Card.lamp) {
            errors.put(minutesField, texts.of("customer.minutes.wanted"));
        }
        if (!errors.isEmpty()) {
            return new Read(null, errors);
        }
        Optional<Instant> ended =
                typedEnd.or(() -> !isReading() && typedStart.isEmpty() ? justNow(now) : Optional.empty());
        Optional<Instant> started = typedStart.or(() -> ended.filter(at -> run != null || ofCard() == Card.lamp)
                .map(at -> at.minusSeconds(run == null ? 0 : Math.round(run))));
        boolean asked = run != null || soak != null || fast != null || idle != null || mil != null;
        Summary summary =
                asked ? new Summary(null, null, run, fast, idle, null, null, null, soak, null, mil, null) : null;
        List<PastedScan> scans = recorded ? List.of(new PastedScan(null, String.valueOf(record))) : null;
        return new Read(
                DriveSubmission.said(
                        started.orElse(null), ended.orElse(null), taken(started, recorded, now), summary, null, scans),
                errors);
    }

    /**
     * What the driver knows beside a recorded log, which tells the rest by itself.
     *
     * @param withStart also the time of the start, for a log that has no clock of its own
     */
    Read besideLog(ZoneId shopZone, Instant now, boolean withStart, Texts texts) {
        Map<String, String> errors = new LinkedHashMap<>();
        Optional<Instant> started = withStart ? time("start", start, shopZone, now, errors, texts) : Optional.empty();
        Double soak = number(
                "parkedHours",
                parkedHours,
                texts.of("customer.label.parked-hours"),
                DriveQuantity.SOAK,
                1,
                errors,
                texts);
        Boolean mil = "on".equals(lamp) ? Boolean.TRUE : "off".equals(lamp) ? Boolean.FALSE : null;
        if (!errors.isEmpty()) {
            return new Read(null, errors);
        }
        Summary summary = soak == null && mil == null
                ? null
                : new Summary(null, null, null, null, null, null, null, null, soak, null, mil, null);
        List<PastedScan> scans = blank(record) ? null : List.of(new PastedScan(null, String.valueOf(record)));
        return new Read(
                new DriveSubmission(
                        started.orElse(null),
                        null,
                        null,
                        summary,
                        null,
                        scans,
                        null,
                        null,
                        zoneOr(shopZone).getId(),
                        null),
                errors);
    }

    /** A reader's text without a start is placed by the time at which the phone kept it. */
    private @Nullable Instant taken(Optional<Instant> started, boolean recorded, Instant now) {
        return started.isPresent() || !recorded ? null : kept(now).orElse(null);
    }

    /** When the button was pressed: by the phone's clock, where it kept the drive, unless that is ahead of ours. */
    private Optional<Instant> justNow(Instant now) {
        return Optional.of(kept(now).orElse(now));
    }

    private Optional<Instant> kept(Instant now) {
        if (blank(savedAt)) {
            return Optional.empty();
        }
        try {
            return Optional.of(Instant.parse(String.valueOf(savedAt))).filter(saved -> !saved.isAfter(now));
        } catch (DateTimeException e) {
            return Optional.empty();
        }
    }

    private Optional<Instant> time(
            String field,
            @Nullable String typed,
            ZoneId shopZone,
            Instant now,
            Map<String, String> errors,
            Texts texts) {
        if (blank(typed)) {
            return Optional.empty();
        }
        try {
            Instant at = LocalDateTime.parse(String.valueOf(typed).strip())
                    .atZone(zoneOr(shopZone))
                    .toInstant();
            if (at.isAfter(now.plusSeconds(300))) {
                errors.put(field, texts.of("customer.start.to-come"));
                return Optional.empty();
            }
            if (at.isBefore(now.minusSeconds(366L * 86_400))) {
                errors.put(field, texts.of("customer.start.long-ago"));
                return Optional.empty();
            }
            return Optional.of(at);
        } catch (DateTimeException e) {
            errors.put(field, texts.of("customer.start.form"));
            return Optional.empty();
        }
    }

    private ZoneId zoneOr(ZoneId shopZone) {
        try {
            return blank(zone) ? shopZone : ZoneId.of(String.valueOf(zone));
        } catch (DateTimeException e) {
            return shopZone;
        }
    }

    /**
     * A number in the limits of what it is of.
     *
     * @param unit in which it is typed, of its own: 60 for minutes of what is kept in seconds
     */
    private static @Nullable Double number(
            String field,
            @Nullable String typed,
            String label,
            DriveQuantity quantity,
            double unit,
            Map<String, String> errors,
            Texts texts) {
        if (blank(typed)) {
            return null;
        }
        String text = String.valueOf(typed).strip().replace(',', '.');
        double most = quantity.highest() / unit;
        if (!text.matches("\\d{1,5}(\\.\\d{0,3})?") || Double.parseDouble(text) > most) {
            errors.put(field, texts.of("customer.number", label, Math.round(most)));
            return null;
        }
        return Double.parseDouble(text) * unit;
    }

    private static void notLonger(
            String field,
            String label,
            @Nullable Double part,
            @Nullable Double whole,
            Map<String, String> errors,
            Texts texts) {
        if (part != null && whole != null && part > whole) {
            errors.put(field, texts.of("customer.longer", label));
        }
    }

    private static boolean blank(@Nullable String text) {
        return text == null || text.isBlank();
    }
}
