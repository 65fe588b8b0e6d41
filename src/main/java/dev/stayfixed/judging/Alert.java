package dev.stayfixed.judging;

import dev.stayfixed.obd.TroubleCode;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
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
    public Reason said() {
        if (kind == Kind.LAMP_ON) {
            return Reason.of(AlertReason.LAMP_NEWLY_ON);
        }
        Part named = Part.verbatim(codes.stream().map(TroubleCode::text).collect(Collectors.joining(", ")));
        return Reason.of(codes.size() == 1 ? AlertReason.CODE_IS_NEW : AlertReason.CODES_ARE_NEW, named);
    }
}
