package dev.stayfixed.histories;

/** One assumption broken on purpose, to measure how often that leads to a wrong verdict. */
enum Broken {
    NOTHING("none is broken"),
    SECOND_FAILURE_NOT_CONFIRMED("3: the unit confirms only with the third failed trip in a row"),
    PENDING_LOST("4: the pending code is lost without a pass or a clear"),
    TRACELESS_ERASED_EARLY("5: an unseen failure loses its pending code within the next passing trip"),
    LAMP_OUT_EARLY("6: the lamp goes out after one passed trip"),
    CLEAR_WITHOUT_A_SIGN("9: codes are cleared without any sign"),
    BIT_OF_ANOTHER_TEST("10: PID $41 says complete though this fault's monitor did not run"),
    LISTS_UNTESTED_SOMETIMES("11: a unit that listed an untested code leaves this one out untested"),
    SHARED_NUMERATOR("12: the numerator counts another monitor"),
    RESULT_OF_ANOTHER_TEST("13: the $06 result is new though this fault's monitor did not run"),
    SILENT_OWNER_WITHOUT_HEADERS("1: the owner is silent, another unit's list stands alone without headers"),
    SILENT_RESTART("2: a record holds two driving cycles and nothing tells"),
    OTHER_CAR_UNRECOGNISED("15: another car's record, and nothing tells");

    final String words;

    Broken(String words) {
        this.words = words;
    }
}
