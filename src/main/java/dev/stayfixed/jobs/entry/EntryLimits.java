package dev.stayfixed.jobs.entry;

/** How much fits, where it is said in more than one place. */
final class EntryLimits {

    /** Characters of a name or a number of the shop's own. */
    static final int NAME = 100;
    /** Characters of what a person tells. */
    static final int TEXT = 2000;
    /** Characters of pasted answers. */
    static final int SCAN = 1_000_000;
    /** Parts of one repair, and the characters of each. */
    static final int PARTS = 100;

    static final int PART = 200;
    /** Measurements of one repair. */
    static final int MEASUREMENTS = 100;
    /** Enabling conditions of one fault. */
    static final int CONDITIONS = 20;

    private EntryLimits() {}
}
