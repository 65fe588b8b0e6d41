package dev.stayfixed.verification;

import dev.stayfixed.reason.Reason;
import java.util.Optional;

/**
 * What the car still shows beside the verdict.
 *
 * @param mil the lamp
 * @param confirmedCode the stored code
 * @param permanentCode the code that no tool can erase
 */
public record CodeMemory(Line mil, Line confirmedCode, Line permanentCode) {

    /**
     * One of the three.
     *
     * @param present empty where no scan has said
     * @param explanation where it stands and what ends it
     */
    public record Line(Optional<Boolean> present, Reason explanation) {}
}
