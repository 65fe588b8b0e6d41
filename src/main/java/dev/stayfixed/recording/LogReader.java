package dev.stayfixed.recording;

import de.siegmar.fastcsv.reader.CsvRecord;
import dev.stayfixed.drive.signal.SignalRow;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.util.function.Consumer;

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

    private LogReport read(LogSource source, LogMapping mapping, Consumer<SignalRow> rows) throws IOException {
        Layout layout = Layout.of(source.head());
        Reader text = new InputStreamReader(source.stream(), StandardCharsets.UTF_8);
        Records records = new Records(text, layout.separator(), limits);
        RowReader reader = null;
        NoteLog notes = new NoteLog();
        while (records.hasNext()) {
            CsvRecord next = records.next();
            if (next.getStartingLineNumber() < layout.headerLine()) {
                notes.add(NoteKind.BEFORE_HEADER, next.getStartingLineNumber(), "", next.getField(0));
            } else if (reader == null) {
                reader = new RowReader(next, mapping, notes, rows);
            } else {
                reader.read(next, !records.hasNext());
            }
        }
        source.refuseFurtherLogs();
        if (reader == null) {
            throw LogFormatException.atLine(layout.headerLine(), "no header line", "the header of the log");
        }
        return reader.report();
    }
}
