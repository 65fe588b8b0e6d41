package dev.stayfixed.jobs;

import dev.stayfixed.reason.Part;
import dev.stayfixed.wording.Scale;
import dev.stayfixed.wording.Wording;
import java.time.ZoneId;
import org.springframework.context.i18n.LocaleContextHolder;

/**
 * How a shop writes things, and when it wants to be reminded.
 *
 * @param name as it stands on pages and reports
 * @param stallDays after so many days without a drive an open job counts as stalled, 1 to 365
 */
public record ShopSettings(String name, ZoneId zone, Units units, int stallDays) {

    /** Characters. */
    public static final int LONGEST_NAME = 200;

    public static final int MOST_STALL_DAYS = 365;

    /** How temperatures, distances and pressures are written; everything is kept in metric units. */
    public enum Units {
        METRIC,
        US;

        /** How this shop reads and types what is kept in a metric unit. */
        public Scale scale(String metricUnit) {
            return this == US ? Scale.us(metricUnit) : Scale.metric(metricUnit);
        }

        /** What the rules say, in the words of this service and with the quantities of this shop. */
        public String words(Part said) {
            return Wording.in(LocaleContextHolder.getLocale(), this == US).words(said);
        }
    }

    public ShopSettings {
        if (name.isBlank() || name.length() > LONGEST_NAME) {
            throw new IllegalArgumentException(
                    "name: found " + name.length() + " characters, expected 1 to 200, not all of them blank");
        }
        if (stallDays < 1 || stallDays > MOST_STALL_DAYS) {
            throw new IllegalArgumentException("stall days: found " + stallDays + ", expected 1 to 365");
        }
    }
}
