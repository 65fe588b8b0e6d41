package dev.stayfixed.drive.condition;

/** The parts of a verification drive, in the order in which they are driven. */
public enum Phase {
    SOAK("Before the drive"),
    START("Start"),
    IDLE("Idle"),
    WARM_UP("Warm up"),
    CRUISE("Cruise"),
    COAST("Coast"),
    WARM_IDLE("Idle, warm"),
    KEY_OFF("Key off");

    private final String words;

    Phase(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }
}
