package dev.stayfixed.telling;

import dev.stayfixed.reason.Kind;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Set;

/** What can happen that somebody wants to know. */
public enum EventKind implements Kind {
    CONFIRMED_FIXED,
    FAILED_ONCE,
    RECURRED,
    /** After it was confirmed fixed, or after the job was closed; also as a new job with the same or a related code. */
    CAME_BACK,
    /** A late or corrected drive changed what had been announced. */
    VERDICT_REVISED,
    NOTHING_HEARD,
    CONTRADICTORY_DATA,
    /** A driver or a reader reports the lamp on, and it was not known to be on: told at once, whatever the rule says. */
    LAMP_ON,
    /** A code that is no fault of the vehicle's jobs and was never listed before: told at once likewise. */
    NEW_CODE,
    /** The drive that showed the lamp or the code does not count any more. */
    ALERT_TAKEN_BACK,
    CODES_CLEARED,
    JOB_CLOSED,
    JOB_REOPENED,
    /** A message could not be delivered for three days, or its receiver refused it for good. */
    DELIVERY_GIVEN_UP,
    TEST;

    /** Such as "dev.stayfixed.confirmed-fixed": the type attribute of a CloudEvent. */
    public String type() {
        return "dev.stayfixed." + name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** What the inbox shows; the rest only goes out. */
    public boolean isForInbox() {
        return this != TEST && this != JOB_CLOSED && this != JOB_REOPENED;
    }

    /** What a technician is told unless the shop says otherwise. */
    public static Set<EventKind> forTechnician() {
        return EnumSet.range(CONFIRMED_FIXED, CODES_CLEARED);
    }

    /** What a driver can be told, and is unless the shop says otherwise: what he can do something about. */
    public static Set<EventKind> forDriver() {
        Set<EventKind> kinds = forTechnician();
        kinds.removeAll(EnumSet.range(CONTRADICTORY_DATA, ALERT_TAKEN_BACK));
        return kinds;
    }

    /** What stands above the open jobs until somebody has read it: it may be of a vehicle whose job is closed. */
    public static Set<EventKind> forFirstPage() {
        return EnumSet.of(CAME_BACK, LAMP_ON, NEW_CODE);
    }

    /** What a webhook can ask for. */
    public static Set<EventKind> forWebhooks() {
        return EnumSet.range(CONFIRMED_FIXED, JOB_REOPENED);
    }
}
