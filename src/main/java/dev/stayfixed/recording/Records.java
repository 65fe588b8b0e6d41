package dev.stayfixed.recording;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.reader.CsvRecordHandler;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.util.Iterator;
import java.util.NoSuchElementException;

/** The records of a CSV text one after another, with the library's failures turned into ours. */
final class Records {

    private final Iterator<CsvRecord> records;
    private final LogLimits limits;
    private long line = 1;

    Records(Reader reader, char separator, LogLimits limits) {
        this.limits = limits;
        this.records = CsvReader.builder()
                .fieldSeparator(separator)
                .skipEmptyLines(true)
                .extraFieldStrategy(FieldMismatchStrategy.IGNORE)
                .missingFieldStrategy(FieldMismatchStrategy.IGNORE)
                .trimWhitespacesAroundQuotes(true)
                .allowUnclosedQuote(true)
                .maxBufferSize(1 << 20)
                .build(
                        CsvRecordHandler.builder()
                                .maxFields(limits.columns())
                                .maxFieldSize(limits.cellLength())
                                .build(),
                        reader)
                .iterator();
    }

    boolean hasNext() throws IOException {
        try {
            return records.hasNext();
        } catch (CsvParseException broken) {
            throw ours(broken);
        } catch (UncheckedIOException failed) {
            throw failed.getCause();
        }
    }

    LogRow next() throws IOException {
        if (!hasNext()) {
            throw new NoSuchElementException();
        }
        try {
            CsvRecord next = records.next();
            line = next.getStartingLineNumber();
            return new LogRow(line, next.getFields());
        } catch (CsvParseException broken) {
            throw ours(broken);
        } catch (UncheckedIOException failed) {
            throw failed.getCause();
        }
    }

    /** A failure of the stream beneath may come back wrapped. */
    private LogFormatException ours(CsvParseException broken) {
        if (broken.getCause() instanceof LogFormatException already) {
            return already;
        }
        return LogFormatException.atLine(
                line + 1,
                "a row that cannot be split into cells",
                "at most %d cells of at most %d characters, and every opened quote closed"
                        .formatted(limits.columns(), limits.cellLength()));
    }
}
