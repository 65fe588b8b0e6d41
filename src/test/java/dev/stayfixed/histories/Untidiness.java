package dev.stayfixed.histories;

/** What makes a record untidy; each may be switched on by itself, with its own probability of being on in a record. */
enum Untidiness {
    /** A second control unit answers beside the engine's. */
    TWO_UNITS(0.35),
    NO_HEADERS(0.35),
    /** One of the units does not answer some request (only where headers tell which). */
    SILENT_UNIT(0.15),
    NO_DATA(0.1),
    /** Answers that are cut short or carry an error mark. */
    CUT_ANSWERS(0.1),
    /** Without headers: filled up with 00. */
    PADDED_ANSWERS(0.15),
    /** Each reading asks for a part of what the tool can ask. */
    PARTIAL_READINGS(0.4),
    /** No reading before the engine start. */
    END_ONLY(0.35),
    /** More than one reading in a drive. */
    SEVERAL_SCANS(0.25),
    /** The drive is read once more at the next key-on. */
    KEY_ON_SCANS(0.2),
    /** A record holds two driving cycles. */
    RESTARTS(0.12),
    /** One driving cycle is sent as two records. */
    CUT_IN_TWO(0.2),
    SHORT_PAUSES(0.3),
    UNRECORDED_DRIVES(0.4),
    DRIVES_WITHOUT_SCANS(0.15),
    /** Codes are cleared, or the battery is disconnected, and nobody says so; counters show it. */
    UNSEEN_CLEARS(0.15),
    TOLD_CLEARS(0.1),
    /** Somebody clears with the reading that ends a drive. */
    CLEARS_IN_SCANS(0.06),
    /** Told to be cleared at the repair, and the counters say that it was not. */
    CLEAR_NOT_TAKEN(0.06),
    OTHER_CARS(0.12),
    /** The engine stands at the end of a drive and has run: hybrids and stop-start. */
    HYBRID(0.1),
    /** Another code of the owner lights the lamp. */
    OTHER_CODE(0.15),
    /** A test that fails passes again later in the same cycle, or the other way round. */
    CHANGES_ITS_MIND(0.2),
    /** The pending code goes within the passing trip. */
    ERASES_EARLY(0.35),
    /** The pending code goes only at the next engine start. */
    ERASES_LATE(0.25),
    CONFIRMS_SOONER(0.06),
    /** The unit leaves untested codes out of its $19 02 list. */
    HIDES_UNTESTED(0.35);

    final double share;

    Untidiness(double share) {
        this.share = share;
    }
}
