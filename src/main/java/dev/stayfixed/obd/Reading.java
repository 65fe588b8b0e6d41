package dev.stayfixed.obd;

/** An answer, where it began, and how much of it there is. */
record Reading(int line, Scan.Heard heard, Extent extent) {

    enum Extent {
        /** All of it: what a list does not name is not in it. */
        WHOLE,
        /** Codes may be missing from the list. */
        CUT_SHORT,
        /** Codes named in words: says nothing about others. */
        MENTION
    }

    String unit() {
        return heard.unit();
    }

    Answer answer() {
        return heard.answer();
    }
}
