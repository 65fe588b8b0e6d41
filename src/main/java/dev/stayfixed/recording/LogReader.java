package dev.stayfixed.recording;

import dev.stayfixed.drive.signal.SignalRow;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * Reads logs of drives as they come: CSV, plain, gzip or one in a zip file, in UTF-8 (a degree sign in another encoding does no harm).
 * Rows are handed on one by one and never kept. What cannot be read as a log at all ends in a {@link LogFormatException}; a reading
 * that fails late may have handed on rows, which are then to be thrown away.
 */
public final class LogReader {

    private final LogLimits limits;

    public LogReader(LogLimits limits) {
        this.limits = limits;
    }

    /**
     * How this log would be read; looks at its first 64 KiB.
     *
     * @throws LogFormatException where it has no header, no time or no signal that we know
     * @throws IOException from the stream itself
     */
    public Proposal propose(InputStream in) throws IOException {
        return propose(LogSource.open(in, limits));
    }

    /**
     * The columns of this log, whether or not we know any of them; looks at its first 64 KiB.
     *
     * @throws LogFormatException where it has no header
     * @throws IOException from the stream itself
     */
    public LogHead head(InputStream in) throws IOException {
        return LogHead.of(LogSample.of(LogSource.open(in, limits), limits));
    }

    /**
     * What in this log speaks against a mapping that was confirmed with another one: units, values, separators, the clock; looks at its
     * first 64 KiB. Empty where nothing does.
     *
     * @throws LogFormatException where it has no header
     * @throws IOException from the stream itself
     */
    public List<Reason> differences(InputStream in, LogMapping mapping) throws IOException {
        return LogDifferences.of(LogSample.of(LogSource.open(in, limits), limits), mapping);
    }

    private Proposal propose(LogSource source) throws IOException {
        return Proposer.propose(LogSample.of(source, limits));
    }

    /**
     * Reads by a mapping that a person confirmed.
     *
     * @throws LogFormatException where this is no log, or the mapping does not belong to it
     * @throws IOException from the stream itself
     */
    public LogReport read(InputStream in, LogMapping mapping, Consumer<SignalRow> rows) throws IOException {
        return read(LogSource.open(in, limits), mapping, rows);
    }

    /**
     * Reads by the reader's own proposal, which comes back to be shown and confirmed.
     *
     * @throws LogFormatException as {@link #propose} and {@link #read}
     * @throws IOException from the stream itself
     */
    public LogReading readAsProposed(InputStream in, Consumer<SignalRow> rows) throws IOException {
        LogSource source = LogSource.open(in, limits);
        Proposal proposal = propose(source);
        return new LogReading(proposal, read(source, proposal.mapping(), rows));
    }

    /** One log, or several pieces of one drive in a zip file, in their order. */
    private LogReport read(LogSource source, LogMapping mapping, Consumer<SignalRow> rows) throws IOException {
        NoteLog notes = new NoteLog();
        LogSample sample = LogSample.of(source, limits);
        RowReader reader = new RowReader(sample, mapping, notes, rows);
        readRows(source, sample, reader, notes);
        for (Optional<LogSource> next = source.next(); next.isPresent(); next = source.next()) {
            LogSource part = next.get();
            LogSample own = LogSample.of(part, limits);
            if (!reader.goOn(own, own.firstRow())) {
                throw LogFormatException.ofFile(
                        Reason.of(LogFound.SECOND_LOG, Part.verbatim(part.name())), LogExpected.ONE_LOG);
            }
            notes.add(NoteKind.NEXT_PART, 1, "", part.name());
            readRows(part, own, reader, notes);
        }
        return reader.report();
    }

    private void readRows(LogSource source, LogSample sample, RowReader reader, NoteLog notes) throws IOException {
        Reader text = new InputStreamReader(source.stream(), StandardCharsets.UTF_8);
        Records records = new Records(text, sample.layout().separator(), limits);
        long header = sample.layout().headerLine();
        boolean units = sample.unitsRow();
        boolean headed = false;
        @Nullable
        SideBySide joining = sample.tall()
                .map(form -> new SideBySide(form, sample.inFile(), reader))
                .orElse(null);
        while (records.hasNext()) {
            LogRow next = records.next();
            if (next.line() < header) {
                notes.add(NoteKind.BEFORE_HEADER, next.line(), "", next.cell(0));
            } else if (!headed) {
                headed = true;
            } else if (units) {
                units = false;
                notes.add(NoteKind.UNITS_ROW, next.line(), "", next.joined());
            } else if (joining == null) {
                reader.read(next, !records.hasNext());
            } else {
                joining.read(next, false);
            }
        }
        if (joining != null) {
            joining.end();
        }
    }
}
