package dev.stayfixed.judging;

import dev.stayfixed.drive.DriveRecord;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * Published in the transaction in which all faults of a vehicle were judged again, whether or not that moved one of them.
 *
 * @param drives everything that was judged
 * @param verdicts each with the standing that was recorded before
 * @param alerts what the drives showed that was new when it showed, the earliest first
 */
public record VehicleJudged(
        UUID vehicleId,
        Cause cause,
        DrivesInOrder drives,
        List<FaultVerdict> verdicts,
        List<Alert> alerts,
        Instant at) {

    /** Why it was judged again. */
    public sealed interface Cause {

        /** The drive that is new, or that is told anew. */
        default Optional<UUID> drive() {
            return Optional.empty();
        }

        /** What was told before rested on something else. */
        boolean revises();

        /** A drive came in that was not known before. */
        record NewDrive(UUID driveId) implements Cause {
            @Override
            public Optional<UUID> drive() {
                return Optional.of(driveId);
            }

            @Override
            public boolean revises() {
                return false;
            }
        }

        /** A recorded drive was replaced by a better record of it. */
        record CorrectedDrive(UUID driveId) implements Cause {
            @Override
            public Optional<UUID> drive() {
                return Optional.of(driveId);
            }

            @Override
            public boolean revises() {
                return true;
            }
        }

        /**
         * A drive was left out of the count.
         *
         * @param leftOut what it told
         */
        record DriveLeftOut(DriveRecord leftOut, String reason) implements Cause {
            @Override
            public boolean revises() {
                return true;
            }
        }

        /** The record of a repair was put right. */
        record RepairCorrected() implements Cause {
            @Override
            public boolean revises() {
                return true;
            }
        }

        /** A repair was recorded, or the terms of a fault or the vehicle were changed. */
        record JobChanged() implements Cause {
            @Override
            public boolean revises() {
                return false;
            }
        }

        /** Nothing new came in: a start of the service, or a drive that was already known. */
        record Replayed() implements Cause {
            @Override
            public boolean revises() {
                return true;
            }
        }
    }
}
