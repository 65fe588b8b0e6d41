package dev.stayfixed.verification;

/**
 * The conditions that the recorded signals of a drive are held against, for one fault.
 *
 * @param key by which {@link dev.stayfixed.drive.DriveRecord#conditions} names what a drive made of them
 */
public record RecordedConditions(String key, Origin origin) {

    /** Who says that these are the conditions. */
    public enum Origin {
        SERVICE_INFORMATION("its enabling conditions"),
        /** Published for other vehicles, and taken over by the shop for this one. */
        TYPICAL_ADOPTED("typical conditions adopted by the shop");

        private final String words;

        Origin(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }
}
