package dev.stayfixed.histories;

/** What a reading asks for. */
enum Ask {
    VIN("09 02"),
    SINCE_CLEAR("01 01"),
    THIS_CYCLE("01 41"),
    CONFIRMED("03"),
    PENDING("07"),
    PERMANENT("0A"),
    IN_USE("09 08"),
    TEST_VALUE("06"),
    SUPPORTED_CODES("19 0A"),
    STATUSES("19 02 FF"),
    /** $31, $30, $4E and the odometer. */
    COUNTERS("01 31"),
    /** Engine speed and run time. */
    LIVE("01 0C");

    final String request;

    Ask(String request) {
        this.request = request;
    }
}
