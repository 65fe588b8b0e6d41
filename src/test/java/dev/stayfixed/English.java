package dev.stayfixed;

import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.reason.Shape;
import dev.stayfixed.wording.Wording;

/** The texts of tests are English and metric. */
public final class English {

    private English() {}

    /** A reason that says this. */
    public static Reason reason(String words) {
        return Reason.of(Shape.EACH, Part.verbatim(words));
    }

    public static String words(Part said) {
        return Wording.METRIC.words(said);
    }
}
