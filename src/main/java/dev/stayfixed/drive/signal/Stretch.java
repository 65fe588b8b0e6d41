package dev.stayfixed.drive.signal;

/** The longest unbroken time for which something held; ms. */
final class Stretch {

    private long current;
    private long longest;

    void add(boolean holds, long millis) {
        current = holds ? current + millis : 0;
        longest = Math.max(longest, current);
    }

    void end() {
        current = 0;
    }

    long longest() {
        return longest;
    }
}
