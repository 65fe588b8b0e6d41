package dev.stayfixed.archive;

import dev.stayfixed.drive.condition.ConditionReport;
import java.util.Map;

/**
 * A log, read once.
 *
 * @param reports by the key of the set of conditions; empty for a log that cannot be a drive
 * @param digest the same for the same rows, however they were packed
 */
public record JudgedLog(LogFacts facts, Map<String, ConditionReport> reports, LogPicture picture, String digest) {}
