package dev.stayfixed;

import dev.stayfixed.reason.Part;
import dev.stayfixed.wording.Wording;

/** The texts of tests are English and metric. */
public final class English {

    private English() {}

    public static String words(Part said) {
        return Wording.METRIC.words(said);
    }
}
