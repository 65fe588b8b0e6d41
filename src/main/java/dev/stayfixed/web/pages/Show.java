package dev.stayfixed.web.pages;

import dev.stayfixed.drive.DriveQuantity;
import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.jobs.Measurement;
import dev.stayfixed.jobs.Repair;
import dev.stayfixed.jobs.ShopSettings;
import dev.stayfixed.reason.Part;
import dev.stayfixed.wording.Scale;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.springframework.context.i18n.LocaleContextHolder;

/** How values are written on the pages of a shop: times in its zone, quantities in its units. Public for the templates. */
public final class Show {

    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("d MMM uuuu, HH:mm");
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM uuuu");
    private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
    private static final DateTimeFormatter FIELD = DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm", Locale.ROOT);

    private final ShopSettings settings;
    private final Instant now;

    public Show(ShopSettings settings, Instant now) {
        this.settings = settings;
        this.now = now;
    }

    public ShopSettings settings() {
        return settings;
    }

    public ZoneId zone() {
        return settings.zone();
    }

    public Instant now() {
        return now;
    }

    public String time(Instant at) {
        return TIME.withLocale(LocaleContextHolder.getLocale()).format(local(at));
    }

    public String day(Instant at) {
        return DAY.withLocale(LocaleContextHolder.getLocale()).format(local(at));
    }

    public String clock(Instant at) {
        return CLOCK.format(local(at));
    }

    /** As a date-and-time field wants it. */
    public String field(Instant at) {
        return FIELD.format(local(at));
    }

    private LocalDateTime local(Instant at) {
        return LocalDateTime.ofInstant(at, settings.zone());
    }

    /** How long ago, roughly. */
    public String ago(Instant at) {
        Duration since = Duration.between(at, now);
        if (since.toMinutes() < 1) {
            return "just now";
        }
        if (since.toHours() < 1) {
            return plural(since.toMinutes(), "minute") + " ago";
        }
        return since.toDays() < 1 ? plural(since.toHours(), "hour") + " ago" : plural(since.toDays(), "day") + " ago";
    }

    public String plural(long count, String noun) {
        return count + " " + noun + (count == 1 ? "" : "s");
    }

    /** The last eight characters, by which people tell vehicles apart. */
    public String vinEnd(String vin) {
        return "…" + vin.substring(Math.max(0, vin.length() - 8));
    }

    public Scale scale(DriveQuantity quantity) {
        return switch (quantity) {
            case RUN_TIME, FAST_TIME -> new Scale("min", 1 / 60.0, 0);
            default -> settings.units().scale(quantity.unit());
        };
    }

    public Scale scale(Signal signal) {
        return settings.units().scale(signal.unit());
    }

    public static String capital(String words) {
        return Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }

    public String unit(DriveQuantity quantity) {
        return scale(quantity).unit();
    }

    public String quantity(DriveQuantity quantity, double value) {
        return number(scale(quantity).shown(value), 1) + " " + scale(quantity).unit();
    }

    /** What the rules say, in words and in the shop's units. */
    public String words(Part said) {
        return settings.units().words(said);
    }

    public String presence(Optional<Boolean> present, String yes, String no) {
        return present.map(p -> p ? yes : no).orElse("not known");
    }

    /** What was done, after a form was sent; "" for a word that no page of ours uses. */
    public static String said(String word) {
        return switch (word) {
            case "job-opened" -> "The job is open. Record the repair next; drives count from then on.";
            case "repair-mended" ->
                "The record of the repair is put right, and everything is judged again. What stood there before is kept.";
            case "repair-recorded" -> "The repair is recorded. Drives that start after it are judged for it.";
            case "job-closed" -> "The job is closed.";
            case "job-reopened" -> "The job is open again.";
            case "drive-added" -> "The drive is stored and judged.";
            case "drive-left-out" -> "The drive is left out of the count, and all faults are judged again without it.";
            case "drive-taken-in" -> "The drive counts again, and all faults are judged again with it.";
            case "conditions-saved" -> "It is noted what the monitor needs. Recorded drives are held against it.";
            case "drive-known" -> "This very drive was recorded before; nothing has changed.";
            case "history-stated" -> "It is noted how often the fault failed before its repair.";
            case "all-read" -> "All messages are marked as read.";
            case "promised" -> "The promise is noted.";
            case "promise-kept" -> "The promise is marked as kept.";
            case "calendar-ended" -> "The calendar’s link no longer works.";
            case "webhook-stopped" -> "The endpoint is stopped; nothing more is sent to it.";
            case "webhook-started" -> "The endpoint is started; new events are sent to it.";
            case "webhook-deleted" -> "The endpoint and its log are deleted.";
            case "webhook-test" -> "A test event is on its way. Reload this page to see the answer.";
            case "webhook-resent" -> "It is sent once more, under the same id. Reload this page to see the answer.";
            case "settings-saved" -> "The settings are saved.";
            default -> "";
        };
    }

    /** What stands or stood in a field of a repair. */
    public String kept(Repair.Field field, String text) {
        if (text.isEmpty()) {
            return "nothing";
        }
        return field == Repair.Field.PERFORMED_AT ? time(Instant.parse(text)) : text;
    }

    public String number(double value, int places) {
        String text = String.format(Locale.ROOT, "%." + places + "f", value);
        return text.contains(".") ? text.replaceFirst("\\.?0+$", "") : text;
    }

    public String plain(double value) {
        return number(value, 4);
    }

    public String reading(Optional<Measurement.Reading> reading) {
        if (reading.isEmpty()) {
            return "not measured";
        }
        if (reading.get() instanceof Measurement.Value value) {
            return plain(value.number());
        }
        return reading.get() == Measurement.NoValue.OPEN ? "open" : "over limit";
    }

    public String range(OptionalDouble min, OptionalDouble max) {
        if (min.isPresent() && max.isPresent()) {
            return plain(min.getAsDouble()) + " to " + plain(max.getAsDouble());
        }
        if (min.isPresent()) {
            return "at least " + plain(min.getAsDouble());
        }
        return max.isPresent() ? "at most " + plain(max.getAsDouble()) : "not stated";
    }
}
