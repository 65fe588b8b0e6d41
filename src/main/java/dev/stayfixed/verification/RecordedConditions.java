package dev.stayfixed.verification;

import dev.stayfixed.reason.Kind;

/**
 * The conditions that the recorded signals of a drive are held against, for one fault.
 *
 * @param key by which {@link dev.stayfixed.drive.DriveRecord#conditions} names what a drive made of them
 */
public record RecordedConditions(String key, Origin origin) {

    /** Who says that these are the conditions. */
    public enum Origin implements Kind {
        SERVICE_INFORMATION,
        /** Published for other vehicles, and taken over by the shop for this one. */
        TYPICAL_ADOPTED
    }
}
