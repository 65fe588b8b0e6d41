package dev.stayfixed.archive;

import dev.stayfixed.drive.condition.ConditionReport;
import dev.stayfixed.drive.condition.ConditionSet;
import dev.stayfixed.drive.condition.Evaluation;
import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.drive.signal.SignalFacts;
import dev.stayfixed.drive.signal.SignalMeter;
import dev.stayfixed.drive.signal.SignalRow;
import dev.stayfixed.drive.signal.SignalRules;
import dev.stayfixed.platform.Sha256;
import dev.stayfixed.recording.LogMapping;
import dev.stayfixed.recording.LogReader;
import dev.stayfixed.recording.LogReport;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.time.Instant;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import org.springframework.stereotype.Component;

/** Reads a log row by row to all that is wanted of it; keeps no rows. */
@Component
public class LogJudge {

    private final LogReader reader;

    LogJudge(LogReader reader) {
        this.reader = reader;
    }

    public JudgedLog judge(UploadedLog log, LogMapping mapping, DriveSubmission said, Map<String, ConditionSet> sets) {
        SignalMeter meter = SignalFacts.meter(SignalRules.EXACT, OptionalDouble.empty());
        Map<String, Evaluation> evaluations = new LinkedHashMap<>();
        sets.forEach((key, set) -> evaluations.put(key, set.evaluation(said.soakHours())));
        RowDigest digest = new RowDigest();
        LogPicture.Drawing drawing = new LogPicture.Drawing();
        Consumer<SignalRow> all = digest.andThen(meter).andThen(drawing);
        for (Evaluation evaluation : evaluations.values()) {
            all = all.andThen(evaluation);
        }
        Consumer<SignalRow> sink = all;
        LogReport report = log.read(in -> reader.read(in, mapping, sink));
        SignalFacts facts = meter.facts();
        Instant firstRow = new LogTime(
                        mapping.timeFormat(), digest.first, facts.engineStart().orElse(0))
                .firstRow(said);
        Map<String, ConditionReport> reports = new LinkedHashMap<>();
        if (report.isScorable()) {
            evaluations.forEach((key, evaluation) -> reports.put(key, evaluation.report()));
        }
        return new JudgedLog(new LogFacts(firstRow, report, facts), reports, drawing.picture(), digest.hex());
    }

    private static final class RowDigest implements Consumer<SignalRow> {

        private final MessageDigest sha;
        private static final byte[][] NAMES = Arrays.stream(Signal.values())
                .map(signal -> signal.name().getBytes(StandardCharsets.US_ASCII))
                .toArray(byte[][]::new);
        private static final int MOST_A_VALUE = 64;

        private final ByteBuffer pending = ByteBuffer.allocate(1 << 13);
        private boolean started;
        private long first;

        RowDigest() {
            sha = Sha256.begin();
        }

        @Override
        public void accept(SignalRow row) {
            if (!started) {
                started = true;
                first = row.millis();
            }
            roomForOne().putLong(row.millis());
            row.forEach(
                    (signal, value) -> roomForOne().put(NAMES[signal.index()]).putLong(Double.doubleToLongBits(value)));
        }

        private ByteBuffer roomForOne() {
            if (pending.remaining() < MOST_A_VALUE) {
                digestPending();
            }
            return pending;
        }

        private void digestPending() {
            sha.update(pending.flip());
            pending.clear();
        }

        String hex() {
            digestPending();
            return Sha256.hex(sha, new byte[0]);
        }
    }
}
