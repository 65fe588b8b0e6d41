package dev.stayfixed.judging;

import dev.stayfixed.drive.condition.ConditionReport;
import dev.stayfixed.jobs.FaultConditions;

/**
 * What a drive made of the conditions of a fault. Where none were agreed, the report is of typical ones, and counts for nothing.
 */
public record FaultReport(FaultConditions fault, ConditionReport report) {

    public boolean counts() {
        return fault.agreed().isPresent();
    }
}
