package dev.stayfixed.telling;

import com.fasterxml.jackson.annotation.JsonInclude;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What is told about an event: the data of a webhook, and what mails are worded from. Holds nothing that names a person or identifies
 * the vehicle to outsiders: no plate, no vehicle identification number, no customer.
 *
 * @param reference the shop's own number
 * @param vehicle as the shop describes it
 * @param before where the fault stood, in words
 * @param now where it stands, in words
 * @param nextStep what the next drive must bring
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record Story(
        UUID jobId,
        @Nullable String reference,
        String vehicle,
        boolean jobClosed,
        @Nullable UUID faultId,
        @Nullable String code,
        @Nullable String monitor,
        @Nullable String before,
        @Nullable String now,
        @Nullable Integer cleanTrips,
        @Nullable Integer neededTrips,
        String reason,
        @Nullable String nextStep,
        @Nullable String driveId) {

    /** What the shop reads first: the code, where there is one, and the vehicle. */
    public Part about() {
        Part car = Part.verbatim(vehicle);
        Part what = code == null ? car : Reason.of(StoryWord.CODE_ON, Part.verbatim(code), car);
        return reference == null ? what : Reason.of(StoryWord.OF_JOB, what, Part.verbatim(reference));
    }
}
