package dev.stayfixed.verification;

/** How many consecutive failed trips the control unit needs to confirm the fault (13 CCR 1968.2 (d)(2.2)). */
public enum Trips {
    ONE(1),
    TWO(2);

    private final int count;

    Trips(int count) {
        this.count = count;
    }

    public int count() {
        return count;
    }
}
