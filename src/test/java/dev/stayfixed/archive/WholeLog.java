package dev.stayfixed.archive;

import dev.stayfixed.drive.condition.ConditionSet;
import dev.stayfixed.drive.condition.TypicalCondition;
import dev.stayfixed.drive.condition.TypicalConditions;
import dev.stayfixed.obd.MonitorGroup;
import dev.stayfixed.recording.LogLimits;
import dev.stayfixed.recording.LogMapping;
import dev.stayfixed.recording.LogReader;
import java.io.ByteArrayInputStream;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;

/** A log as the service judges it when its columns are known: looked at, held against its mapping, read. For measurements. */
public final class WholeLog {

    private final UploadedLog log;
    private final LogMapping mapping;
    private final LogReader reader;
    private final Map<String, ConditionSet> sets;
    private final DriveSubmission said =
            DriveSubmission.said(Instant.parse("2026-03-14T07:30:00Z"), null, null, null, null, null);

    private WholeLog(UploadedLog log, LogMapping mapping, LogReader reader, Map<String, ConditionSet> sets) {
        this.log = log;
        this.mapping = mapping;
        this.reader = reader;
        this.sets = sets;
    }

    /** Read by the mapping that it proposes itself, for a catalyst fault without agreed conditions. */
    public static WholeLog of(byte[] bytes) {
        UploadedLog log = new UploadedLog(() -> new ByteArrayInputStream(bytes));
        LogReader reader = new LogReader(LogLimits.USUAL);
        Map<String, ConditionSet> sets = new LinkedHashMap<>();
        for (TypicalCondition typical : TypicalConditions.of(MonitorGroup.CATALYST)) {
            sets.put("set " + sets.size(), typical.set());
        }
        return new WholeLog(log, log.read(reader::propose).mapping(), reader, sets);
    }

    /** Facts, conditions, digest and summary of the whole log. */
    public Object judged() {
        log.read(reader::head);
        log.read(in -> reader.differences(in, mapping));
        JudgedLog judged = new LogJudge(reader).judge(log, mapping, said, sets);
        return judged.digest() + judged.facts().signals().summary() + judged.reports();
    }
}
