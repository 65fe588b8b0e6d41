package dev.stayfixed.verification.bench;

/** What a measurement at the bench checks; common practice when a circuit and its part are tested. */
public enum BenchCheck {
    SUPPLY("supply", "the supply of the part"),
    GROUND("ground", "the ground of the part"),
    /** The old part is what was read before the repair, the new one what was read after it. */
    PART("part", "the part itself, the old one before and the new one after"),
    LEADS("test leads", "the test leads, held together"),
    OTHER("other", "something else");

    private final String label;
    private final String words;

    BenchCheck(String label, String words) {
        this.label = label;
        this.words = words;
    }

    /** A word or two, for a table. */
    public String label() {
        return label;
    }

    /** What is checked, for a form. */
    public String words() {
        return words;
    }
}
