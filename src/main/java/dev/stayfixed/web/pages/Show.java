package dev.stayfixed.web.pages;

import dev.stayfixed.drive.DriveQuantity;
import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.jobs.Measurement;
import dev.stayfixed.jobs.Repair;
import dev.stayfixed.jobs.ShopSettings;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.reason.Unit;
import dev.stayfixed.wording.Scale;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.springframework.context.i18n.LocaleContextHolder;

/** How values are written on the pages of a shop: times in its zone, quantities in its units. Public for the templates. */
public final class Show {

    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("d MMM uuuu, HH:mm");
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM uuuu");
    private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
    private static final DateTimeFormatter FIELD = DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm", Locale.ROOT);

    /** How things are written before it is known for which shop. */
    public static final ShopSettings OF_NO_SHOP =
            new ShopSettings("Stayfixed", ZoneOffset.UTC, ShopSettings.Units.METRIC, 7);

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
            return words(PageWord.JUST_NOW);
        }
        if (since.toHours() < 1) {
            return words(Reason.of(PageWord.MINUTES_AGO, Part.count(since.toMinutes())));
        }
        return words(
                since.toDays() < 1
                        ? Reason.of(PageWord.HOURS_AGO, Part.count(since.toHours()))
                        : Reason.of(PageWord.DAYS_AGO, Part.count(since.toDays())));
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
        return unit(scale(quantity));
    }

    public String unit(Signal signal) {
        return unit(scale(signal));
    }

    /** In words where it is one of ours; those of US shops are the same in every language. */
    private String unit(Scale scale) {
        return Stream.of(Unit.values())
                .filter(unit -> unit.symbol().equals(scale.unit()))
                .findFirst()
                .map(this::words)
                .orElse(scale.unit());
    }

    public String quantity(DriveQuantity quantity, double value) {
        return number(scale(quantity).shown(value), 1) + " " + unit(quantity);
    }

    /** What the rules say, in words and in the shop's units. */
    public String words(Part said) {
        return settings.units().words(said);
    }

    public String presence(Optional<Boolean> present, String yes, String no) {
        return present.map(p -> p ? yes : no).orElseGet(() -> words(PageWord.NOT_KNOWN));
    }

    /** What stands or stood in a field of a repair. */
    public String kept(Repair.Field field, String text) {
        if (text.isEmpty()) {
            return words(PageWord.NOTHING);
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
            return words(PageWord.NOT_MEASURED);
        }
        if (reading.get() instanceof Measurement.Value value) {
            return plain(value.number());
        }
        return words(reading.get() == Measurement.NoValue.OPEN ? PageWord.OPEN_CIRCUIT : PageWord.OVER_LIMIT);
    }

    public String range(OptionalDouble min, OptionalDouble max) {
        if (min.isEmpty() && max.isEmpty()) {
            return words(PageWord.NOT_STATED);
        }
        if (max.isEmpty()) {
            return words(Reason.of(PageWord.NO_LESS_THAN, limit(min.getAsDouble())));
        }
        return words(
                min.isEmpty()
                        ? Reason.of(PageWord.LIMIT_ABOVE, limit(max.getAsDouble()))
                        : Reason.of(PageWord.RANGE_OF, limit(min.getAsDouble()), limit(max.getAsDouble())));
    }

    private Part limit(double value) {
        return Part.verbatim(plain(value));
    }
}
