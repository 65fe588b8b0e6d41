package dev.stayfixed.judging;

import dev.stayfixed.obd.TroubleCode;
import java.time.Instant;
import java.util.List;
import java.util.stream.Collectors;

/**
 * Something that a drive shows and that nobody knew of this vehicle before: no verdict, but somebody has to hear of it at once.
 *
 * @param driveId the drive that shows it, and when that began
 * @param codes those that are new; none for the lamp
 */
public record Alert(String driveId, Instant at, Kind kind, List<TroubleCode> codes) {

    /** What it is. */
    public enum Kind {
        LAMP_ON,
        NEW_CODE
    }

    /** In a sentence without its full stop. */
    public String words() {
        if (kind == Kind.LAMP_ON) {
            return "the malfunction lamp (MIL) was on in this drive, and was not known to be on before; read the codes";
        }
        String named = codes.stream().map(TroubleCode::text).collect(Collectors.joining(", "));
        return codes.size() == 1
                ? "the code " + named
                        + " is new for this vehicle: it is no fault of its jobs, and no earlier scan lists it"
                : "the codes " + named
                        + " are new for this vehicle: they are no faults of its jobs, and no earlier scan lists them";
    }
}
