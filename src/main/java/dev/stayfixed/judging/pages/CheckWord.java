package dev.stayfixed.judging.pages;

import dev.stayfixed.reason.Kind;

/** What a page says of the run of a check. Public for the templates. */
public enum CheckWord implements Kind {
    INSIDE,
    OUTSIDE,
    DOES_NOT_TELL,
    NOT_CHOSEN
}
