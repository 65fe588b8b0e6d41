package dev.stayfixed.jobs.pages;

import dev.stayfixed.reason.Kind;

/**
 * What stands on the lane of a fault. Each has a word and a shape of its own, so that it can be told without colour. The shapes are
 * drawn around the point (0, 0), 22 units wide; their classes take colours from the style sheet, their attributes hold for print.
 */
public enum LaneMark implements Kind {
    PASSED("<circle r='11' class='m-good' fill='#1d6b3a'/><path d='M-5 0 L-1 4 L6 -4' class='m-cut'/>"),
    FAILED(
            "<rect x='-10' y='-10' width='20' height='20' class='m-bad' fill='#a3211c'/><path d='M-5 -5 L5 5 M5 -5 L-5 5' class='m-cut'/>"),
    CONFIRMED(
            "<rect x='-14' y='-14' width='28' height='28' class='m-ring-bad'/><rect x='-10' y='-10' width='20' height='20'"
                    + " class='m-bad' fill='#a3211c'/><path d='M-5 -5 L5 5 M5 -5 L-5 5' class='m-cut'/>"),
    DID_NOT_RUN("<circle r='10' class='m-open m-dash' stroke-dasharray='4 3'/>"),
    UNPROVEN("<circle r='10' class='m-open'/><circle r='3' class='m-ink' fill='#1c2430'/>"),
    CARRIED_OVER("<path d='M-10 -8 H10 L0 10 Z' class='m-open'/>"),
    CONTRADICTORY(
            "<path d='M0 -13 L13 0 L0 13 L-13 0 Z' class='m-open'/><text y='5' text-anchor='middle' class='m-text'>?</text>"),
    CLEARED("<path d='M-4 -16 V16 M4 -16 V16' class='m-bar'/>"),
    FAILED_UNSEEN(
            "<rect x='-10' y='-10' width='20' height='20' class='m-open m-dash' stroke-dasharray='4 3'/><path d='M-5 -5 L5 5 M5 -5 L-5"
                    + " 5' class='m-bar'/>"),
    PASSED_UNSEEN(
            "<circle r='10' class='m-open m-dash' stroke-dasharray='4 3'/><path d='M-5 0 L-1 4 L6 -4' class='m-bar'/>"),
    REMARK("<circle r='9' class='m-open'/><text y='5' text-anchor='middle' class='m-text'>i</text>"),
    GAP("<path d='M-12 0 L-6 -8 L0 8 L6 -8 L12 0' class='m-open'/>"),
    OPEN_SLOT("<circle r='10' class='m-open m-dash' stroke-dasharray='4 3'/>"),
    REPAIR("<path d='M0 16 V-18 H14 L9 -13 L14 -8 H0' class='m-flag'/>");

    private final String shape;

    LaneMark(String shape) {
        this.shape = shape;
    }

    /** SVG around (0, 0). */
    public String shape() {
        return shape;
    }

    public boolean isDrive() {
        return switch (this) {
            case CLEARED, FAILED_UNSEEN, PASSED_UNSEEN, REMARK, GAP, OPEN_SLOT, REPAIR -> false;
            default -> true;
        };
    }

    /** It moved the count, up or down. */
    public boolean counts() {
        return this == PASSED || this == FAILED || this == CONFIRMED;
    }

    /** Class of the tag that holds the word. */
    public String tone() {
        return switch (this) {
            case PASSED -> "good";
            case FAILED, CONFIRMED, FAILED_UNSEEN -> "bad";
            case CONTRADICTORY, CLEARED -> "warn";
            default -> "quiet";
        };
    }

    /** The shape alone, for a list: the word stands beside it. */
    public String icon() {
        return "<svg class='mark-icon' width='32' height='32' viewBox='-18 -18 36 36' aria-hidden='true' focusable='false'>"
                + shape + "</svg>";
    }
}
